package loomwright.operation;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import loomwright.circuit.Battery;
import loomwright.circuit.Consumer;
import loomwright.circuit.Load;
import loomwright.circuit.Motor;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.operation.PlanReadings.SwitchOnReading;

/**
 * The instant in which a load is switched on: a motor still stands, a heater is still cold. Solved once more for each load alone, with
 * all else as the step leaves it. Nothing is computed in time.
 */
final class SwitchOns {
    private SwitchOns() {}

    /** By step, the loads that work in it and take another current in that instant. */
    static Map<Step, List<SwitchOnReading>> read(Plan plan, List<SolvedStep> steps, PlanSolver solver) {
        Map<Step, List<SwitchOnReading>> byStep = new HashMap<>();
        for (Consumer consumer : plan.listParts(Consumer.class)) {
            Part starting = starting(consumer);
            if (starting == consumer) {
                continue;
            }
            Plan begun = plan.with(
                    plan.parts().stream()
                            .map(part -> part.id().equals(consumer.id()) ? starting : part)
                            .toList(),
                    plan.wires());
            PlanSettings settings = solver.settings(begun);
            for (SolvedStep steady : steps) {
                if (steady.solved() && !steady.step().passing() && steady.activity(consumer) == FeedStrength.OPERATES) {
                    SolvedStep instant = settings.solve(begun, steady.step(), steady.active());
                    if (instant.solved()) {
                        byStep.computeIfAbsent(steady.step(), s -> new ArrayList<>())
                                .add(reading(consumer, (Consumer) starting, instant));
                    }
                }
            }
        }
        return byStep;
    }

    /** What a load is in that instant; itself if that is no other. */
    private static Part starting(Consumer consumer) {
        if (consumer instanceof Motor motor) {
            return motor.stalled() ? motor : motor.standing();
        }
        return consumer instanceof Load load ? load.switchedOn() : consumer;
    }

    private static SwitchOnReading reading(Consumer steady, Consumer starting, SolvedStep instant) {
        double lowestV = instant.plan().listParts(Battery.class).stream()
                .mapToDouble(
                        battery -> instant.acrossV(battery.terminal(Battery.PLUS), battery.terminal(Battery.MINUS)))
                .min()
                .orElse(0);
        return new SwitchOnReading(
                steady.id(), Math.abs(instant.acrossV(starting)), Math.abs(instant.currentA(starting)), lowestV);
    }
}
