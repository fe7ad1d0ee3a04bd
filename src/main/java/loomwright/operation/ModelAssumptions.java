package loomwright.operation;

import static loomwright.message.Arg.arg;
import static loomwright.message.Arg.things;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import loomwright.answer.Assumption;
import loomwright.circuit.Battery;
import loomwright.circuit.Fuse;
import loomwright.circuit.Load;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.message.Message;
import org.jspecify.annotations.Nullable;

/** What counts for parts of which no published law is known; said in the answers that rest on it. */
public final class ModelAssumptions {
    private ModelAssumptions() {}

    /** Assumptions with those about the opening times of the plan's fuses: a ceramic one or a breaker opens as a blade fuse. */
    public static List<Assumption> withFuses(List<Assumption> before, Plan plan) {
        List<Fuse> fuses = plan.listParts(Fuse.class).stream()
                .filter(fuse -> fuse.construction() == Fuse.Construction.CERAMIC
                        || fuse.construction() == Fuse.Construction.SELF_RESETTING)
                .toList();
        boolean breakers = fuses.stream().anyMatch(fuse -> fuse.construction() == Fuse.Construction.SELF_RESETTING);
        return with(
                before,
                "opening-times-unknown",
                fuses,
                Map.of("construction", "blade"),
                ModelAssumptionText.OPENING_TIMES.with(
                        things("fuses", fuses.stream().map(Part::thing).toList()),
                        arg("breakers", breakers ? "some" : "none")));
    }

    /** Below this charge a battery sags plainly more than a charged one (common practice, no source). */
    private static final double SAGS_BELOW_PERCENT = 50;

    /** Assumptions with those about batteries that are stated to be low, without an internal resistance of their own. */
    public static List<Assumption> withLowBatteries(List<Assumption> before, Plan plan) {
        List<Battery> low = plan.listParts(Battery.class).stream()
                .filter(battery -> battery.internalResistanceOhm() == null && isLow(battery.stateOfChargePercent()))
                .toList();
        return with(
                before,
                "low-battery-resistance-unknown",
                low,
                Map.of(),
                ModelAssumptionText.LOW_BATTERY.with(
                        things("batteries", low.stream().map(Part::thing).toList())));
    }

    private static boolean isLow(@Nullable Double percent) {
        return percent != null && percent < SAGS_BELOW_PERCENT;
    }

    /** Assumptions with those about loads that warm: solved hot, and in the instant of switching on. */
    public static List<Assumption> withWarming(List<Assumption> before, Plan plan) {
        List<Load> warming = plan.listParts(Load.class).stream()
                .filter(load -> load.switchOnOhm() != null)
                .toList();
        return with(
                before,
                "warming-unknown",
                warming,
                Map.of(),
                ModelAssumptionText.WARMING.with(
                        things("loads", warming.stream().map(Part::thing).toList())));
    }

    private static List<Assumption> with(
            List<Assumption> before,
            String code,
            List<? extends Part> parts,
            Map<String, Object> assumed,
            Message text) {
        if (parts.isEmpty()) {
            return before;
        }
        List<Assumption> all = new ArrayList<>(before);
        all.add(new Assumption(code, parts.stream().map(Part::id).toList(), assumed, text, List.of()));
        return all;
    }
}
