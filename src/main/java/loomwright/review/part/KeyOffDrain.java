package loomwright.review.part;

import static loomwright.message.Arg.arg;
import static loomwright.message.Arg.messages;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import loomwright.answer.Finding;
import loomwright.answer.Severity;
import loomwright.backfeed.Survey.Moment;
import loomwright.circuit.Alternator;
import loomwright.circuit.Battery;
import loomwright.circuit.BatteryLaw;
import loomwright.circuit.Coil;
import loomwright.circuit.Consumer;
import loomwright.circuit.Motor;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.judgement.DrainRule;
import loomwright.judgement.Verdict;
import loomwright.operation.SolvedStep;
import loomwright.operation.Step;
import loomwright.review.context.Check;
import loomwright.review.context.FindingCode;
import loomwright.review.context.FindingWording;
import loomwright.review.context.ReviewContext;
import loomwright.review.context.ReviewText;

/**
 * What the battery gives with the key off, however the switches stand: what a switch can turn off is no drain but a load
 * that somebody left on.
 */
public final class KeyOffDrain implements Check {
    private static final int MINUTES_PER_HOUR = 60;
    /** Less is a leak of the arithmetic, or of a dirty battery. */
    private static final double LEAST_A = 0.0005;

    @Override
    public List<Finding> check(ReviewContext context) {
        return context.moments().stream()
                .filter(m -> m.solved().step() == Step.OFF)
                .min(Comparator.comparingDouble(m -> batteryA(m.solved())))
                .flatMap(m -> finding(context.plan(), m))
                .stream()
                .toList();
    }

    private static double batteryA(SolvedStep solved) {
        return solved.plan().listParts(Battery.class).stream()
                .mapToDouble(battery -> Math.abs(solved.currentA(solved.firstBranchOf(battery.id()))))
                .max()
                .orElse(0);
    }

    private static Optional<Finding> finding(Plan plan, Moment moment) {
        SolvedStep solved = moment.solved();
        double currentA = batteryA(solved);
        List<Consumer> live = new ArrayList<>(plan.listParts(Consumer.class).stream()
                .filter(load -> Math.abs(solved.currentA(load)) >= LEAST_A)
                .sorted(Comparator.comparingDouble((Consumer load) -> -Math.abs(solved.currentA(load))))
                .toList());
        double windingA = live.stream()
                .filter(load -> load instanceof Coil || load instanceof Motor)
                .mapToDouble(load -> Math.abs(solved.currentA(load)))
                .max()
                .orElse(0);
        Verdict verdict = DrainRule.judge(currentA, windingA);
        Map<Part, Double> takesA = new LinkedHashMap<>();
        live.forEach(load -> takesA.put(load, Math.abs(solved.currentA(load))));
        plan.listParts(Alternator.class).forEach(alternator -> {
            Double leakageA = alternator.leakageA();
            if (leakageA != null) {
                takesA.put(alternator, leakageA * leakedShare(solved, alternator));
            }
        });
        if (verdict.level().severity().isEmpty() || takesA.isEmpty()) {
            return Optional.empty();
        }
        double capacityAh = plan.listParts(Battery.class).stream()
                .map(Battery::capacityAh)
                .mapToDouble(ah -> ah == null ? BatteryLaw.USUAL_CAPACITY_AH : ah)
                .min()
                .orElse(BatteryLaw.USUAL_CAPACITY_AH);
        double hours = DrainRule.hours(currentA, capacityAh);
        return Optional.of(Finding.of(
                        verdict.level().severity().orElse(Severity.NOTE),
                        FindingCode.KEY_OFF_DRAIN.with(
                                arg("currentA", currentA),
                                arg("normalA", DrainRule.NORMAL_A),
                                FindingWording.limitRatio(currentA, DrainRule.NORMAL_A),
                                arg("capacity", Math.round(capacityAh)),
                                arg("hours", Math.round(hours)),
                                arg("minutes", Math.round(MINUTES_PER_HOUR * hours)),
                                messages(
                                        "loads",
                                        takesA.entrySet().stream()
                                                .map(load -> ReviewText.LOAD_WITH_CURRENT.with(
                                                        arg(
                                                                "load",
                                                                load.getKey().thing()),
                                                        arg("currentA", load.getValue())))
                                                .toList())),
                        DrainRule.BASIS)
                .about(takesA.keySet().stream().map(Part::id).toList())
                .remedy(
                        live.isEmpty()
                                ? ReviewText.REPAIR_RECTIFIER.with(arg(
                                        "generator",
                                        takesA.keySet().iterator().next().thing()))
                                : ReviewText.FEED_FROM_SWITCHED_TERMINAL.with()));
    }

    /** What the diodes of an alternator let back, as a share of what they do at the nominal voltage. */
    private static double leakedShare(SolvedStep solved, Alternator alternator) {
        return Math.abs(solved.acrossV(alternator.terminal(Alternator.OUTPUT), alternator.terminal(Alternator.RETURN)))
                / solved.plan().system().nominalVoltageV();
    }
}
