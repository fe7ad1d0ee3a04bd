package loomwright.circuit;

import java.util.List;
import loomwright.answer.InputErrors;
import org.jspecify.annotations.Nullable;

/** A machine that the engine turns and that charges the battery. */
public sealed interface Generator extends Part permits Alternator, Dynamo {
    /** Slowest speed of a machine that is accepted, rev/min. */
    double MIN_RPM = 1;

    /** Fastest speed of a machine that is accepted, rev/min. */
    double MAX_RPM = 30_000;

    /** What is left of a machine that gives nothing: a winding between two of its terminals. */
    record Winding(String from, String to, double resistanceOhm) {}

    /** The terminal whose current charges the battery, at the live or the earthed pole of the machine. */
    String outputTerminal();

    /** The other end of the same winding. */
    String returnTerminal();

    /** The terminal that the charge warning lamp leads to. */
    String lampTerminal();

    /** The terminal that feeds a given vehicle. */
    String livePole(VehicleSystem system);

    /** The terminal that is joined to the chassis in a given vehicle. */
    String earthedPole(VehicleSystem system);

    /** The voltage its regulator holds in a given vehicle. */
    double regulatedV(VehicleSystem system);

    /** The most it gives, A. */
    Double limitA();

    /** Its own speed while the engine runs, rev/min; absent: fast enough for all it can give. */
    @Nullable
    Double speedRpm();

    /** Whether it generates without a current in its field terminal. */
    Boolean selfExciting();

    /** What it is while it gives nothing. */
    List<Winding> windings(VehicleSystem system);

    /** Checks what all machines share. */
    static InputErrors check(
            @Nullable String id,
            @Nullable String label,
            @Nullable Double regulatedV,
            @Nullable Double limitA,
            @Nullable Double sourceResistanceOhm,
            @Nullable Double fieldResistanceOhm,
            @Nullable Double speedRpm) {
        InputErrors faults = Bounds.part(id, label);
        Bounds.voltage(faults, "/regulatedV", regulatedV);
        Bounds.current(faults, "/limitA", limitA);
        Bounds.resistance(faults, "/sourceResistanceOhm", sourceResistanceOhm);
        faults.range("/speedRpm", speedRpm, MIN_RPM, MAX_RPM);
        return Bounds.resistance(faults, "/fieldResistanceOhm", fieldResistanceOhm);
    }
}
