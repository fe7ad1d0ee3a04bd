package loomwright.circuit;

import com.fasterxml.jackson.annotation.JsonTypeName;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * An electronic switch for the coil: 1 to 31, fed at 15. While the engine turns it is taken as conducting, which is when
 * current flows.
 *
 * @param saturationV drop while it conducts; 1 V unless said (0.5 to 1.5 V, common practice)
 * @param limitA current it does not exceed; absent for none
 * @param supplyA what it draws for itself at 15, at nominal voltage; 0.1 A unless said
 * @param minimumSupplyV volts from 15 to 31 from which it works; absent: 6 V at 12 V, in proportion otherwise
 * @param conductsWhenStopped whether it feeds the coil with the engine stopped; false unless said
 */
@JsonTypeName("module")
public record IgnitionModule(
        String id,
        @Nullable String label,
        Double saturationV,
        @Nullable Double limitA,
        Double supplyA,
        @Nullable Double minimumSupplyV,
        Boolean conductsWhenStopped)
        implements Part {
    /** A transistor goes from nothing to its limit within some tens of millivolts. */
    public static final double SLOPE_OHM = 0.01;
    /** Below this none works in a 12 V vehicle, unless its maker says otherwise (ISO 16750-2, from memory). */
    public static final double DEAD_BELOW_12V = 6;

    public static final String SUPPLY = "15";
    public static final String SWITCHED = "1";
    public static final String RETURN = "31";
    private static final List<String> TERMINALS = List.of(SUPPLY, SWITCHED, RETURN);

    public IgnitionModule {
        var faults = Bounds.part(id, label);
        faults.range("/saturationV", saturationV, 0, 5);
        Bounds.current(faults, "/limitA", limitA);
        Bounds.current(faults, "/supplyA", supplyA);
        Bounds.voltage(faults, "/minimumSupplyV", minimumSupplyV).reject();
        saturationV = Bounds.orElse(saturationV, 1);
        supplyA = Bounds.orElse(supplyA, 0.1);
        conductsWhenStopped = Bounds.orFalse(conductsWhenStopped);
    }

    @Override
    public List<String> terminals() {
        return TERMINALS;
    }

    /** The same, conducting or not while the engine stands. */
    public IgnitionModule whenStopped(boolean conducts) {
        return new IgnitionModule(id, label, saturationV, limitA, supplyA, minimumSupplyV, conducts);
    }

    /** The voltage from which it works in a given vehicle. */
    public double minimumSupplyV(VehicleSystem system) {
        return Bounds.orElse(minimumSupplyV, system.scaledFrom12V(DEAD_BELOW_12V));
    }
}
