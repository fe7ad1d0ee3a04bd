package loomwright.review.part;

import static loomwright.review.context.FindingWording.number;

import java.util.List;
import java.util.Optional;
import loomwright.answer.Basis;
import loomwright.answer.Finding;
import loomwright.answer.Severity;
import loomwright.circuit.Alternator;
import loomwright.circuit.Battery;
import loomwright.circuit.Condition;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.review.context.Check;
import loomwright.review.context.FindingCode;
import loomwright.review.context.FindingWording;
import loomwright.review.context.ReviewContext;

/** What is regulated to more volts than the battery stands: each alternator; in a plan without one the supply while running. */
public final class ChargingVoltage implements Check {
    /** At 12 V; in proportion otherwise. Common practice, no source. */
    private static final double MOST_AT_12_V = 15;

    private static final Basis MOST = Basis.commonPractice(
            "a 12 V system is charged with no more than about 15 V, one of 6 V with 7.5 V, one of 24 V with 30 V");

    @Override
    public List<Finding> check(ReviewContext context) {
        Plan plan = context.plan();
        List<Alternator> alternators = plan.listParts(Alternator.class);
        if (alternators.isEmpty()) {
            double runningV = plan.supply(Condition.RUNNING).emfV();
            return plan.listParts(Battery.class).stream()
                    .limit(1)
                    .flatMap(battery -> judge(
                            plan,
                            battery,
                            "The plan says that the supply has " + number(runningV) + " V with the engine running",
                            runningV)
                            .stream())
                    .toList();
        }
        return alternators.stream()
                .flatMap(alternator -> {
                    double regulatedV = alternator.regulatedV(plan.system());
                    String text = alternator.displayName() + " is regulated to " + number(regulatedV) + " V";
                    return judge(plan, alternator, text, regulatedV).stream();
                })
                .toList();
    }

    private static Optional<Finding> judge(Plan plan, Part source, String text, double chargingV) {
        double limitV = plan.system().scaledFrom12V(MOST_AT_12_V);
        return chargingV <= limitV
                ? Optional.empty()
                : Optional.of(FindingCode.CHARGING_VOLTAGE_HIGH.finding(
                        Severity.WARNING,
                        List.of(source.id()),
                        text + ", more than the " + number(limitV) + " V that a system of "
                                + number(plan.system().nominalVoltageV())
                                + " V should get: the battery gasses and loses its water, lamps and windings burn out early,"
                                + " electronics may fail at once.",
                        FindingWording.against("chargingV", chargingV, "limitV", limitV),
                        MOST,
                        "Measure across the battery with the engine at some speed, all loads off. If it is less, put the plan"
                                + " right; if not, have the regulator set or replaced, and see that its earth and its sensing"
                                + " lead lose no volts."));
    }
}
