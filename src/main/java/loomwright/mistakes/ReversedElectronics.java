package loomwright.mistakes;

import static loomwright.message.Arg.arg;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleBiFunction;
import loomwright.circuit.Alternator;
import loomwright.circuit.Diode;
import loomwright.circuit.IgnitionModule;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.TerminalRef;
import loomwright.circuit.Wire;
import loomwright.message.Argument.Instant;
import loomwright.message.Message;
import loomwright.mistakes.MistakesReport.Limit;
import loomwright.mistakes.MistakesReport.Overload;
import loomwright.operation.PlanSolver;
import loomwright.operation.SolvedStep;
import loomwright.operation.Step;

/**
 * What flows when an alternator or a module is fed backwards: both contain silicon junctions from the return to the supply
 * terminal that block in use and conduct then (common practice, no source), so the plan is solved again with a diode there.
 */
final class ReversedElectronics {
    /** From here a silicon junction conducts. */
    private static final double CONDUCTS_V = 0.7;

    private static final String DIODE = "reversed-junction";

    private ReversedElectronics() {}

    private record Junction(String supply, String back) {}

    private static List<Junction> junctions(Part part) {
        if (part instanceof Alternator) {
            return List.of(new Junction(Alternator.OUTPUT, Alternator.RETURN));
        } else if (part instanceof IgnitionModule) {
            return List.of(
                    new Junction(IgnitionModule.SUPPLY, IgnitionModule.RETURN),
                    new Junction(IgnitionModule.SWITCHED, IgnitionModule.RETURN));
        }
        return List.of();
    }

    /** One for each junction that is fed backwards with the mistake and not without. */
    static List<Overload> list(
            List<SolvedStep> sound, List<SolvedStep> faulty, SwitchSetting setting, PlanSolver solver) {
        List<Overload> found = new ArrayList<>();
        for (Part part : sound.get(0).plan().parts()) {
            for (Junction junction : junctions(part)) {
                TerminalRef plus = part.terminal(junction.supply());
                TerminalRef minus = part.terminal(junction.back());
                if (lowestV(sound, plus, minus) > -CONDUCTS_V) {
                    // Of those that conduct one is enough: a step may be that of the sound plan where nothing is other.
                    faulty.stream()
                            .filter(step -> step.solved() && step.acrossV(plus, minus) < -CONDUCTS_V)
                            .findFirst()
                            .ifPresent(step -> found.add(overload(part, plus, minus, step.plan(), setting, solver)));
                }
            }
        }
        return found;
    }

    /** Whether nothing that is fed forwards in a step of the sound plan is fed backwards in one with these volts. */
    static boolean addsNothing(SolvedStep sound, ToDoubleBiFunction<TerminalRef, TerminalRef> volts) {
        for (Part part : sound.plan().parts()) {
            for (Junction junction : junctions(part)) {
                TerminalRef plus = part.terminal(junction.supply());
                TerminalRef minus = part.terminal(junction.back());
                if (volts.applyAsDouble(plus, minus) < -CONDUCTS_V && sound.acrossV(plus, minus) > -CONDUCTS_V) {
                    return false;
                }
            }
        }
        return true;
    }

    private static double lowestV(List<SolvedStep> steps, TerminalRef plus, TerminalRef minus) {
        return steps.stream()
                .filter(SolvedStep::solved)
                .mapToDouble(s -> s.acrossV(plus, minus))
                .min()
                .orElse(0);
    }

    private static Overload overload(
            Part part, TerminalRef plus, TerminalRef minus, Plan plan, SwitchSetting setting, PlanSolver solver) {
        Diode junction = Diode.silicon(DIODE, null);
        List<Part> parts = new ArrayList<>(plan.parts());
        parts.add(junction);
        List<Wire> wires = new ArrayList<>(plan.wires());
        // Short enough to be nothing beside the junction's own slope.
        wires.add(Wire.ofResistance(DIODE + "-in", minus, junction.terminal(Diode.ANODE), 1e-4));
        wires.add(Wire.ofResistance(DIODE + "-out", junction.terminal(Diode.CATHODE), plus, 1e-4));
        double mostA = 0;
        Instant when = setting.at(Step.OFF);
        for (SolvedStep solved : solver.solve(plan.with(parts, wires))) {
            for (int i = 0; solved.solved() && i < solved.branches().size(); i++) {
                if (solved.branches().get(i).id().equals(DIODE) && solved.currentA(i) > mostA) {
                    mostA = solved.currentA(i);
                    when = setting.at(solved.step());
                }
            }
        }
        Message message = MistakeText.FED_BACKWARDS.with(
                arg("part", part.thing()),
                arg("currentA", mostA),
                arg("from", plan.describe(minus)),
                arg("to", plan.describe(plus)),
                arg("when", when));
        return new Overload(Limit.REVERSED_ELECTRONICS, part.id(), when, mostA, 0, false, message);
    }
}
