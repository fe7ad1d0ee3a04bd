package loomwright.ignition.spark;

import loomwright.ignition.AssumedValue;
import loomwright.ignition.Assumptions;
import loomwright.ignition.primary.CoilData;
import loomwright.ignition.primary.CoilData.Feed;
import loomwright.ignition.primary.CoilPreset;
import loomwright.message.Argument.Word;
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
        return CoilPreset.ofOhm(primaryResistanceOhm, nominalV);
    }

    private double usualInductanceH(CoilData common, double nominalV) {
        return preset == null && primaryResistanceOhm != null
                ? CoilPreset.usualInductanceH(primaryResistanceOhm, nominalV)
                : common.inductanceH();
    }

    CoilData resolve(Assumptions assumptions, double nominalV) {
        CoilPreset kind = kind(nominalV);
        if (preset == null && primaryResistanceOhm != null) {
            assumptions.note(AssumedValue.COIL_KIND, new Word(kind));
        }
        CoilData common = kind.data();
        return new CoilData(
                assumptions.or(primaryResistanceOhm, AssumedValue.COIL_PRIMARY, common.primaryResistanceOhm(), "Ω"),
                assumptions.or(
                        inductanceH, AssumedValue.PRIMARY_INDUCTANCE, usualInductanceH(common, nominalV), 1e3, "mH"),
                assumptions.or(turnsRatio, AssumedValue.TURNS_RATIO, common.turnsRatio(), ""),
                assumptions.or(primaryClampV, AssumedValue.PRIMARY_CLAMP, common.primaryClampV(), "V"),
                assumptions.or(
                        secondaryCapacitanceF,
                        AssumedValue.SECONDARY_CAPACITANCE,
                        common.secondaryCapacitanceF(),
                        1e12,
                        "pF"),
                assumptions.or(efficiencyFraction, AssumedValue.EFFICIENCY, common.efficiencyFraction(), ""),
                assumptions.or(meantFor, AssumedValue.FEED_OF_COIL, common.meantFor()));
    }
}
