package loomwright.mistakes;

import static loomwright.message.Arg.arg;

import java.util.ArrayList;
import java.util.List;
import loomwright.answer.Severity;
import loomwright.circuit.Capacitor;
import loomwright.circuit.Coil;
import loomwright.circuit.ContactBreaker;
import loomwright.circuit.Dynamo;
import loomwright.circuit.Generator;
import loomwright.circuit.IgnitionModule;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.judgement.ChargingRule;
import loomwright.judgement.Level;
import loomwright.operation.GeneratorOutput;
import loomwright.operation.PlanSolver;
import loomwright.operation.SolvedStep;
import loomwright.operation.Step;

/**
 * Whether the ignition still sparks and the battery is still charged, which steady currents alone do not tell: a spark comes
 * when the primary current is interrupted, so the plan is solved with the key on and the breaker open as well. The rules are
 * common practice, no source.
 */
final class SparkAndCharge {
    /** A current through a coil whose breaker stands open. */
    private static final double UNBROKEN_A = 0.1;
    /** Less of what a part had is as good as nothing. */
    private static final double LOST = 0.2;
    /** An alternator that gives less than this gives nothing. */
    private static final double GIVES_A = 1e-3;

    private static final double MEASURABLE_V = 0.05;

    private final Plan plan;
    private final List<SolvedStep> sound;
    private final SolvedStep soundOpen;

    /**
     * Looks at the sound plan.
     *
     * @param sound its steps
     */
    SparkAndCharge(Plan plan, List<SolvedStep> sound, PlanSolver solver) {
        this.plan = plan;
        this.sound = sound;
        this.soundOpen = withBreakersOpen(plan, solver);
    }

    /** What a fault takes from spark and charge. */
    List<Note> compare(Plan faulty, List<SolvedStep> solved, PlanSolver solver) {
        List<Note> notes = new ArrayList<>();
        if (!plan.listParts(Coil.class).isEmpty()) {
            compareSpark(withBreakersOpen(faulty, solver), notes);
        }
        for (Generator generator : plan.listParts(Generator.class)) {
            compareCharge(generator, solved, notes);
        }
        return notes;
    }

    private static SolvedStep withBreakersOpen(Plan whole, PlanSolver solver) {
        Plan open = whole;
        for (Part part : whole.parts()) {
            if (part instanceof ContactBreaker breaker) {
                open = open.withPart(breaker.whenStopped(false));
            } else if (part instanceof IgnitionModule module) {
                open = open.withPart(module.whenStopped(false));
            }
        }
        return at(solver.solve(open, Step.RUN), Step.RUN);
    }

    private static SolvedStep at(List<SolvedStep> steps, Step step) {
        return steps.stream().filter(s -> s.step() == step).findFirst().orElseThrow();
    }

    private void compareSpark(SolvedStep open, List<Note> notes) {
        if (!open.solved() || !soundOpen.solved()) {
            return;
        }
        for (Coil coil : plan.listParts(Coil.class)) {
            if (Math.abs(soundOpen.currentA(coil)) < UNBROKEN_A && Math.abs(open.currentA(coil)) >= UNBROKEN_A) {
                notes.add(new Note(Severity.WARNING, MistakeText.NO_SPARK.with(arg("coil", coil.thing()))));
            }
        }
        for (Capacitor capacitor : plan.listParts(Capacitor.class)) {
            for (ContactBreaker breaker : plan.listParts(ContactBreaker.class)) {
                if (isAcross(capacitor, breaker, soundOpen)
                        && across(breaker, open) > MEASURABLE_V
                        && !isAcross(capacitor, breaker, open)) {
                    notes.add(new Note(
                            Severity.WARNING,
                            MistakeText.CAPACITOR_OFF.with(
                                    arg("capacitor", capacitor.thing()), arg("contacts", breaker.thing()))));
                }
            }
        }
    }

    private static boolean isAcross(Capacitor capacitor, ContactBreaker breaker, SolvedStep open) {
        double breakerV = across(breaker, open);
        return breakerV > MEASURABLE_V && Math.abs(across(capacitor, open) - breakerV) <= LOST * breakerV;
    }

    private static double across(Part part, SolvedStep solved) {
        return Math.abs(solved.acrossV(
                part.terminal(part.terminals().get(0)),
                part.terminal(part.terminals().get(1))));
    }

    private void compareCharge(Generator generator, List<SolvedStep> faulty, List<Note> notes) {
        SolvedStep was = at(sound, Step.RUNNING);
        SolvedStep is = at(faulty, Step.RUNNING);
        if (!was.solved() || !is.solved()) {
            return;
        }
        if (GeneratorOutput.outputA(was, generator) > GIVES_A
                && GeneratorOutput.outputA(is, generator) <= leastA(generator, was)) {
            notes.add(new Note(Severity.DANGER, MistakeText.NO_CHARGE.with(arg("generator", generator.thing()))));
        }
        overcharge(generator, was, is, notes);
        if (generator instanceof Dynamo) {
            return;
        }
        double wasV = fieldV(generator, at(sound, Step.RUN));
        double isV = fieldV(generator, at(faulty, Step.RUN));
        if (wasV > MEASURABLE_V && isV < LOST * wasV) {
            notes.add(new Note(Severity.WARNING, MistakeText.NO_FIELD.with(arg("generator", generator.thing()))));
        }
    }

    /** As the review judges the volts of charging. */
    private void overcharge(Generator generator, SolvedStep was, SolvedStep is, List<Note> notes) {
        double nominalV = plan.system().nominalVoltageV();
        Level before = ChargingRule.judgeHigh(outputV(generator, was), nominalV);
        Level after = ChargingRule.judgeHigh(outputV(generator, is), nominalV);
        if (after.compareTo(before) > 0 && GeneratorOutput.outputA(is, generator) > GIVES_A) {
            notes.add(new Note(
                    after.severity().orElseThrow(),
                    MistakeText.OVERCHARGED.with(
                            arg("generator", generator.thing()), arg("outputV", outputV(generator, is)))));
        }
    }

    private static double outputV(Generator generator, SolvedStep solved) {
        return Math.abs(solved.acrossV(
                generator.terminal(generator.outputTerminal()), generator.terminal(generator.returnTerminal())));
    }

    /** A dynamo that has not built up still gives what the magnetism left in it makes. */
    private static double leastA(Generator generator, SolvedStep was) {
        return generator instanceof Dynamo ? LOST * GeneratorOutput.outputA(was, generator) : GIVES_A;
    }

    private double fieldV(Generator generator, SolvedStep solved) {
        return solved.solved()
                ? Math.abs(solved.acrossV(
                        generator.terminal(generator.lampTerminal()),
                        generator.terminal(generator.earthedPole(plan.system()))))
                : 0;
    }
}
