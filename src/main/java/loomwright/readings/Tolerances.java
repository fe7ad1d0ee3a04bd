package loomwright.readings;

import java.util.Map;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * How far figures of a plan may be off, as fractions: what is asked for one thing, else what is asked for all, else the
 * usual one of its kind (common practice, no source).
 */
record Tolerances(Map<String, Double> own, @Nullable Double all) {
    /** Length, and so resistance, of a wire or fusible link: taped looms are measured from outside. */
    static final double WIRE = 0.10;
    /** Resistance of a sound contact, crimp, splice or bolted earth. */
    static final double CONTACT = 0.50;
    /** Resistance of a ballast or resistor. */
    static final double RESISTOR = 0.05;
    /** Resistance of a winding: coil, relay, solenoid, field. */
    static final double WINDING = 0.10;
    /** Resistance of a motor at work. */
    static final double MOTOR = 0.15;
    /** Watts of a lamp at its rated voltage. */
    static final double LAMP_POWER = 0.10;
    /** Cold resistance of a lamp as a fraction of the hot one. */
    static final double LAMP_COLD = 0.20;
    /** What any other load takes. */
    static final double LOAD = 0.10;
    /** Forward volts of a diode, saturation volts and own current of a module. */
    static final double SEMICONDUCTOR = 0.20;
    /** What a regulator holds. */
    static final double REGULATOR = 0.02;
    /** Resistance of a fuse, and inside a battery. */
    static final double FUSE = 0.20;
    /** Currents at which a source limits itself. */
    static final double LIMIT = 0.10;

    static Tolerances of(ReadingsQuestion question) {
        Double percent = question.tolerancePercent();
        return new Tolerances(
                question.tolerances().stream()
                        .collect(Collectors.toMap(
                                ReadingsQuestion.Tolerance::id, t -> t.percent() / 100, (first, again) -> again)),
                percent == null ? null : (Double) (percent / 100));
    }

    double of(String id, double usual) {
        Double general = all;
        return own.getOrDefault(id, general == null ? (Double) usual : general);
    }
}
