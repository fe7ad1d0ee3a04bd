package loomwright.ignition.spark;

import loomwright.ignition.Assumptions;
import loomwright.ignition.primary.CoilData;
import loomwright.ignition.primary.CoilData.Feed;
import loomwright.ignition.primary.CoilPreset;
import org.jspecify.annotations.Nullable;

/**
 * A coil as asked about: a general kind, and any figure of it that the caller knows better. Names and ranges as in
 * {@link CoilData}.
 *
 * @param preset the kind; {@link CoilPreset#FOR_DIRECT_FEED} if left out
 */
public record CoilInput(
        @Nullable CoilPreset preset,
        @Nullable Double primaryResistanceOhm,
        @Nullable Double inductanceH,
        @Nullable Double turnsRatio,
        @Nullable Double primaryClampV,
        @Nullable Double secondaryCapacitanceF,
        @Nullable Double efficiencyFraction,
        @Nullable Feed meantFor) {

    /** A coil of a general kind. */
    public static CoilInput of(@Nullable CoilPreset preset) {
        return new CoilInput(preset, null, null, null, null, null, null, null);
    }

    CoilData resolve(Assumptions assumptions) {
        CoilPreset kind = preset == null ? CoilPreset.FOR_DIRECT_FEED : preset;
        CoilData common = kind.data();
        return new CoilData(
                assumptions.or(primaryResistanceOhm, "coil primary", common.primaryResistanceOhm(), "ohm"),
                assumptions.or(inductanceH, "primary inductance", common.inductanceH(), 1e3, "mH"),
                assumptions.or(turnsRatio, "turns ratio", common.turnsRatio(), ""),
                assumptions.or(primaryClampV, "primary voltage at most", common.primaryClampV(), "V"),
                assumptions.or(
                        secondaryCapacitanceF, "secondary capacitance", common.secondaryCapacitanceF(), 1e12, "pF"),
                assumptions.or(efficiencyFraction, "efficiency", common.efficiencyFraction(), ""),
                assumptions.or(meantFor, "feed of coil", common.meantFor()));
    }
}
