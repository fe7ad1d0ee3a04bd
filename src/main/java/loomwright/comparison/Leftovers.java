package loomwright.comparison;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.Relay;
import loomwright.circuit.Wire;
import loomwright.comparison.DeadEnds.DeadEnd;
import loomwright.comparison.PlanComparison.Leftover;
import loomwright.operation.PlanReadings.NodeReading;
import loomwright.operation.PlanReadings.StepReadings;
import loomwright.operation.Step;

/** The dead ends of one plan that the other has not, and whether they are live. */
final class Leftovers {
    private final Plan plan;
    private final List<StepReadings> steps;

    private Leftovers(Plan plan, List<StepReadings> steps) {
        this.plan = plan;
        this.steps = steps;
    }

    /**
     * Lists them.
     *
     * @param steps the readings of {@code plan}
     * @param name what a thing of the other plan is called in this one
     */
    static List<Leftover> list(Plan plan, List<StepReadings> steps, Plan other, UnaryOperator<String> name) {
        Set<String> known = new HashSet<>();
        DeadEnds.of(other).forEach(d -> known.add(name.apply(d.id())));
        Leftovers leftovers = new Leftovers(plan, steps);
        return DeadEnds.of(plan).stream()
                .filter(d -> !known.contains(d.id()))
                .map(leftovers::leftover)
                .toList();
    }

    private Leftover leftover(DeadEnd deadEnd) {
        List<String> terminals = terminals(deadEnd);
        List<Step> liveIn = new ArrayList<>();
        double highestV = 0;
        for (StepReadings step : steps) {
            for (NodeReading node : step.nodes()) {
                Double voltageV = node.voltageV();
                if (voltageV != null && node.terminals().stream().anyMatch(terminals::contains)) {
                    highestV = Math.max(highestV, Math.abs(voltageV));
                    if (node.live() && !liveIn.contains(step.step())) {
                        liveIn.add(step.step());
                    }
                }
            }
        }
        return new Leftover(
                deadEnd.kind(),
                deadEnd.id(),
                deadEnd.terminal(),
                liveIn,
                highestV,
                text(deadEnd) + live(liveIn, highestV),
                remedy(deadEnd, !liveIn.isEmpty()));
    }

    private List<String> terminals(DeadEnd deadEnd) {
        String loose = deadEnd.terminal();
        if (loose != null) {
            return List.of(loose);
        }
        return plan.findWire(deadEnd.id())
                .map(w -> List.of(w.from().toString(), w.to().toString()))
                .orElseGet(() -> part(deadEnd).terminals().stream()
                        .map(t -> part(deadEnd).terminal(t).toString())
                        .toList());
    }

    private Part part(DeadEnd deadEnd) {
        return plan.findPart(deadEnd.id()).orElseThrow();
    }

    private String text(DeadEnd deadEnd) {
        return switch (deadEnd.kind()) {
            case LOOSE_END -> "Wire " + described(deadEnd) + ": nothing else hangs on its end at " + deadEnd.terminal();
            case IDLE_WIRE -> "Wire " + described(deadEnd) + ": there is nothing behind it";
            case IDLE_PART ->
                part(deadEnd).displayName() + " (" + part(deadEnd).kind() + "): there is nothing behind "
                        + (part(deadEnd) instanceof Relay ? "its contacts" : "it");
        };
    }

    private String described(DeadEnd deadEnd) {
        Wire wire = plan.findWire(deadEnd.id()).orElseThrow();
        return Descriptions.wire(wire);
    }

    private static String live(List<Step> liveIn, double highestV) {
        if (liveIn.isEmpty()) {
            return ". It is dead in every step.";
        }
        return String.format(
                Locale.ROOT,
                ". It is live, up to %.1f V: %s.",
                highestV,
                liveIn.stream().map(Step::description).collect(Collectors.joining("; ")));
    }

    private String remedy(DeadEnd deadEnd, boolean live) {
        return switch (deadEnd.kind()) {
            case LOOSE_END ->
                live
                        ? "Take the wire off at its fed end too; until then insulate the loose end and tie it back."
                        : "Take the wire out, or insulate the loose end and tie it back.";
            case IDLE_WIRE -> "Take the wire out, or keep it, insulated and marked, as a spare.";
            case IDLE_PART -> live ? "Take it out and end its feed there." : "Take it out, or keep it as a spare.";
        };
    }
}
