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
import loomwright.backfeed.sneak.SneakReport.Sneak;
import loomwright.circuit.Condition;
import loomwright.circuit.Plan;
import loomwright.circuit.PlanCautions;
import loomwright.operation.PlanAnswer;

/** The sneak paths of a plan, told so that a person can try them at the vehicle. */
public final class SneakAnswer {
    private SneakAnswer() {}

    /**
     * Searches a plan that a person handed in.
     *
     * @throws loomwright.answer.RejectedInput with all faults of the plan, or OVER_LIMIT
     * @throws loomwright.answer.OutOfTime if it takes too long
     */
    public static Answer<SneakReport> of(Plan plan, SneakSearch search, Progress progress) {
        PlanAnswer.requireSound(plan);
        SneakReport report = search.find(plan, progress);
        List<Basis> basis = new ArrayList<>(PlanAnswer.basis(plan));
        basis.add(Basis.computed(
                "the way of the current",
                "solved currents taken apart into loops, the strongest first: flow decomposition of graph theory"));
        basis.add(Basis.fromMemory(
                "sneak path, timing, indication and label; line, dome and H patterns",
                "MIL-STD-785B, task 205, Sneak circuit analysis; RADC-TR-90-109, Integration of Sneak Analysis with"
                        + " Design"));
        return new Answer<>(report, working(report), basis, cautions(plan, report));
    }

    private static List<String> working(SneakReport report) {
        List<String> working = new ArrayList<>();
        working.add(report.combinations() + " combinations of free switches and breaker contacts, each in every step; "
                + report.solvedInFull() + " of them were too close to a limit for the quick solution and were solved in"
                + " full, as was every combination reported.");
        working.add(
                "Of combinations that show the same, those are reported in which no part of the changes alone"
                        + " shows it. A second way that only opens where a first one feeds the load already is not told apart.");
        if (!report.complete()) {
            working.add("There were more such combinations than are followed; the ones with the fewest changes are"
                    + " told.");
        }
        if (report.sneaks().isEmpty()) {
            working.add("In none of them is a load fed that is not meant to be.");
        }
        for (Sneak sneak : report.sneaks()) {
            working.add(sneak.severity().name().toLowerCase(Locale.ROOT) + ": " + sneak.verdict() + " By: "
                    + sneak.path().steps().stream()
                            .map(s -> s.from() + " (" + s.id() + (s.againstFeed() ? ", against its feed" : "") + ")")
                            .collect(Collectors.joining(" > "))
                    + " > "
                    + sneak.path().steps().get(sneak.path().steps().size() - 1).to());
        }
        return working;
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
