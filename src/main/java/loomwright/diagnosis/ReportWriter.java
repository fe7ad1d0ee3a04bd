package loomwright.diagnosis;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import loomwright.circuit.Condition;
import loomwright.circuit.Consumer;
import loomwright.circuit.EarthPoint;
import loomwright.circuit.TerminalRef;
import loomwright.circuit.fault.BadJoint;
import loomwright.circuit.fault.DischargedBattery;
import loomwright.circuit.fault.SingleFault;
import loomwright.circuit.fault.SingleFault.Kind;
import loomwright.circuit.fault.WornBattery;
import loomwright.diagnosis.DiagnosisReport.Expected;
import loomwright.diagnosis.DiagnosisReport.Explanation;
import loomwright.diagnosis.DiagnosisReport.NextReading;
import loomwright.diagnosis.DiagnosisReport.ReadingCheck;
import loomwright.diagnosis.DiagnosisReport.Shown;
import loomwright.diagnosis.DiagnosisReport.SupplyFit;
import loomwright.diagnosis.DiagnosisReport.Suspect;
import loomwright.diagnosis.DiagnosisReport.SuspectFault;
import loomwright.diagnosis.DiagnosisReport.Tried;
import loomwright.diagnosis.DiagnosisReport.Verdict;
import loomwright.operation.Point;
import loomwright.operation.Probe;
import loomwright.operation.Quantity;

/** Puts a diagnosis into words and tables. */
final class ReportWriter {
    private static final String SOUND = "No fault: the vehicle is as the plan has it.";

    private static final String DEAD_LOAD =
            ": measure across its own two terminals while it is switched on. Full volts there:"
                    + " a burnt-out lamp, an open winding or worn brushes; with one lead off it reads open on ohms. Hardly"
                    + " any: its way back to earth is open.";

    /** From this share of the nominal voltage on a load is called fed (common practice, no source). */
    private static final double FED_SHARE = 0.75;
    /** More are not named. */
    private static final int MOST_FED = 5;

    private static final String FLAT =
            " A flat battery is low from post to post with everything switched off. Charge it,"
                    + " let it rest for some hours and measure again: if it falls back, it has a dead cell or something drains it;"
                    + " if it does not, find out why it was not charged.";

    private static final String WORN =
            " Measure with the load on (cranking, or headlamps lit) from one post of the battery to"
                    + " the other, on the posts themselves, and then from clamp to clamp: low on the posts too, it is the battery; low"
                    + " on the clamps alone, it is a clamp or lead.";

    private static final String NOT_CHARGED =
            " With the engine at a brisk idle measure from the output of the generator to its"
                    + " own case: low there too, it is the generator, its belt, its regulator or the feed of its field; right there, it is"
                    + " the way to the battery.";

    private final Diagnosis found;
    private final Likelihood likelihood;
    private final List<Measurement> measurements;

    ReportWriter(Diagnosis found) {
        this.found = found;
        this.likelihood = found.trials().likelihood();
        this.measurements = likelihood.measurements();
    }

    DiagnosisReport write() {
        List<Explanation> explanations = new ArrayList<>();
        for (List<FaultCandidate> group : found.groups()) {
            explanations.add(explanation(explanations.size() + 1, group));
        }
        List<FaultCandidate> leading = found.leading();
        List<NextReading> next = found.nextReadings(leading).stream()
                .map(chosen -> nextReading(chosen, leading))
                .toList();
        Verdict verdict = verdict(explanations);
        return new DiagnosisReport(
                found.question().plan().name(),
                verdict,
                summary(verdict, explanations),
                checks(),
                explanations,
                next,
                new Tried(
                        found.singles(),
                        found.pairs(),
                        found.notShown(),
                        found.trials().unsolved()));
    }

    private static Verdict verdict(List<Explanation> explanations) {
        return explanations.stream()
                .filter(Explanation::explains)
                .findFirst()
                .map(e -> switch (e.faultCount()) {
                    case 0 -> Verdict.PLAN_CONSISTENT;
                    case 1 -> Verdict.SINGLE_FAULT;
                    default -> Verdict.FAULT_PAIR;
                })
                .orElse(Verdict.UNEXPLAINED);
    }

    private String summary(Verdict verdict, List<Explanation> explanations) {
        if (verdict == Verdict.UNEXPLAINED) {
            return "None of the faults that were tried explains all readings." + nearest(explanations);
        }
        Explanation first =
                explanations.stream().filter(Explanation::explains).findFirst().orElseThrow();
        int others = first.candidates().size() - 1;
        String tie = others == 0
                ? ""
                : " The readings cannot tell it from " + others + (others == 1 ? " other." : " others.");
        return switch (verdict) {
            case PLAN_CONSISTENT ->
                "The plan as drawn explains all readings; no fault is needed. What gets its volts and does not work is at"
                        + " fault itself" + fed() + DEAD_LOAD;
            case SINGLE_FAULT ->
                "One fault explains all readings: " + first.candidates().get(0).description() + tie + advice(first);
            default ->
                "No single fault explains all readings, these two do: "
                        + first.candidates().get(0).description() + tie + advice(first);
        };
    }

    /** The loads that were measured to be fed, as an aside. */
    private String fed() {
        double leastV = FED_SHARE * found.question().plan().system().nominalVoltageV();
        String fed = found.question().plan().listParts(Consumer.class).stream()
                .filter(load -> IntStream.range(0, measurements.size())
                        .anyMatch(i -> measurements.get(i).quantity() == Quantity.VOLTS
                                && feeds(measurements.get(i).probe(), load)
                                && Math.abs(likelihood.measured(i)) >= leastV))
                .map(Consumer::id)
                .limit(MOST_FED)
                .collect(Collectors.joining(", "));
        return fed.isEmpty() ? "" : " (measured to be fed: " + fed + ")";
    }

    /** Whether one lead is on what feeds a load, the other on where its current is to go: its own return or the chassis. */
    private boolean feeds(Probe probe, Consumer load) {
        Point feed = new Point(load.terminal(load.feedTerminal()));
        return (probe.from().equals(feed) && takesBack(probe.to(), load))
                || (probe.to().equals(feed) && takesBack(probe.from(), load));
    }

    private boolean takesBack(Point point, Consumer load) {
        TerminalRef terminal = point.terminal();
        return terminal == null
                || terminal.equals(load.terminal(load.returnTerminal()))
                || found.question().plan().findPart(terminal.part()).orElseThrow() instanceof EarthPoint;
    }

    /** How a battery is told from what is around it, for an owner (common practice, no source). */
    private static String advice(Explanation explanation) {
        Set<Kind> kinds = explanation.candidates().stream()
                .flatMap(c -> c.faults().stream())
                .map(SuspectFault::kind)
                .collect(Collectors.toSet());
        String advice = "";
        if (kinds.contains(Kind.BATTERY_DISCHARGED)) {
            advice += FLAT;
        }
        if (kinds.contains(Kind.BATTERY_WORN)) {
            advice += WORN;
        }
        if (kinds.contains(Kind.NOT_CHARGING)) {
            advice += NOT_CHARGED;
        }
        return advice;
    }

    /** A reading that alone stands against an explanation may be the wrong one. */
    private static String nearest(List<Explanation> explanations) {
        return explanations.stream()
                .findFirst()
                .map(e -> " Nearest comes: " + e.candidates().get(0).description()
                        + (e.notExplained().size() == 1
                                ? " All but reading " + e.notExplained().get(0)
                                        + " go with it (the first is 0): take that one again."
                                : " " + e.notExplained().size() + " readings do not go with it."))
                .orElse("");
    }

    private Explanation explanation(int rank, List<FaultCandidate> group) {
        FaultCandidate first = group.get(0);
        List<Integer> notExplained = IntStream.range(0, measurements.size())
                .filter(first.fit()::deviates)
                .boxed()
                .toList();
        List<Shown> predicted = new ArrayList<>();
        for (int i = 0; i < measurements.size(); i++) {
            predicted.add(
                    Shown.of(measurements.get(i).quantity(), first.figures().at(i) * share(first, i)));
        }
        List<SupplyFit> supply = new TreeMap<>(first.fit().supplyShares())
                .entrySet().stream().map(this::supply).toList();
        return new Explanation(
                rank,
                first.faults().size(),
                first.fit().explains(),
                found.probability(group),
                first.fit().worst(),
                notExplained,
                group.stream().map(this::suspect).toList(),
                predicted,
                supply);
    }

    private double share(FaultCandidate candidate, int reading) {
        Measurement m = measurements.get(reading);
        return m.quantity() == Quantity.OHMS
                ? 1
                : candidate.fit().supplyShares().getOrDefault(m.condition(), 1.0);
    }

    private SupplyFit supply(Map.Entry<Condition, Double> share) {
        double emfV = found.question().plan().supply(share.getKey()).emfV();
        return new SupplyFit(share.getKey(), share.getValue() * emfV);
    }

    private Suspect suspect(FaultCandidate candidate) {
        List<SuspectFault> faults =
                candidate.faults().stream().map(ReportWriter::fault).toList();
        List<String> fuses = candidate.fusesBlown().stream().sorted().toList();
        return new Suspect(words(candidate), faults, fuses, found.probability(candidate));
    }

    private static SuspectFault fault(SingleFault fault) {
        Double ohm = null;
        if (fault instanceof BadJoint joint) {
            ohm = joint.resistanceOhm();
        } else if (fault instanceof WornBattery battery) {
            ohm = battery.resistanceOhm();
        }
        Double restV = fault instanceof DischargedBattery battery ? (Double) battery.leftV() : null;
        return new SuspectFault(fault.kind(), fault.ids(), fault.description(), ohm, restV);
    }

    private static String words(FaultCandidate candidate) {
        if (candidate.sound()) {
            return SOUND;
        }
        String blown = candidate.fusesBlown().stream().sorted().collect(Collectors.joining(", "));
        return candidate.faults().stream().map(f -> f.description()).collect(Collectors.joining(" "))
                + (blown.isEmpty() ? "" : " It has blown " + blown + ".");
    }

    private List<ReadingCheck> checks() {
        FaultCandidate sound = found.sound();
        List<ReadingCheck> checks = new ArrayList<>();
        for (int i = 0; i < measurements.size(); i++) {
            Measurement m = measurements.get(i);
            checks.add(new ReadingCheck(
                    i,
                    m.probe().from().toString(),
                    m.probe().to().toString(),
                    m.condition(),
                    m.switches(),
                    Shown.of(m.quantity(), likelihood.measured(i)),
                    sound == null
                            ? null
                            : Shown.of(m.quantity(), sound.figures().at(i)),
                    sound == null ? null : sound.fit().deviations().get(i),
                    sound == null || sound.fit().deviates(i)));
        }
        return checks;
    }

    private NextReading nextReading(NextReadings.Chosen chosen, List<FaultCandidate> leading) {
        Measurement m = chosen.measurement();
        List<Expected> expected = new ArrayList<>();
        for (int i = 0; i < leading.size(); i++) {
            expected.add(new Expected(
                    rank(leading.get(i)),
                    words(leading.get(i)),
                    Shown.of(m.quantity(), chosen.figures().get(i))));
        }
        return new NextReading(
                m.probe().from().toString(),
                m.probe().to().toString(),
                m.condition(),
                m.switches(),
                m.quantity(),
                m.description(),
                chosen.gainBits(),
                expected);
    }

    private int rank(FaultCandidate candidate) {
        for (int g = 0; g < found.groups().size(); g++) {
            if (found.groups().get(g).contains(candidate)) {
                return g + 1;
            }
        }
        throw new IllegalStateException("a leading candidate is in no group");
    }
}
