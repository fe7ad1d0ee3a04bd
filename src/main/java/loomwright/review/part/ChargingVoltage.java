package loomwright.review.part;

import static loomwright.message.Arg.arg;

import java.util.List;
import java.util.Optional;
import loomwright.answer.Basis;
import loomwright.answer.Finding;
import loomwright.circuit.Battery;
import loomwright.circuit.Condition;
import loomwright.circuit.Dynamo;
import loomwright.circuit.Generator;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.VehicleSystem;
import loomwright.review.context.Check;
import loomwright.review.context.FindingCode;
import loomwright.review.context.FindingWording;
import loomwright.review.context.ReviewContext;
import loomwright.review.context.ReviewText;

/** What is regulated to more volts than the battery stands: each alternator and dynamo; in a plan without one the supply while running. */
public final class ChargingVoltage implements Check {
    /** At 12 V; in proportion otherwise. Common practice, no source. */
    private static final double MOST_AT_12_V = 15;

    private static final Basis MOST = Basis.commonPractice(
            "a 12 V system is charged with no more than about 15 V, one of 6 V with 7.5 V, one of 24 V with 30 V");

    @Override
    public List<Finding> check(ReviewContext context) {
        Plan plan = context.plan();
        List<Generator> generators = plan.listParts(Generator.class);
        if (generators.isEmpty()) {
            double runningV = plan.supply(Condition.RUNNING).emfV();
            return plan.listParts(Battery.class).stream()
                    .limit(1)
                    .flatMap(battery -> judge(plan, battery, "supply", runningV).stream())
                    .toList();
        }
        return generators.stream()
                .flatMap(generator ->
                        judge(plan, generator, generator.kind(), chargingV(generator, plan.system())).stream())
                .toList();
    }

    /** What a machine is held to. A compensated dynamo falls with its load: at half its rating; of a third brush the battery decides. */
    private static double chargingV(Generator generator, VehicleSystem system) {
        double setV = generator.regulatedV(system);
        if (generator instanceof Dynamo dynamo) {
            return dynamo.regulation() == Dynamo.Regulation.THIRD_BRUSH
                    ? 0
                    : setV - dynamo.sourceResistanceOhm(system) * dynamo.limitA() / 2;
        }
        return setV;
    }

    private static Optional<Finding> judge(Plan plan, Part source, String setBy, double chargingV) {
        double limitV = plan.system().scaledFrom12V(MOST_AT_12_V);
        return chargingV <= limitV
                ? Optional.empty()
                : Optional.of(Finding.warning(
                                FindingCode.CHARGING_VOLTAGE_HIGH.with(
                                        arg("source", source.thing()),
                                        arg("chargingV", chargingV),
                                        arg("limitV", limitV),
                                        FindingWording.limitRatio(chargingV, limitV),
                                        arg("nominalV", plan.system().nominalVoltageV()),
                                        arg("setBy", setBy)),
                                MOST)
                        .remedy(ReviewText.MEASURE_CHARGING_VOLTAGE.with()));
    }
}
