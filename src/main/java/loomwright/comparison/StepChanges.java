package loomwright.comparison;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import loomwright.circuit.Part;
import loomwright.circuit.TerminalRef;
import loomwright.comparison.Matching.PartPair;
import loomwright.comparison.PlanComparison.Quantity;
import loomwright.comparison.PlanComparison.ReadingChange;
import loomwright.comparison.PlanComparison.StateChange;
import loomwright.comparison.PlanComparison.StepChange;
import loomwright.operation.PlanReadings.BranchReading;
import loomwright.operation.PlanReadings.NodeReading;
import loomwright.operation.PlanReadings.PartReading;
import loomwright.operation.PlanReadings.StepReadings;
import loomwright.operation.PlanReadings.WireReading;
import org.jspecify.annotations.Nullable;

/** What one step shows in one plan and in the other, at the things that are in both. */
final class StepChanges {
    private static final double SAME = 1e-9;

    private final Matching matching;
    private final StepReadings was;
    private final StepReadings is;
    private final double thresholdV;
    private final double thresholdA;
    private final List<ReadingChange> readings = new ArrayList<>();

    private StepChanges(Matching matching, StepReadings was, StepReadings is, double thresholdV, double thresholdA) {
        this.matching = matching;
        this.was = was;
        this.is = is;
        // Rounding of the solution is no change, even if every change is asked for.
        this.thresholdV = Math.max(thresholdV, SAME);
        this.thresholdA = Math.max(thresholdA, SAME);
    }

    static List<StepChange> of(
            Matching matching,
            List<StepReadings> before,
            List<StepReadings> after,
            double thresholdV,
            double thresholdA) {
        List<StepChange> changes = new ArrayList<>();
        for (int i = 0; i < before.size(); i++) {
            StepChange change = new StepChanges(matching, before.get(i), after.get(i), thresholdV, thresholdA).change();
            boolean settledAlike = change.settledBefore() == change.settledAfter();
            if (!settledAlike
                    || !change.readings().isEmpty()
                    || !change.states().isEmpty()) {
                changes.add(change);
            }
        }
        return changes;
    }

    private StepChange change() {
        List<StateChange> states = List.of();
        boolean bothSolved = !was.nodes().isEmpty() && !is.nodes().isEmpty();
        if (bothSolved) {
            voltages();
            loads();
            wires();
            states = states();
        }
        readings.sort(Comparator.comparing(ReadingChange::quantity)
                .thenComparing(Comparator.comparingDouble(StepChanges::amount).reversed())
                .thenComparing(ReadingChange::at));
        return new StepChange(
                was.step(), was.description(), was.settled(), is.settled(), List.copyOf(readings), states);
    }

    private static double amount(ReadingChange reading) {
        Double change = reading.change();
        // Changes that only rounding tells apart keep the order of their names.
        return change == null ? Double.MAX_VALUE : Math.rint(Math.abs(change) * 1e6);
    }

    /** One reading for each pair of nodes, by the first name in the alphabet of the terminals they share. */
    private void voltages() {
        Map<String, NodeReading> wasAt = byTerminal(was);
        Map<String, NodeReading> isAt = byTerminal(is);
        record NodePair(NodeReading before, NodeReading after) {}
        record Names(String before, String after) {}
        List<Names> names = new ArrayList<>();
        for (PartPair pair : matching.partPairs()) {
            for (String terminal : pair.before().terminals()) {
                if (pair.after().terminals().contains(terminal)) {
                    names.add(new Names(
                            pair.before().terminal(terminal).toString(),
                            pair.after().terminal(terminal).toString()));
                }
            }
        }
        names.sort(Comparator.comparing((Names n) -> smaller(n.before(), n.after()))
                .thenComparing(n -> n.before() + n.after()));
        Set<NodePair> told = new HashSet<>();
        for (Names name : names) {
            NodeReading before = wasAt.get(name.before());
            NodeReading after = isAt.get(name.after());
            if (before != null && after != null && told.add(new NodePair(before, after))) {
                note(Quantity.TO_EARTH, name.before(), name.after(), "V", before.voltageV(), after.voltageV());
            }
        }
    }

    private static String smaller(String one, String other) {
        return one.compareTo(other) <= 0 ? one : other;
    }

    private static Map<String, NodeReading> byTerminal(StepReadings step) {
        Map<String, NodeReading> at = new HashMap<>();
        step.nodes().forEach(node -> node.terminals().forEach(t -> at.put(t, node)));
        return at;
    }

    private void loads() {
        Map<String, PartReading> wasPart = byId(was);
        Map<String, PartReading> isPart = byId(is);
        for (PartPair pair : matching.partPairs()) {
            PartReading before = wasPart.get(pair.before().id());
            PartReading after = isPart.get(pair.after().id());
            if (before == null || after == null) {
                continue;
            }
            if (before.acrossV() != null && after.acrossV() != null) {
                note(Quantity.ACROSS, before.part(), after.part(), "V", before.acrossV(), after.acrossV());
            }
            if (before.branches().size() == 1 && after.branches().size() == 1) {
                currents(pair, before.branches().get(0), after.branches().get(0));
            }
        }
    }

    private void currents(PartPair pair, BranchReading before, BranchReading after) {
        note(Quantity.CURRENT, pair.before().id(), pair.after().id(), "A", before.currentA(), after.currentA());
    }

    private static Map<String, PartReading> byId(StepReadings step) {
        return step.parts().stream().collect(Collectors.toMap(PartReading::part, p -> p));
    }

    private void wires() {
        Map<String, WireReading> isWire = is.wires().stream().collect(Collectors.toMap(WireReading::wire, w -> w));
        for (WireReading before : was.wires()) {
            WireReading after = isWire.get(matching.wires().getOrDefault(before.wire(), ""));
            if (after != null) {
                boolean turned = matching.translated(TerminalRef.parse(before.from()))
                                .toString()
                                .equals(after.to())
                        && matching.translated(TerminalRef.parse(before.to()))
                                .toString()
                                .equals(after.from());
                // Of a wire turned end for end, towards the end that comes later in the alphabet.
                double sign = turned && before.from().compareTo(before.to()) > 0 ? -1 : 1;
                note(
                        Quantity.CURRENT,
                        before.wire(),
                        after.wire(),
                        "A",
                        sign * before.currentA(),
                        (turned ? -sign : sign) * after.currentA());
            }
        }
    }

    private void note(
            Quantity quantity,
            String atBefore,
            String at,
            String unit,
            @Nullable Double before,
            @Nullable Double after) {
        double threshold = unit.equals("A") ? thresholdA : thresholdV;
        Double change = before == null || after == null ? null : (Double) (after - before);
        // Of a point that floats a meter shows nothing: no news where it showed nothing before.
        double amount = change == null ? volts(before) + volts(after) : Math.abs(change);
        boolean worthTelling = amount > threshold;
        if (worthTelling) {
            readings.add(new ReadingChange(
                    quantity, at, at.equals(atBefore) ? null : atBefore, unit, before, after, change));
        }
    }

    private static double volts(@Nullable Double voltageV) {
        return voltageV == null ? 0 : Math.abs(voltageV);
    }

    private List<StateChange> states() {
        Map<String, PartReading> wasPart = byId(was);
        Map<String, PartReading> isPart = byId(is);
        List<StateChange> states = new ArrayList<>();
        for (PartPair pair : matching.partPairs()) {
            String before = state(wasPart, pair.before());
            String after = state(isPart, pair.after());
            if (!before.equals(after)) {
                boolean renamed = !pair.before().id().equals(pair.after().id());
                states.add(new StateChange(
                        pair.after().id(), renamed ? pair.before().id() : null, before, after));
            }
        }
        return states;
    }

    /** State and activity in words; "-" of a part that has neither. */
    private static String state(Map<String, PartReading> parts, Part part) {
        PartReading reading = parts.get(part.id());
        if (reading == null) {
            return "-";
        }
        String text = Stream.of(
                        reading.stateText(),
                        reading.activity() == null ? "" : reading.activity().text())
                .filter(word -> !word.isEmpty())
                .collect(Collectors.joining(", "));
        return text.isEmpty() ? "-" : text;
    }
}
