package loomwright.service.plan;

import com.fasterxml.jackson.annotation.JsonIgnore;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import loomwright.answer.Answer;
import loomwright.operation.FeedStrength;
import loomwright.operation.PlanReadings;
import loomwright.operation.PlanReadings.BranchReading;
import loomwright.operation.PlanReadings.ConnectorReading;
import loomwright.operation.PlanReadings.NodeReading;
import loomwright.operation.PlanReadings.PartReading;
import loomwright.operation.PlanReadings.StepReadings;
import loomwright.operation.PlanReadings.WireReading;
import loomwright.operation.SolutionOptions;
import loomwright.operation.SolutionOptions.Rows;
import loomwright.operation.Step;
import loomwright.operation.StepFinding;
import org.jspecify.annotations.Nullable;

/**
 * A solved plan as it goes out in JSON: each thing once, and no row in which nothing flows unless it is asked for.
 *
 * @param plan its name
 * @param nodes which terminals are joined; the same in every step
 * @param steps those asked for, in the order they happen
 * @param readings the same with idle rows and with repeated steps, for tables and posts
 */
public record PlanSolution(
        String plan,
        List<JoinedTerminals> nodes,
        List<SolutionStep> steps,
        @JsonIgnore PlanReadings readings) {
    /** Less than the last digit of a multimeter's finest range (common practice, no source). */
    private static final double NOTHING_A = 1e-6;

    /** Terminals joined by negligible resistance, or the middle of a joint, which has none. */
    public record JoinedTerminals(String node, List<String> terminals) {}

    /**
     * One step.
     *
     * @param sameAs the earlier step that it repeats row by row, whose rows are not told again; absent if there is none
     */
    public record SolutionStep(
            Step step,
            String description,
            boolean settled,
            @Nullable Step sameAs,
            @JsonUnwrapped SolvedRows rows,
            @JsonUnwrapped PlanReadings.Transients transients,
            List<StepFinding> findings,
            @JsonUnwrapped PlanReadings.Residuals residuals) {}

    /** What a meter shows. */
    public record SolvedRows(
            List<NodeVoltage> nodes,
            List<WireCurrent> wires,
            List<PartFigures> parts,
            List<ConnectorReading> connectors) {}

    /** One node; without a voltage it floats. */
    public record NodeVoltage(String node, @Nullable Double voltageV, boolean live) {}

    /** One wire; its ends stand in the plan. */
    public record WireCurrent(
            String wire, double currentA, double dropV, double powerW, boolean live, boolean againstFeed) {}

    /** One part; its kind stands in the plan. */
    public record PartFigures(
            String part,
            @Nullable String state,
            @Nullable Double acrossV,
            @Nullable Double speedShare,
            @Nullable FeedStrength activity,
            @Nullable Boolean meantLive,
            double powerW,
            List<BranchReading> branches) {}

    /** As much of an answer as is asked for. */
    public static Answer<PlanSolution> of(Answer<PlanReadings> answer, SolutionOptions options) {
        return answer.with(of(answer.result(), options));
    }

    /** All rows of all steps. */
    public static PlanSolution inFull(PlanReadings readings) {
        return of(readings, new SolutionOptions(List.of(), Set.of(), Set.of(), true));
    }

    private static PlanSolution of(PlanReadings readings, SolutionOptions options) {
        PlanReadings chosen = new PlanReadings(
                readings.plan(),
                readings.steps().stream()
                        .map(step -> only(step, options.only()))
                        .toList());
        return new PlanSolution(
                readings.plan(),
                joined(chosen),
                chosen.steps().stream()
                        .map(step -> options.full() ? told(step, true) : told(step, chosen))
                        .toList(),
                chosen);
    }

    /** The same of a plan of another name with the same circuit. */
    public PlanSolution named(String name) {
        return new PlanSolution(name, nodes, steps, readings.named(name));
    }

    private static StepReadings only(StepReadings step, Set<Rows> rows) {
        return new StepReadings(
                step.step(),
                step.description(),
                step.settled(),
                rows.contains(Rows.NODES) ? step.nodes() : List.of(),
                rows.contains(Rows.WIRES) ? step.wires() : List.of(),
                rows.contains(Rows.PARTS) ? step.parts() : List.of(),
                rows.contains(Rows.CONNECTORS) ? step.connectors() : List.of(),
                step.transients(),
                step.findings(),
                step.residuals());
    }

    private static List<JoinedTerminals> joined(PlanReadings readings) {
        Map<String, JoinedTerminals> joined = new LinkedHashMap<>();
        readings.steps().stream()
                .flatMap(step -> step.nodes().stream())
                .forEach(node -> joined.putIfAbsent(node.node(), new JoinedTerminals(node.node(), node.terminals())));
        return List.copyOf(joined.values());
    }

    /** Without idle rows, and a step that repeats an earlier one without any. */
    private static SolutionStep told(StepReadings step, PlanReadings readings) {
        return readings.steps().stream()
                .takeWhile(earlier -> earlier.step() != step.step())
                .filter(earlier -> step.residuals().kirchhoffResidual() != null
                        && figures(earlier).equals(figures(step)))
                .findFirst()
                .map(earlier -> repeated(step, earlier.step()))
                .orElseGet(() -> told(step, false));
    }

    private static List<Object> figures(StepReadings step) {
        return List.of(step.settled(), step.nodes(), step.wires(), step.parts(), step.connectors(), step.transients());
    }

    private static SolutionStep repeated(StepReadings step, Step earlier) {
        return new SolutionStep(
                step.step(),
                step.description(),
                step.settled(),
                earlier,
                new SolvedRows(List.of(), List.of(), List.of(), List.of()),
                new PlanReadings.Transients(List.of(), List.of()),
                step.findings(),
                step.residuals());
    }

    private static SolutionStep told(StepReadings step, boolean idleToo) {
        return new SolutionStep(
                step.step(),
                step.description(),
                step.settled(),
                null,
                new SolvedRows(
                        step.nodes().stream().map(PlanSolution::told).toList(),
                        step.wires().stream()
                                .filter(wire -> idleToo || flows(wire.currentA()))
                                .map(PlanSolution::told)
                                .toList(),
                        step.parts().stream()
                                .filter(part -> idleToo || !isIdle(part))
                                .map(PlanSolution::told)
                                .toList(),
                        step.connectors().stream()
                                .filter(connector -> idleToo || flows(connector.contacts()))
                                .toList()),
                step.transients(),
                step.findings(),
                step.residuals());
    }

    private static boolean isIdle(PartReading part) {
        boolean meant = part.meantLive() != null && part.meantLive();
        return !meant && !flows(part.branches());
    }

    private static boolean flows(List<BranchReading> branches) {
        return branches.stream().anyMatch(branch -> flows(branch.currentA()));
    }

    private static boolean flows(double currentA) {
        return Math.abs(currentA) >= NOTHING_A;
    }

    private static NodeVoltage told(NodeReading node) {
        return new NodeVoltage(node.node(), node.voltageV(), node.live());
    }

    private static WireCurrent told(WireReading wire) {
        return new WireCurrent(
                wire.wire(), wire.currentA(), wire.dropV(), wire.powerW(), wire.live(), wire.againstFeed());
    }

    private static PartFigures told(PartReading part) {
        return new PartFigures(
                part.part(),
                part.state(),
                part.acrossV(),
                part.speedShare(),
                part.activity(),
                part.meantLive(),
                part.powerW(),
                part.branches());
    }
}
