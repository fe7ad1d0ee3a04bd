package loomwright.operation;

import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.util.List;
import loomwright.judgement.FlasherRule;
import org.jspecify.annotations.Nullable;

/**
 * A solved plan as tables.
 *
 * @param plan its name
 * @param steps one for each step, in the order they happen
 */
public record PlanReadings(String plan, List<StepReadings> steps) {
    /** The same of a plan of another name with the same circuit. */
    public PlanReadings named(String name) {
        return new PlanReadings(name, steps);
    }

    /**
     * One step.
     *
     * @param description the step in words
     * @param settled whether every relay and the like is at rest
     * @param nodes empty if there is no solution; so the next three
     */
    public record StepReadings(
            Step step,
            String description,
            boolean settled,
            List<NodeReading> nodes,
            List<WireReading> wires,
            List<PartReading> parts,
            List<ConnectorReading> connectors,
            @JsonUnwrapped Transients transients,
            List<StepFinding> findings,
            @JsonUnwrapped Residuals residuals) {}

    /**
     * What happens within the step.
     *
     * @param flashes flasher units that have lamps to flash
     */
    public record Transients(List<FlashReading> flashes, List<SwitchOnReading> switchOns) {}

    /**
     * How exactly the solution keeps the laws.
     *
     * @param kirchhoffResidual largest sum of currents at a node as a fraction of the largest current; absent
     *     without a solution
     * @param powerResidual sum of all powers as a fraction of the sum of their amounts
     */
    public record Residuals(
            @Nullable Double kirchhoffResidual, @Nullable Double powerResidual) {}

    /**
     * A load in the instant in which it is switched on.
     *
     * @param acrossV volts across it
     * @param currentA its current
     * @param batteryV volts at the poles of the battery, of several the lowest; 0 without a battery
     */
    public record SwitchOnReading(String part, double acrossV, double currentA, double batteryV) {}

    /**
     * Terminals joined by negligible resistance, or the middle of a joint with resistance, which has none.
     *
     * @param voltageV to the chassis; absent if floating
     * @param floating whether nothing joins it to the chassis
     * @param live whether a test lamp to the chassis would show it
     */
    public record NodeReading(
            String node, List<String> terminals, @Nullable Double voltageV, boolean floating, boolean live) {}

    /**
     * One wire.
     *
     * @param currentA positive from {@code from} to {@code to}
     * @param dropV voltage of {@code from} against {@code to}
     * @param powerW heat in it with its joints
     * @param againstFeed whether a directed wire carries current from {@code to} to {@code from}
     */
    public record WireReading(
            String wire,
            String from,
            String to,
            double currentA,
            double dropV,
            double powerW,
            boolean live,
            boolean againstFeed) {}

    /**
     * One part.
     *
     * @param state of a part that has states: a switch's position, or the code of a {@link PartState}
     * @param acrossV voltage from a consumer's feed to its return; absent for other parts
     * @param activity how strongly a consumer is fed; absent for other parts
     * @param meantLive whether a consumer should be live in this step; absent for other parts
     * @param powerW power it takes up; negative if it delivers
     */
    public record PartReading(
            String part,
            String kind,
            @Nullable String state,
            @Nullable Double acrossV,
            @Nullable Double speedShare,
            @Nullable FeedStrength activity,
            @Nullable Boolean meantLive,
            double powerW,
            List<BranchReading> branches) {
        /** Its state as a person says it; empty of a part without states. */
        public String stateText() {
            if (state == null || kind.equals("switch")) {
                return state == null ? "" : state;
            }
            return PartState.of(state).map(PartState::text).orElse(state);
        }
    }

    /**
     * One pair of mated connector halves.
     *
     * @param powerW heat in its contacts
     * @param contacts one for each way that both halves have, unless both its sides are joined anyway
     */
    public record ConnectorReading(String connector, double powerW, List<BranchReading> contacts) {}

    /**
     * A flasher unit with lamps to flash. The other figures of the step are those of the instant in which its contact is closed.
     *
     * @param loadA through 49a in that instant
     * @param meanA through 49a in the mean of both instants
     * @param onShare share of the time for which the contact is closed; 1 if it does not flash
     * @param ratePerMinute 0 if it does not flash
     * @param loads those whose current differs between the instants
     */
    public record FlashReading(
            String flasher,
            FlasherRule.State state,
            double loadA,
            double meanA,
            double onShare,
            double ratePerMinute,
            List<FlashedLoad> loads) {}

    /** A load in both instants of a flasher unit, its contact closed and open, and its current in the mean. */
    public record FlashedLoad(String part, double onV, double offV, double onA, double offA, double meanA) {}

    /** Current through one way of a part or connector, positive from {@code from} to {@code to}. */
    public record BranchReading(String from, String to, double currentA, double voltageV) {}
}
