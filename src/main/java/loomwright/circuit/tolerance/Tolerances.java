package loomwright.circuit.tolerance;

import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * How far figures of a plan may be off, as fractions: what is asked for one thing, else what is asked for all, else the
 * usual one of its kind (common practice, no source).
 */
public record Tolerances(Map<String, Double> own, @Nullable Double all) {
    /** Length, and so resistance, of a wire or fusible link: taped looms are measured from outside. */
    public static final double WIRE = 0.10;
    /** Resistance of a sound contact, crimp, splice or bolted earth. */
    public static final double CONTACT = 0.50;
    /** Resistance of a ballast or resistor. */
    public static final double RESISTOR = 0.05;
    /** Resistance of a winding: coil, relay, solenoid, field. */
    public static final double WINDING = 0.10;
    /** Resistance of a motor at work. */
    public static final double MOTOR = 0.15;
    /** Watts of a lamp at its rated voltage. */
    public static final double LAMP_POWER = 0.10;
    /** Cold resistance of a lamp as a fraction of the hot one. */
    public static final double LAMP_COLD = 0.20;
    /** What any other load takes. */
    public static final double LOAD = 0.10;
    /** Forward volts of a diode, saturation volts and own current of a module. */
    public static final double SEMICONDUCTOR = 0.20;
    /** What a regulator holds. */
    public static final double REGULATOR = 0.02;
    /** Resistance of a fuse, and inside a battery. */
    public static final double FUSE = 0.20;
    /** Currents at which a source limits itself. */
    public static final double LIMIT = 0.10;

    /** The usual ones. */
    public static final Tolerances USUAL = new Tolerances(Map.of(), null);

    public double of(String id, double usual) {
        Double general = all;
        return own.getOrDefault(id, general == null ? (Double) usual : general);
    }
}
