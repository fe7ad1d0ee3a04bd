package loomwright.backfeed.sneak;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import loomwright.answer.Answer;
import loomwright.answer.Basis;
import loomwright.answer.Caution;
import loomwright.answer.Progress;
import loomwright.backfeed.BackfeedReport.PathStep;
import loomwright.backfeed.sneak.SneakReport.FaultSneaks;
import loomwright.backfeed.sneak.SneakReport.Sneak;
import loomwright.circuit.Condition;
import loomwright.circuit.Plan;
import loomwright.circuit.PlanCautions;
import loomwright.message.Unconverted;
import loomwright.operation.PlanAnswer;

/** The sneak paths of a plan, told so that a person can try them at the vehicle. */
public final class SneakAnswer {
    private SneakAnswer() {}

    /**
     * Searches a plan that a person handed in.
     *
     * @param singleFaults whether to search it with each single fault too
     * @throws loomwright.answer.RejectedInput with all faults of the plan, or OVER_LIMIT
     * @throws loomwright.answer.OutOfTime if it takes too long
     */
    public static Answer<SneakReport> of(Plan given, boolean singleFaults, SneakSearch search, Progress progress) {
        Plan plan = PlanAnswer.requireSound(given);
        SneakReport report = singleFaults ? search.findWithFaults(plan, progress) : search.find(plan, progress);
        List<Basis> basis = new ArrayList<>(PlanAnswer.basis(plan));
        if (singleFaults) {
            basis.add(Basis.commonPractice(
                    "which single faults are plausible, a bad joint of 3 ohm, a short to earth of" + " 0.01 ohm"));
        }
        basis.add(Basis.computed(
                "the way of the current",
                "solved currents taken apart into loops, the strongest first: flow decomposition of graph theory"));
        basis.add(Basis.fromMemory(
                "sneak path, timing, indication and label; line, dome and H patterns",
                "MIL-STD-785B, task 205, Sneak circuit analysis; RADC-TR-90-109, Integration of Sneak Analysis with"
                        + " Design"));
        return new Answer<>(report, Unconverted.lines(working(report)), basis, cautions(plan, report));
    }

    private static List<String> working(SneakReport report) {
        List<String> working = new ArrayList<>();
        working.add(report.combinations() + " combinations of free switches and breaker contacts, each in every step"
                + (report.faults() == 0 ? "; " : ", without a fault and with each of " + report.faults() + "; ")
                + report.solvedInFull() + " of them were too close to a limit for the quick solution and were solved in"
                + " full, as was every combination reported.");
        working.add(
                "Of combinations that show the same, those are reported in which no part of the changes alone"
                        + " shows it. A second way that only opens where a first one feeds the load already is not told apart.");
        if (report.faults() > 0) {
            working.add(
                    "Of a fault is told what it alone brings about: loads that are fed more strongly than in the same"
                            + " combination without it, and by more than a trickle. Fuses are taken to hold.");
        }
        if (!report.complete()) {
            working.add("There were more such combinations than are followed; the ones with the fewest changes are"
                    + " told.");
        }
        if (report.sneaks().isEmpty()) {
            working.add((report.faults() == 0 ? "" : "Without a fault: ")
                    + "In none of them is a load fed that is not meant to be.");
        }
        report.sneaks().forEach(sneak -> working.add(words(sneak)));
        for (FaultSneaks faulty : report.withFaults()) {
            faulty.sneaks().forEach(sneak -> working.add(faulty.words() + " " + words(sneak)));
        }
        return working;
    }

    private static String words(Sneak sneak) {
        List<PathStep> steps = sneak.path().steps();
        return sneak.severity().name().toLowerCase(Locale.ROOT) + ": " + sneak.verdict() + " By: "
                + steps.stream()
                        .map(s -> s.from() + " (" + s.id() + (s.againstFeed() ? ", against its feed" : "") + ")")
                        .collect(Collectors.joining(" > "))
                + " > " + steps.get(steps.size() - 1).to();
    }

    private static List<Caution> cautions(Plan plan, SneakReport report) {
        Set<Caution> cautions = EnumSet.copyOf(PlanCautions.of(plan));
        boolean liveWhenOff = report.sneaks().stream()
                .flatMap(s -> s.occurrences().stream())
                .anyMatch(o -> o.step().condition() == Condition.OFF);
        if (liveWhenOff) {
            cautions.add(Caution.LIVE_WHEN_OFF);
        }
        return List.copyOf(cautions);
    }
}
