package loomwright.comparison;

import static loomwright.message.Arg.arg;
import static loomwright.message.Arg.words;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.UnaryOperator;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.Relay;
import loomwright.circuit.Wire;
import loomwright.comparison.DeadEnds.DeadEnd;
import loomwright.comparison.PlanComparison.Leftover;
import loomwright.message.Arg;
import loomwright.message.Message;
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
                message(deadEnd, liveIn, highestV),
                deadEnd.id(),
                deadEnd.terminal(),
                liveIn,
                highestV,
                remedy(deadEnd, !liveIn.isEmpty()).with());
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

    private Message message(DeadEnd deadEnd, List<Step> liveIn, double highestV) {
        Arg steps = words("steps", liveIn);
        Arg count = arg("count", liveIn.size());
        Arg highest = arg("highestV", highestV);
        if (deadEnd.kind() == Leftover.Kind.IDLE_PART) {
            Part part = part(deadEnd);
            return deadEnd.kind()
                    .with(
                            arg("part", part.thing()),
                            arg("contacts", part instanceof Relay ? 1 : 0),
                            steps,
                            count,
                            highest);
        }
        Wire wire = plan.findWire(deadEnd.id()).orElseThrow();
        Arg named = arg("wire", wire.thing());
        Arg description = arg("description", Descriptions.run(wire));
        String loose = deadEnd.terminal();
        return loose == null
                ? deadEnd.kind().with(named, description, steps, count, highest)
                : deadEnd.kind().with(named, description, arg("terminal", loose), steps, count, highest);
    }

    private static LeftoverRemedy remedy(DeadEnd deadEnd, boolean live) {
        return switch (deadEnd.kind()) {
            case LOOSE_END -> live ? LeftoverRemedy.DISCONNECT_FED_END : LeftoverRemedy.REMOVE_OR_TIE_BACK;
            case IDLE_WIRE -> LeftoverRemedy.REMOVE_OR_KEEP_WIRE;
            case IDLE_PART -> live ? LeftoverRemedy.REMOVE_PART_AND_FEED : LeftoverRemedy.REMOVE_OR_KEEP_PART;
        };
    }
}
