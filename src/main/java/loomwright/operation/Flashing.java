package loomwright.operation;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import loomwright.circuit.Consumer;
import loomwright.circuit.Flasher;
import loomwright.circuit.Plan;
import loomwright.circuit.VehicleSystem;
import loomwright.judgement.FlasherRule;
import loomwright.operation.PlanReadings.FlashReading;
import loomwright.operation.PlanReadings.FlashedLoad;

/**
 * Flasher units at work: a step is solved with the contact closed, and once more with it open, beginning in the state that the
 * first leaves. What flows in the mean follows from the share of the time. Nothing is computed in time.
 */
public final class Flashing {
    /** Volts at 49 from which it counts as supplied, as a share of the nominal ones (common practice, no source). */
    private static final double SUPPLIED_SHARE = 0.3;

    private Flashing() {}

    /** What a flasher unit does in a solved step. */
    public static FlasherRule.State state(SolvedStep solved, Flasher flasher) {
        VehicleSystem system = solved.plan().system();
        double feedV = Math.abs(
                solved.voltageV(solved.node(flasher.terminal(Flasher.FEED))).orElse(0));
        boolean supplied = flasher.electronic()
                ? Math.abs(solved.acrossV(flasher.terminal(Flasher.FEED), flasher.terminal(Flasher.EARTH)))
                        >= flasher.leastSupplyV(system)
                : feedV >= SUPPLIED_SHARE * system.nominalVoltageV();
        return FlasherRule.state(flasher, system, supplied, loadA(solved, flasher));
    }

    /** What flows through its contact to 49a while that is closed, A, 0 or more. */
    public static double loadA(SolvedStep solved, Flasher flasher) {
        String output = flasher.terminal(Flasher.OUTPUT).toString();
        for (int i = solved.firstBranchOf(flasher.id()); i < solved.endBranchOf(flasher.id()); i++) {
            if (solved.branches().get(i).to().equals(output)) {
                return Math.abs(solved.currentA(i));
            }
        }
        return 0;
    }

    /** By step, the flasher units that have lamps to flash: both instants and the mean. */
    static Map<Step, List<FlashReading>> read(Plan plan, List<SolvedStep> steps, PlanSolver solver) {
        Map<Step, List<FlashReading>> byStep = new HashMap<>();
        for (Flasher flasher : plan.listParts(Flasher.class)) {
            Plan dark = plan.with(
                    plan.parts().stream()
                            .map(part -> part.id().equals(flasher.id()) ? flasher.dark() : part)
                            .toList(),
                    plan.wires());
            PlanSettings settings = solver.settings(dark);
            for (SolvedStep lit : steps) {
                if (!lit.solved()) {
                    continue;
                }
                FlasherRule.State state = state(lit, flasher);
                if (state == FlasherRule.State.NOT_FLASHING) {
                    double loadA = loadA(lit, flasher);
                    put(byStep, lit, new FlashReading(flasher.id(), state, loadA, loadA, 1, 0, List.of()));
                } else if (state.flashes()) {
                    SolvedStep off = settings.solve(dark, lit.step(), lit.active());
                    put(byStep, lit, reading(flasher, state, lit, off));
                }
            }
        }
        return byStep;
    }

    private static void put(Map<Step, List<FlashReading>> byStep, SolvedStep step, FlashReading reading) {
        byStep.computeIfAbsent(step.step(), s -> new ArrayList<>()).add(reading);
    }

    private static FlashReading reading(Flasher flasher, FlasherRule.State state, SolvedStep lit, SolvedStep off) {
        double share = flasher.onShare();
        List<FlashedLoad> loads = new ArrayList<>();
        if (off.solved()) {
            for (Consumer consumer : lit.plan().listParts(Consumer.class)) {
                double onA = lit.currentA(consumer);
                double offA = off.currentA(consumer);
                if (Math.abs(onA - offA) > FeedStrength.TRICKLE_A) {
                    loads.add(new FlashedLoad(
                            consumer.id(),
                            lit.acrossV(consumer),
                            off.acrossV(consumer),
                            onA,
                            offA,
                            share * onA + (1 - share) * offA));
                }
            }
        }
        double loadA = loadA(lit, flasher);
        return new FlashReading(
                flasher.id(), state, loadA, share * loadA, share, FlasherRule.ratePerMinute(flasher, state), loads);
    }
}
