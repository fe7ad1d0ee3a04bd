package loomwright.circuit;

import com.fasterxml.jackson.annotation.JsonTypeName;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Control box of a dynamo, or its cut-out alone: {@code D} and {@code F} to the dynamo, {@code E} to earth, {@code A} to the battery,
 * {@code A1} to the loads. The cut-out is a relay with two windings: a shunt coil from D to E closes it at a voltage; the current
 * to the battery goes through a series turn that holds it closed, and opens it when the battery begins to feed the dynamo.
 *
 * <p>The regulator holds the dynamo by its field; what it holds is stated at the dynamo. Its contacts from D to F are taken as
 * closed.
 *
 * @param cutInV volts from D to E at which it closes; absent: 13.0 V at 12 V (workshop manuals, from memory: 12.7 to 13.3; read for 6 V:
 *     6.3 to 6.7), in proportion otherwise
 * @param cutOutV volts at which it opens without a current; absent: 10.1 V at 12 V (read for 6 V: 4.8 to 5.3)
 * @param reverseCurrentA current from the battery at which it opens; 4 A unless said (read for 6 V: 3 to 5)
 * @param coilResistanceOhm of the shunt coil; absent: 80 ohm at 12 V (workshop manuals, from memory: 70 to 90), in proportion otherwise
 * @param contactResistanceOhm from D to A with the series turn; 0.01 unless said
 */
@JsonTypeName("control-box")
public record ControlBox(
        String id,
        @Nullable String label,
        @Nullable Double cutInV,
        @Nullable Double cutOutV,
        Double reverseCurrentA,
        @Nullable Double coilResistanceOhm,
        Double contactResistanceOhm)
        implements Part {
    public static final String BATTERY = "A";
    public static final String LOADS = "A1";
    public static final String ARMATURE = "D";
    public static final String FIELD = "F";
    public static final String EARTH = "E";
    private static final List<String> TERMINALS = List.of(BATTERY, LOADS, ARMATURE, FIELD, EARTH);
    /** The compensating turns between A and A1, and the closed contacts of the regulator (common practice, no source). */
    public static final double TURNS_OHM = 0.005;

    public static final double REGULATOR_OHM = 0.05;
    /** What the battery holds at D while the dynamo slows down, at 12 V: 2.1 V a cell. */
    private static final double BATTERY_12V = 12.6;

    public ControlBox {
        var faults = Bounds.part(id, label);
        Bounds.voltage(faults, "/cutInV", cutInV);
        Bounds.voltage(faults, "/cutOutV", cutOutV);
        Bounds.current(faults, "/reverseCurrentA", reverseCurrentA);
        Bounds.resistance(faults, "/coilResistanceOhm", coilResistanceOhm);
        Bounds.resistance(faults, "/contactResistanceOhm", contactResistanceOhm).reject();
        reverseCurrentA = Bounds.orElse(reverseCurrentA, 4);
        contactResistanceOhm = Bounds.orElse(contactResistanceOhm, 0.01);
    }

    @Override
    public List<String> terminals() {
        return TERMINALS;
    }

    public double cutInV(VehicleSystem system) {
        return Bounds.orElse(cutInV, system.scaledFrom12V(13));
    }

    /** Never more than the volts at which it closes. */
    public double cutOutV(VehicleSystem system) {
        return Math.min(Bounds.orElse(cutOutV, system.scaledFrom12V(10.1)), cutInV(system));
    }

    public double coilResistanceOhm(VehicleSystem system) {
        return Bounds.orElse(coilResistanceOhm, system.scaledFrom12V(80));
    }

    /**
     * How many volts at the shunt coil pull as hard as one ampere in the series turn: with the battery's volts at D the current that
     * opens it takes away what is above the volts at which it opens without one.
     */
    public double seriesOhm(VehicleSystem system) {
        return Math.max(0, system.scaledFrom12V(BATTERY_12V) - cutOutV(system)) / reverseCurrentA;
    }
}
