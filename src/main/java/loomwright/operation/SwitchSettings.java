package loomwright.operation;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import loomwright.circuit.Condition;
import loomwright.circuit.ContactBreaker;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.Switch;

/**
 * What a plan leaves open: each free switch in each of its positions, each breaker stopped with its contacts closed or open.
 * A setting is a number for each open part, 0 where it stands as drawn.
 */
public final class SwitchSettings {
    public static final String CLOSED = "closed";
    public static final String OPEN = "open";

    private final Plan plan;
    private final List<List<Part>> open;

    private SwitchSettings(Plan plan, List<List<Part>> open) {
        this.plan = plan;
        this.open = open;
    }

    public static SwitchSettings of(Plan plan) {
        return holding(plan, Set.of());
    }

    /** With some of the open parts left as they are drawn. */
    public static SwitchSettings holding(Plan plan, Set<String> held) {
        return new SwitchSettings(
                plan,
                plan.parts().stream()
                        .filter(part -> !held.contains(part.id()))
                        .map(SwitchSettings::all)
                        .filter(settings -> settings.size() > 1)
                        .toList());
    }

    /** The part in each setting, the one in the plan first; alone or empty if it is not open. */
    private static List<Part> all(Part part) {
        List<Part> settings = new ArrayList<>();
        if (part instanceof Switch chosen && chosen.free()) {
            settings.add(chosen);
            for (Switch.Position position : chosen.positions()) {
                if (!position.name().equals(position(chosen))) {
                    settings.add(chosen.withPosition(position.name()));
                }
            }
        } else if (part instanceof ContactBreaker breaker) {
            settings.add(breaker);
            settings.add(new ContactBreaker(
                    breaker.id(),
                    breaker.label(),
                    !breaker.closedWhenStopped(),
                    breaker.contactResistanceOhm(),
                    breaker.ratingA()));
        }
        return settings;
    }

    /** Where an open part stands. */
    public static String position(Part part) {
        if (part instanceof ContactBreaker breaker) {
            return breaker.closedWhenStopped() ? CLOSED : OPEN;
        }
        // A free switch stands the same in every condition.
        return ((Switch) part).in(Condition.OFF).name();
    }

    public Plan plan() {
        return plan;
    }

    /** The open parts, each in all its settings, that of the plan first. */
    public List<List<Part>> open() {
        return open;
    }

    /** How many settings there are. */
    public BigInteger count() {
        return open.stream().map(s -> BigInteger.valueOf(s.size())).reduce(BigInteger.ONE, BigInteger::multiply);
    }

    /** All as drawn. */
    public int[] drawn() {
        return new int[open.size()];
    }

    /** Sets each open part as in a setting numbered from 0, which is the plan as drawn. */
    public void read(int number, int[] setting) {
        int rest = number;
        for (int p = setting.length - 1; p >= 0; p--) {
            int size = open.get(p).size();
            setting[p] = rest % size;
            rest /= size;
        }
    }

    /** The setting that a plan shows, in which all else is as it is here; empty if more differs. */
    public Optional<int[]> settingOf(Plan other) {
        if (other.parts().size() != plan.parts().size() || !other.wires().equals(plan.wires())) {
            return Optional.empty();
        }
        int[] setting = drawn();
        for (int i = 0; i < plan.parts().size(); i++) {
            Part set = other.parts().get(i);
            if (!set.equals(plan.parts().get(i))) {
                int part = indexOf(set.id());
                int place = part < 0 ? -1 : open.get(part).indexOf(set);
                if (place < 0) {
                    return Optional.empty();
                }
                setting[part] = place;
            }
        }
        return Optional.of(setting);
    }

    /** The place of an open part in a setting; −1 if there is none of that id. */
    public int indexOf(String id) {
        for (int p = 0; p < open.size(); p++) {
            if (open.get(p).get(0).id().equals(id)) {
                return p;
            }
        }
        return -1;
    }

    /** The number of a position of an open part; empty if it has none of that name. */
    public Optional<Integer> findPosition(int part, String position) {
        List<Part> settings = open.get(part);
        for (int s = 0; s < settings.size(); s++) {
            if (position(settings.get(s)).equals(position)) {
                return Optional.of(s);
            }
        }
        return Optional.empty();
    }

    /** The plan so set. */
    public Plan planAt(int[] setting) {
        Map<String, Part> set = new LinkedHashMap<>();
        for (int p = 0; p < setting.length; p++) {
            if (setting[p] != 0) {
                Part part = open.get(p).get(setting[p]);
                set.put(part.id(), part);
            }
        }
        return set.isEmpty()
                ? plan
                : plan.with(
                        plan.parts().stream()
                                .map(part -> set.getOrDefault(part.id(), part))
                                .toList(),
                        plan.wires());
    }

    /** Where the open parts stand, by id: all, or those only that do not stand as drawn. */
    public Map<String, String> positions(int[] setting, boolean changedOnly) {
        Map<String, String> positions = new LinkedHashMap<>();
        for (int p = 0; p < setting.length; p++) {
            if (setting[p] != 0 || !changedOnly) {
                Part part = open.get(p).get(setting[p]);
                positions.put(part.id(), position(part));
            }
        }
        return positions;
    }
}
