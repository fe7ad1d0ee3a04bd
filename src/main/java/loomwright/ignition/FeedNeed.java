package loomwright.ignition;

import java.util.List;
import java.util.Optional;
import loomwright.answer.Basis;
import loomwright.circuit.Place;
import loomwright.conductor.ConductorSize;
import loomwright.conductor.SizeSystem;
import loomwright.judgement.wire.FuseRule;
import loomwright.judgement.wire.StrengthRule;
import loomwright.judgement.wire.WireAmpacity;
import loomwright.judgement.wire.WireConditions;
import loomwright.message.MessageCode;
import org.jspecify.annotations.Nullable;

/**
 * What the feed of an ignition has to carry, with the fuse and the wires that do: PVC in the engine bay, alone.
 *
 * @param currentA the largest that lasts
 * @param when in which state it flows
 * @param speedRpm at which; absent with the key on
 * @param fuseA the smallest standard fuse for it; absent above the largest
 * @param awgSize the thinnest gauge that carries that fuse and bears handling; absent if none does
 * @param metricSize the same of metric sizes
 */
public record FeedNeed(
        double currentA,
        When when,
        @Nullable Double speedRpm,
        @Nullable Double fuseA,
        @Nullable String awgSize,
        @Nullable String metricSize) {
    public static final List<Basis> BASIS =
            List.of(FuseRule.LOAD_BASIS, FuseRule.WIRE_BASIS, WireAmpacity.TABLE_BASIS, WireConditions.DEFAULTS_BASIS);

    /** The state in which most flows. */
    public enum When implements MessageCode {
        /** Key on, engine stopped, every contact closed. */
        KEY_ON,
        RUNNING
    }

    /** Most flows with the key on. */
    public static FeedNeed keyOn(double currentA) {
        return of(currentA, When.KEY_ON, null);
    }

    /** Most flows at a speed. */
    public static FeedNeed running(double currentA, @Nullable Double speedRpm) {
        return of(currentA, When.RUNNING, speedRpm);
    }

    private static FeedNeed of(double currentA, When when, @Nullable Double speedRpm) {
        Optional<Double> fuseA = FuseRule.smallest(currentA, true).map(FuseRule.Rating::ratingA);
        return new FeedNeed(
                currentA,
                when,
                speedRpm,
                fuseA.orElse(null),
                fuseA.flatMap(a -> thinnest(SizeSystem.AWG, a)).orElse(null),
                fuseA.flatMap(a -> thinnest(SizeSystem.METRIC_ISO6722, a)).orElse(null));
    }

    private static Optional<String> thinnest(SizeSystem system, double fuseA) {
        WireConditions conditions = new WireConditions(
                WireConditions.USUAL_INSULATION_C, WireConditions.usualAmbientC(Place.ENGINE_BAY), 1);
        return ConductorSize.listTrade(system).stream()
                .filter(size -> size.areaMm2() >= StrengthRule.leastMm2(false))
                .filter(size -> WireAmpacity.of(size.areaMm2(), conditions).allowedA() >= fuseA)
                .findFirst()
                .map(ConductorSize::name);
    }
}
