package loomwright.ignition;

import loomwright.ignition.CoilData.Feed;
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
                assumptions.or(primaryResistanceOhm, "primaryResistanceOhm", common.primaryResistanceOhm()),
                assumptions.or(inductanceH, "inductanceH", common.inductanceH()),
                assumptions.or(turnsRatio, "turnsRatio", common.turnsRatio()),
                assumptions.or(primaryClampV, "primaryClampV", common.primaryClampV()),
                assumptions.or(secondaryCapacitanceF, "secondaryCapacitanceF", common.secondaryCapacitanceF()),
                assumptions.or(efficiencyFraction, "efficiencyFraction", common.efficiencyFraction()),
                assumptions.or(meantFor, "meantFor", common.meantFor()));
    }
}
