package loomwright.diagnosis;

import loomwright.answer.InputErrors;
import org.jspecify.annotations.Nullable;

/**
 * How far a meter's figure may be off: so many per cent of the figure and so much besides. What is left out is that of a plain
 * digital multimeter (common practice, no source).
 *
 * @param accuracyPercent of the figure, 0 to 50; 0.5 unless said
 * @param accuracyV besides, for volts, 0.001 to 10 V; 0.02 unless said
 * @param accuracyOhm besides, for ohms, leads included, 0.001 to 100 ohm; 0.2 unless said
 */
public record MeterAccuracy(Double accuracyPercent, Double accuracyV, Double accuracyOhm) {
    public static final MeterAccuracy USUAL = new MeterAccuracy(0.5, 0.02, 0.2);

    public MeterAccuracy {
        new InputErrors()
                .range("/accuracyPercent", accuracyPercent, 0, 50)
                .range("/accuracyV", accuracyV, 0.001, 10)
                .range("/accuracyOhm", accuracyOhm, 0.001, 100)
                .reject();
        accuracyPercent = or(accuracyPercent, 0.5);
        accuracyV = or(accuracyV, 0.02);
        accuracyOhm = or(accuracyOhm, 0.2);
    }

    private static Double or(@Nullable Double given, double usual) {
        return given == null ? (Double) usual : given;
    }

    /** How far a voltage may be off, V. */
    double ofVolts(double voltageV) {
        return Math.abs(voltageV) * accuracyPercent / 100 + accuracyV;
    }

    /** How far a resistance may be off, ohm. */
    double ofOhms(double resistanceOhm) {
        return resistanceOhm * accuracyPercent / 100 + accuracyOhm;
    }
}
