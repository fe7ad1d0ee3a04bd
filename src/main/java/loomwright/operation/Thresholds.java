package loomwright.operation;

import java.util.BitSet;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;

/** The {@link Threshold}s of a plan in the order of the ids of their parts, and sets of them as bits. */
final class Thresholds {
    private final List<Threshold> all;
    private final Map<String, Integer> bitOf = new HashMap<>();
    private final BitSet memory = new BitSet();

    private Thresholds(List<Threshold> all) {
        this.all = all;
        for (int t = 0; t < all.size(); t++) {
            bitOf.put(all.get(t).part().id(), t);
            memory.set(t, all.get(t).remembers());
        }
    }

    static Thresholds of(Plan plan) {
        return new Thresholds(plan.parts().stream()
                .sorted(Comparator.comparing(Part::id))
                .flatMap(part -> Threshold.find(part, plan.system()).stream())
                .toList());
    }

    List<Threshold> list() {
        return all;
    }

    /** Those that remember whether they were active. */
    BitSet memory() {
        return memory;
    }

    /** The bit of a part; −1 if it has no threshold. */
    int bitOf(String partId) {
        return bitOf.getOrDefault(partId, -1);
    }

    Set<String> ids(BitSet parts) {
        Set<String> ids = new TreeSet<>();
        parts.stream().forEach(t -> ids.add(all.get(t).part().id()));
        return ids;
    }

    /** Those of some parts that have a threshold here. */
    BitSet bits(Collection<String> ids) {
        BitSet parts = new BitSet();
        ids.stream().mapToInt(this::bitOf).filter(t -> t >= 0).forEach(parts::set);
        return parts;
    }
}
