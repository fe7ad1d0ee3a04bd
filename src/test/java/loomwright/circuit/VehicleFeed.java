package loomwright.circuit;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;

/** A terminal that gives current, in which conditions, and where which switches must stand for it. */
record VehicleFeed(String terminal, List<String> meant, Map<String, String> when) {
    static final List<String> ALWAYS = List.of("off", "accessory", "run", "crank", "running");
    static final List<String> KEY_ON = List.of("run", "crank", "running");

    VehicleFeed at(String other) {
        return new VehicleFeed(other, meant, when);
    }

    VehicleFeed through(String other, String switchId, String position) {
        Map<String, String> more = new TreeMap<>(when);
        more.put(switchId, position);
        return new VehicleFeed(other, meant, more);
    }

    /** What is live where both are. */
    VehicleFeed and(VehicleFeed other, String terminalOfBoth) {
        Map<String, String> both = new TreeMap<>(when);
        both.putAll(other.when);
        return new VehicleFeed(
                terminalOfBoth, meant.stream().filter(other.meant::contains).toList(), both);
    }

    String meantLive() {
        String list = meant.stream().map(c -> "'" + c + "'").collect(Collectors.joining(","));
        String positions = when.entrySet().stream()
                .map(e -> "'" + e.getKey() + "':['" + e.getValue() + "']")
                .collect(Collectors.joining(","));
        return "'meantLive':[" + list + "]"
                + (positions.isEmpty() ? "" : ",'meantLiveWhen':[{'switches':{" + positions + "}}]");
    }
}
