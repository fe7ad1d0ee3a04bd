package loomwright.service.form;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** Names of the contract as headings of a table for people: {@code averageCoilV} as "average coil, V". */
final class Headings {
    private static final Map<String, String> UNITS = Map.ofEntries(
            Map.entry("V", "V"),
            Map.entry("A", "A"),
            Map.entry("W", "W"),
            Map.entry("Ohm", "ohm"),
            Map.entry("M", "m"),
            Map.entry("Mm", "mm"),
            Map.entry("Mm2", "mm²"),
            Map.entry("C", "°C"),
            Map.entry("Kv", "kV"),
            Map.entry("Mj", "mJ"),
            Map.entry("Ms", "ms"),
            Map.entry("S", "s"),
            Map.entry("Rpm", "rpm"),
            Map.entry("Percent", "%"));

    private Headings() {}

    static String of(String name) {
        int per = name.indexOf("Per", 1);
        if (per > 0) {
            String under = name.substring(per + 3);
            return of(name.substring(0, per)) + " per " + UNITS.getOrDefault(under, words(under));
        }
        List<String> words = new ArrayList<>(List.of(name.split("(?<=[a-z0-9])(?=[A-Z])", -1)));
        String unit = UNITS.get(words.get(words.size() - 1));
        if (unit == null || words.size() == 1) {
            return words(name);
        }
        words.remove(words.size() - 1);
        return words(String.join(" ", words)) + ", " + unit;
    }

    private static String words(String name) {
        return name.replaceAll("(?<=[a-z0-9])(?=[A-Z])", " ").toLowerCase(Locale.ROOT);
    }
}
