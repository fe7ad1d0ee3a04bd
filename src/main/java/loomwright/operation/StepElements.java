package loomwright.operation;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.IntStream;
import loomwright.circuit.Consumer;
import loomwright.circuit.Part;
import loomwright.network.Element;
import loomwright.network.NetworkScan;
import loomwright.network.Resistor;
import loomwright.network.VoltageSource;

/**
 * All elements that one step of a plan may have in any setting of its open parts and any state of its relays and the like,
 * and which of them are there when.
 */
final class StepElements {
    private final Wiring wiring;
    private final Step step;
    private final List<Element> elements;
    /** Of the elements but for the additions. */
    private final List<Branch> branches;

    /** By id of what they stand for, the places of the branches. */
    private final Map<String, List<Integer>> places = new HashMap<>();

    private final int always;
    /** By open part and setting, the elements that are there then; last by addition, none first. */
    private final List<List<int[]>> bySetting;
    /** By threshold: the elements while inactive, and while active. */
    private final List<List<int[]>> byState;

    StepElements(Wiring wiring, Step step, List<List<Part>> open, Thresholds thresholds, List<Resistor> additions) {
        this.wiring = wiring;
        this.step = step;
        this.elements = new ArrayList<>(wiring.resistors());
        this.branches = new ArrayList<>(wiring.branches());
        Set<String> varying = new HashSet<>();
        open.forEach(settings -> varying.add(settings.get(0).id()));
        thresholds.list().forEach(t -> varying.add(t.part().id()));
        wiring.parts().stream().filter(p -> !varying.contains(p.id())).forEach(p -> add(p, false));
        always = elements.size();
        bySetting = new ArrayList<>();
        open.forEach(settings ->
                bySetting.add(settings.stream().map(s -> add(s, false)).toList()));
        byState = thresholds.list().stream()
                .map(t -> List.of(add(t.part(), false), add(t.part(), true)))
                .toList();
        for (int b = 0; b < branches.size(); b++) {
            places.computeIfAbsent(branches.get(b).id(), id -> new ArrayList<>())
                    .add(b);
        }
        if (!additions.isEmpty()) {
            List<int[]> oneOf = new ArrayList<>();
            oneOf.add(new int[0]);
            for (Resistor addition : additions) {
                oneOf.add(new int[] {elements.size()});
                elements.add(addition);
            }
            bySetting.add(oneOf);
        }
    }

    private int[] add(Part part, boolean active) {
        StepNetwork.PartElements own = wiring.elementsOf(part, step, active);
        int first = elements.size();
        elements.addAll(own.elements());
        branches.addAll(own.branches());
        return IntStream.range(first, elements.size()).toArray();
    }

    /**
     * The network to be scanned.
     *
     * @param changeable whether more than settings and states is to change, see {@link NetworkScan#change}
     */
    NetworkScan network(boolean changeable) {
        boolean[] there = new boolean[elements.size()];
        Arrays.fill(there, 0, always, true);
        return new NetworkScan(wiring.nodeNames().size(), Wiring.CHASSIS_NODE, elements, there, changeable);
    }

    /** The elements of an open part in a setting. */
    int[] inSetting(int open, int setting) {
        return bySetting.get(open).get(setting);
    }

    /** The elements of a part with a threshold. */
    int[] inState(int threshold, boolean active) {
        return byState.get(threshold).get(active ? 1 : 0);
    }

    /** The first element of a part that neither a setting nor a state changes, as a battery or a diode. */
    int firstOf(String part) {
        return alwaysOf(part).findFirst().orElseThrow();
    }

    /** The elements of a part that neither a setting nor a state changes. */
    IntStream alwaysOf(String part) {
        return places.getOrDefault(part, List.of()).stream()
                .mapToInt(Integer::intValue)
                .filter(b -> b < always && branches.get(b).owner() == Branch.Owner.PART);
    }

    /** The elements from a consumer's feed to its return, either way round, whatever its state. */
    int[] between(Consumer consumer) {
        return between(
                consumer, places.getOrDefault(consumer.id(), List.of()).stream().mapToInt(Integer::intValue));
    }

    /** Those of them that are there in one state of its threshold. */
    int[] between(Consumer consumer, int threshold, boolean active) {
        return between(consumer, Arrays.stream(inState(threshold, active)));
    }

    /** How many choices a setting is made of. */
    int choices() {
        return bySetting.size();
    }

    private int[] between(Consumer consumer, IntStream among) {
        Set<String> ends = Set.of(
                consumer.terminal(consumer.feedTerminal()).toString(),
                consumer.terminal(consumer.returnTerminal()).toString());
        return among.filter(b -> branches.get(b).id().equals(consumer.id()))
                // A motor that generates is not fed.
                .filter(b -> !(elements.get(b) instanceof VoltageSource))
                .filter(b -> ends.contains(branches.get(b).from())
                        && ends.contains(branches.get(b).to())
                        && !branches.get(b).from().equals(branches.get(b).to()))
                .toArray();
    }

    /** Whether another step of the same plan is electrically the same. */
    boolean isSameAs(StepElements other) {
        return elements.equals(other.elements) && same(bySetting, other.bySetting) && same(byState, other.byState);
    }

    private static boolean same(List<List<int[]>> one, List<List<int[]>> other) {
        return IntStream.range(0, one.size())
                .allMatch(p -> IntStream.range(0, one.get(p).size())
                        .allMatch(s ->
                                Arrays.equals(one.get(p).get(s), other.get(p).get(s))));
    }
}
