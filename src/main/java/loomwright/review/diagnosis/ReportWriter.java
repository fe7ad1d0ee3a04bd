package loomwright.review.diagnosis;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import loomwright.circuit.Condition;
import loomwright.operation.Quantity;
import loomwright.operation.fault.BadJoint;
import loomwright.review.diagnosis.DiagnosisReport.Expected;
import loomwright.review.diagnosis.DiagnosisReport.Explanation;
import loomwright.review.diagnosis.DiagnosisReport.NextReading;
import loomwright.review.diagnosis.DiagnosisReport.ReadingCheck;
import loomwright.review.diagnosis.DiagnosisReport.Shown;
import loomwright.review.diagnosis.DiagnosisReport.SupplyFit;
import loomwright.review.diagnosis.DiagnosisReport.Suspect;
import loomwright.review.diagnosis.DiagnosisReport.SuspectFault;
import loomwright.review.diagnosis.DiagnosisReport.Tried;
import loomwright.review.diagnosis.DiagnosisReport.Verdict;

/** Puts a diagnosis into words and tables. */
final class ReportWriter {
    private static final String SOUND = "No fault: the vehicle is as the plan has it.";

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
        for (List<Candidate> group : found.groups()) {
            explanations.add(explanation(explanations.size() + 1, group));
        }
        List<Candidate> leading = found.leading();
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
                    case 0 -> Verdict.NO_FAULT_NEEDED;
                    case 1 -> Verdict.SINGLE_FAULT;
                    default -> Verdict.FAULT_PAIR;
                })
                .orElse(Verdict.NONE_OF_THESE);
    }

    private static String summary(Verdict verdict, List<Explanation> explanations) {
        if (verdict == Verdict.NONE_OF_THESE) {
            return "None of the faults that were tried explains all readings." + nearest(explanations);
        }
        Explanation first =
                explanations.stream().filter(Explanation::explains).findFirst().orElseThrow();
        int others = first.candidates().size() - 1;
        String tie = others == 0
                ? ""
                : " The readings cannot tell it from " + others + (others == 1 ? " other." : " others.");
        return switch (verdict) {
            case NO_FAULT_NEEDED ->
                "The plan as drawn explains all readings; no fault is needed. What gets its volts and does not work is at"
                        + " fault itself.";
            case SINGLE_FAULT ->
                "One fault explains all readings: " + first.candidates().get(0).words() + tie;
            default ->
                "No single fault explains all readings, these two do: "
                        + first.candidates().get(0).words() + tie;
        };
    }

    /** A reading that alone stands against an explanation may be the wrong one. */
    private static String nearest(List<Explanation> explanations) {
        return explanations.stream()
                .findFirst()
                .map(e -> " Nearest comes: " + e.candidates().get(0).words()
                        + (e.notExplained().size() == 1
                                ? " All but reading " + e.notExplained().get(0)
                                        + " go with it (the first is 0): take that one again."
                                : " " + e.notExplained().size() + " readings do not go with it."))
                .orElse("");
    }

    private Explanation explanation(int rank, List<Candidate> group) {
        Candidate first = group.get(0);
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

    private double share(Candidate candidate, int reading) {
        Measurement m = measurements.get(reading);
        return m.quantity() == Quantity.OHMS
                ? 1
                : candidate.fit().supplyShares().getOrDefault(m.condition(), 1.0);
    }

    private SupplyFit supply(Map.Entry<Condition, Double> share) {
        double emfV = found.question()
                .plan()
                .conditions()
                .in(share.getKey(), found.question().plan().system())
                .emfV();
        return new SupplyFit(share.getKey(), share.getValue() * emfV);
    }

    private Suspect suspect(Candidate candidate) {
        List<SuspectFault> faults = candidate.faults().stream()
                .map(f -> new SuspectFault(
                        f.kind(), f.ids(), f.words(), f instanceof BadJoint joint ? joint.resistanceOhm() : null))
                .toList();
        List<String> fuses = candidate.fusesBlown().stream().sorted().toList();
        return new Suspect(words(candidate), faults, fuses, found.probability(candidate));
    }

    private static String words(Candidate candidate) {
        if (candidate.sound()) {
            return SOUND;
        }
        String blown = candidate.fusesBlown().stream().sorted().collect(Collectors.joining(", "));
        return candidate.faults().stream().map(f -> f.words()).collect(Collectors.joining(" "))
                + (blown.isEmpty() ? "" : " It has blown " + blown + ".");
    }

    private List<ReadingCheck> checks() {
        Candidate sound = found.sound();
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

    private NextReading nextReading(NextReadings.Chosen chosen, List<Candidate> leading) {
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
                m.words(),
                chosen.gainBits(),
                expected);
    }

    private int rank(Candidate candidate) {
        for (int g = 0; g < found.groups().size(); g++) {
            if (found.groups().get(g).contains(candidate)) {
                return g + 1;
            }
        }
        throw new IllegalStateException("a leading candidate is in no group");
    }
}
