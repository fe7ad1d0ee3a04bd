package loomwright.ignition.spark;

import java.util.Locale;
import loomwright.ignition.Assumptions;
import loomwright.ignition.primary.CoilData;
import loomwright.ignition.primary.CoilData.Feed;
import loomwright.ignition.primary.CoilPreset;
import loomwright.judgement.ignition.CoilKind;
import org.jspecify.annotations.Nullable;

/**
 * A coil as asked about: a general kind, and any figure of it that the caller knows better. Names and ranges as in
 * {@link CoilData}.
 *
 * @param preset the kind; if left out that which the ohms say, without ohms {@link CoilPreset#FOR_DIRECT_FEED}
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

    /** The kind that is meant: as given, else by the ohms, else for direct feed. */
    CoilPreset kind(double nominalV) {
        if (preset != null) {
            return preset;
        } else if (primaryResistanceOhm == null) {
            return CoilPreset.FOR_DIRECT_FEED;
        }
        return switch (CoilKind.ofOhm(primaryResistanceOhm, nominalV)) {
            case HIGH_ENERGY -> CoilPreset.HIGH_ENERGY;
            case WITH_BALLAST -> CoilPreset.FOR_BALLAST;
            case DIRECT -> nominalV == 6 ? CoilPreset.FOR_DIRECT_FEED_6V : CoilPreset.FOR_DIRECT_FEED;
        };
    }

    CoilData resolve(Assumptions assumptions, double nominalV) {
        CoilPreset kind = kind(nominalV);
        if (preset == null && primaryResistanceOhm != null) {
            assumptions.note("Assumed: a coil of so many ohms is a coil "
                    + kind.name().toLowerCase(Locale.ROOT).replace('_', ' '));
        }
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
