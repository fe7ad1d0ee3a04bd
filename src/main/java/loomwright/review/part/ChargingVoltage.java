package loomwright.review.part;

import static loomwright.message.Arg.arg;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import loomwright.answer.Finding;
import loomwright.answer.Severity;
import loomwright.backfeed.Survey.Moment;
import loomwright.circuit.Alternator;
import loomwright.circuit.Battery;
import loomwright.circuit.Condition;
import loomwright.circuit.Dynamo;
import loomwright.circuit.Generator;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.Switch;
import loomwright.circuit.VehicleSystem;
import loomwright.judgement.ChargingRule;
import loomwright.judgement.Level;
import loomwright.judgement.Verdict;
import loomwright.operation.FeedStrength;
import loomwright.operation.GeneratorOutput;
import loomwright.operation.OutputOverSpeed;
import loomwright.operation.SolvedStep;
import loomwright.operation.Step;
import loomwright.review.context.Check;
import loomwright.review.context.FindingCode;
import loomwright.review.context.FindingWording;
import loomwright.review.context.ReviewContext;
import loomwright.review.context.ReviewText;
import loomwright.review.context.WorstCaseOrder;

/**
 * Each alternator and dynamo: the volts at which it charges, and whether it gives what runs with the engine. In a plan
 * without one the supply while running stands for its volts.
 */
public final class ChargingVoltage implements Check {
    @Override
    public List<Finding> check(ReviewContext context) {
        Plan plan = context.plan();
        List<Generator> generators = plan.listParts(Generator.class);
        if (generators.isEmpty()) {
            double runningV = plan.supply(Condition.RUNNING).emfV();
            return plan.listParts(Battery.class).stream()
                    .limit(1)
                    .flatMap(battery -> voltage(plan, battery, "supply", runningV).stream())
                    .toList();
        }
        return generators.stream()
                .flatMap(generator -> Stream.concat(
                        chargingV(generator, plan.system())
                                .flatMap(chargingV -> voltage(plan, generator, generator.kind(), chargingV))
                                .stream(),
                        Stream.concat(load(context, generator).stream(), slow(context, generator).stream())))
                .toList();
    }

    /** What a machine is held to. A compensated dynamo falls with its load: at half its rating; of a third brush the battery decides. */
    private static Optional<Double> chargingV(Generator generator, VehicleSystem system) {
        double setV = generator.regulatedV(system);
        if (generator instanceof Dynamo dynamo) {
            return dynamo.regulation() == Dynamo.Regulation.THIRD_BRUSH
                    ? Optional.empty()
                    : Optional.of(setV - dynamo.sourceResistanceOhm(system) * dynamo.limitA() / 2);
        }
        return Optional.of(setV);
    }

    private static Optional<Finding> voltage(Plan plan, Part source, String setBy, double chargingV) {
        double nominalV = plan.system().nominalVoltageV();
        Verdict verdict = ChargingRule.judge(chargingV, nominalV);
        boolean low = chargingV < verdict.limit();
        return verdict.level()
                .severity()
                .map(severity -> Finding.of(
                                severity,
                                (low ? FindingCode.CHARGING_VOLTAGE_LOW : FindingCode.CHARGING_VOLTAGE_HIGH)
                                        .with(
                                                arg("source", source.thing()),
                                                arg("chargingV", chargingV),
                                                arg("limitV", verdict.limit()),
                                                low
                                                        ? FindingWording.limitRatio(verdict.limit(), chargingV)
                                                        : FindingWording.limitRatio(chargingV, verdict.limit()),
                                                arg("nominalV", nominalV),
                                                arg("setBy", setBy)),
                                verdict.basis())
                        .remedy(ReviewText.MEASURE_CHARGING_VOLTAGE.with(arg("low", low ? "yes" : "no"))));
    }

    /** Whether a push button is held, which nobody does for long: a horn runs no battery flat. */
    private static boolean isPressed(Plan plan, Moment moment) {
        return plan.listParts(Switch.class).stream()
                .anyMatch(chosen ->
                        chosen.momentary() && moment.situation().changed().containsKey(chosen.id()));
    }

    /** What flows at most with the engine running: from the machine and, where that is not enough, from the battery. */
    private static Optional<Finding> load(ReviewContext context, Generator generator) {
        return context.lastingMoments().stream()
                .filter(m -> m.solved().step() == Step.RUNNING
                        && !isPressed(context.plan(), m)
                        && (GeneratorOutput.outputA(m.solved(), generator) > FeedStrength.TRICKLE_A
                                || !OutputOverSpeed.charges(generator))
                        && judge(m.solved(), generator).level() != Level.FITS)
                .min(WorstCaseOrder.mostOf(m -> judge(m.solved(), generator).value()))
                .map(m -> overloaded(generator, m));
    }

    /** At the speed that the plan states: what is used beyond what the machine then gives. Its rating would do, so the engine need only turn faster. */
    private static Optional<Finding> slow(ReviewContext context, Generator generator) {
        Double speedRpm = generator.speedRpm();
        if (speedRpm == null || OutputOverSpeed.fraction(generator) == 1) {
            return Optional.empty();
        }
        double limitA = OutputOverSpeed.limitA(generator);
        return context.lastingMoments().stream()
                .filter(m -> m.solved().step() == Step.RUNNING
                        && !isPressed(context.plan(), m)
                        && GeneratorOutput.batteriesA(m.solved()) > FeedStrength.TRICKLE_A
                        && usedA(m.solved(), generator) > limitA
                        && judge(m.solved(), generator).level() == Level.FITS)
                .min(WorstCaseOrder.mostOf(m -> usedA(m.solved(), generator)))
                .map(m -> Finding.of(
                                Severity.NOTE,
                                FindingCode.GENERATOR_SLOW.with(
                                        arg("generator", generator.thing()),
                                        arg("charges", OutputOverSpeed.charges(generator) ? "yes" : "no"),
                                        arg("speedRpm", speedRpm),
                                        arg("cutInRpm", OutputOverSpeed.cutInRpm(generator)),
                                        arg("limitA", limitA),
                                        arg("loadsA", usedA(m.solved(), generator)),
                                        FindingWording.when(m)),
                                generator instanceof Alternator
                                        ? ChargingRule.OUTPUT_BASIS
                                        : ChargingRule.DYNAMO_SPEED_BASIS)
                        .remedy(ReviewText.RUN_GENERATOR_FASTER.with(arg("generator", generator.thing()))));
    }

    private static double usedA(SolvedStep solved, Generator generator) {
        return GeneratorOutput.outputA(solved, generator) + GeneratorOutput.batteriesA(solved);
    }

    private static Verdict judge(SolvedStep solved, Generator generator) {
        return ChargingRule.judgeLoads(usedA(solved, generator), generator.limitA());
    }

    private static Finding overloaded(Generator generator, Moment moment) {
        Verdict verdict = judge(moment.solved(), generator);
        boolean alternator = generator instanceof Alternator;
        return Finding.of(
                        verdict.level().severity().orElse(Severity.NOTE),
                        FindingCode.GENERATOR_OVERLOADED.with(
                                arg("generator", generator.thing()),
                                arg("loadsA", verdict.value()),
                                arg("limitA", verdict.limit()),
                                FindingWording.limitRatio(verdict.value(), verdict.limit()),
                                arg("idle", alternator ? "yes" : "no"),
                                arg("idleA", ChargingRule.idleA(generator.limitA())),
                                FindingWording.when(moment)),
                        verdict.basis())
                .remedy(ReviewText.FIT_LARGER_GENERATOR.with(arg("ratingA", ChargingRule.chosenA(verdict.value()))));
    }
}
