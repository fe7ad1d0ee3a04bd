package loomwright.circuit;

import com.fasterxml.jackson.annotation.JsonProperty;
import com.fasterxml.jackson.annotation.JsonTypeName;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A direct-current generator: {@code D} (armature), {@code F} (field), {@code E} (earthed brush and other end of the field). At rest its
 * armature is nearly a short between D and E, which is why a cut-out stands between it and the battery. While the engine runs it
 * builds up its voltage if its field is fed from D, as through the regulator of a control box.
 *
 * <p>Volts follow the regulator: its setting with nothing connected, less {@code sourceResistanceOhm} for each ampere, never more
 * than the rating. That is the usual fall of a compensated regulator; one of constant voltage holds its setting; a machine with a
 * third brush is a constant current up to a ceiling, so that the battery decides its volts.
 *
 * @param regulation how it is held; compensated unless said
 * @param regulatedV setting of its regulator with nothing connected; absent: 16.1 V compensated, 14.6 V constant voltage, 18 V as the
 *     ceiling of a third brush, at 12 V and in proportion otherwise
 * @param limitA what it gives beside its own field; 22 A unless said
 * @param sourceResistanceOhm by how much its volts fall with load; absent: what brings a compensated one down to 13.5 V at its
 *     rating, at 12 V; 0.02 otherwise
 * @param armatureResistanceOhm from D to E with its brushes; 0.2 unless said (common practice: 0.1 to 0.3)
 * @param fieldResistanceOhm from F to E; absent: 6.15 ohm at 12 V, in proportion otherwise (workshop manuals, from memory: 5.9 to
 *     6.4, 2.6 to 3.4 at 6 V)
 * @param speed how fast it turns, and what it gives at which speed
 * @param selfExciting whether it generates with nothing at F, as with a field of its own connection; true for a third brush, false
 *     otherwise unless said
 */
@JsonTypeName("dynamo")
public record Dynamo(
        String id,
        @Nullable String label,
        Regulation regulation,
        @Nullable Double regulatedV,
        Double limitA,
        @Nullable Double sourceResistanceOhm,
        Double armatureResistanceOhm,
        @Nullable Double fieldResistanceOhm,
        @JsonUnwrapped Speed speed,
        Boolean selfExciting)
        implements Generator {
    public static final String ARMATURE = "D";
    public static final String FIELD = "F";
    public static final String EARTH = "E";
    private static final List<String> TERMINALS = List.of(ARMATURE, FIELD, EARTH);

    /** Volts that a turning machine shows from what magnetism is left, at 12 V (common practice, no source). */
    private static final double RESIDUAL_12V = 1;
    /** Share of them that must reach its field for it to build up. */
    private static final double BUILD_UP_SHARE = 0.5;
    /** What a compensated regulator has come down to at the rating, at 12 V (charging rule of a battery: 13.5 V). */
    private static final double RATED_12V = 13.5;

    private static final double STEADY_OHM = 0.02;
    /** What it shows at its cut-in speed, at 12 V: usual volts at which a cut-out closes. */
    private static final double CUT_IN_12V = 13;

    /** Its output rises over some speeds, not at once. */
    private static final double LEAST_RATIO = 1.05;

    /** How the voltage of a dynamo is held. */
    public enum Regulation {
        /** Two bobbins: the setting falls with the load. Open circuit 15.8 to 16.4 V at 20 C (owner's manual of a 1950s car). */
        @JsonProperty("compensated")
        COMPENSATED(16.1, 1.6),
        /** Three bobbins: voltage and current regulator. 14.2 to 15.0 V (workshop manuals of the 1960s, from memory). */
        @JsonProperty("voltage")
        VOLTAGE(14.6, 1.6),
        /** No regulator: a third brush feeds the field, so that the current is nearly constant. */
        @JsonProperty("third-brush")
        THIRD_BRUSH(18, 3);

        private final double openAt12V;
        private final double speedRatio;

        Regulation(double openAt12V, double speedRatio) {
            this.openAt12V = openAt12V;
            this.speedRatio = speedRatio;
        }
    }

    /**
     * Its speeds, all of the machine itself.
     *
     * @param speedRpm its own speed while the engine runs; absent: fast enough for its regulator
     * @param cutInRpm speed at which it begins to charge: with nothing but its field connected it shows 13.0 V at 12 V; 1200 unless said
     *     (workshop manuals, from memory: 1050 to 1450; a handbook of 1922: 1100)
     * @param fullOutputRpm speed from which it gives {@code limitA}, above {@code cutInRpm}; absent: 1.6 times that (workshop manuals, from
     *     memory: 1.5 to 1.8; the handbook of 1922: 1.55), 3 times with a third brush (car handbook of the 1920s: 3.1; service bulletin:
     *     2.9)
     */
    public record Speed(
            @Nullable Double speedRpm,
            Double cutInRpm,
            @Nullable Double fullOutputRpm) {
        public Speed {
            cutInRpm = Bounds.orElse(cutInRpm, 1200);
        }
    }

    public Dynamo {
        var faults = Generator.check(
                id, label, regulatedV, limitA, sourceResistanceOhm, fieldResistanceOhm, speed.speedRpm());
        Bounds.resistance(faults, "/armatureResistanceOhm", armatureResistanceOhm);
        faults.range("/cutInRpm", speed.cutInRpm(), Generator.MIN_RPM, Generator.MAX_RPM);
        if (speed.fullOutputRpm() != null) {
            faults.range("/fullOutputRpm", speed.fullOutputRpm(), LEAST_RATIO * speed.cutInRpm(), Generator.MAX_RPM);
        }
        faults.reject();
        regulation = orCompensated(regulation);
        limitA = Bounds.orElse(limitA, 22);
        armatureResistanceOhm = Bounds.orElse(armatureResistanceOhm, 0.2);
        selfExciting = selfExciting == null ? (Boolean) (regulation == Regulation.THIRD_BRUSH) : selfExciting;
    }

    private static Regulation orCompensated(@Nullable Regulation stated) {
        return stated == null ? Regulation.COMPENSATED : stated;
    }

    @Override
    public @Nullable Double speedRpm() {
        return speed.speedRpm();
    }

    @Override
    public List<String> terminals() {
        return TERMINALS;
    }

    @Override
    public String outputTerminal() {
        return ARMATURE;
    }

    @Override
    public String returnTerminal() {
        return EARTH;
    }

    @Override
    public String lampTerminal() {
        return ARMATURE;
    }

    @Override
    public String livePole(VehicleSystem system) {
        return ARMATURE;
    }

    @Override
    public String earthedPole(VehicleSystem system) {
        return EARTH;
    }

    @Override
    public double regulatedV(VehicleSystem system) {
        return Bounds.orElse(regulatedV, system.scaledFrom12V(regulation.openAt12V));
    }

    @Override
    public List<Winding> windings(VehicleSystem system) {
        return List.of(
                new Winding(ARMATURE, EARTH, armatureResistanceOhm),
                new Winding(FIELD, EARTH, fieldResistanceOhm(system)));
    }

    public double fieldResistanceOhm(VehicleSystem system) {
        return Bounds.orElse(fieldResistanceOhm, system.scaledFrom12V(6.15));
    }

    /** Speed from which it gives all it can. */
    public double fullRpm() {
        return Bounds.orElse(speed.fullOutputRpm(), regulation.speedRatio * speed.cutInRpm());
    }

    /**
     * What it shows with nothing but its field connected, and that fully on: in proportion to its speed, as its field is nearly
     * saturated (common practice; law of induction). No end where its speed is not stated.
     */
    public double noLoadV(VehicleSystem system) {
        Double speedRpm = speed.speedRpm();
        return speedRpm == null
                ? Double.POSITIVE_INFINITY
                : system.scaledFrom12V(CUT_IN_12V) * speedRpm / speed.cutInRpm();
    }

    /** By how much its volts fall with each ampere in a given vehicle. */
    public double sourceResistanceOhm(VehicleSystem system) {
        double fallV = regulatedV(system) - system.scaledFrom12V(RATED_12V);
        double usualOhm = regulation == Regulation.COMPENSATED && fallV > 0 ? fallV / limitA : STEADY_OHM;
        return Bounds.orElse(sourceResistanceOhm, usualOhm);
    }

    /**
     * Its volts before any current, so that what it shows with its own field as the only load is its setting, or what it makes at its
     * speed if that is less.
     */
    public double emfV(VehicleSystem system) {
        return openV(system) * (1 + sourceResistanceOhm(system) / fieldResistanceOhm(system));
    }

    /** The same below its cut-in speed, where its armature is all that is between. */
    public double slowEmfV(VehicleSystem system) {
        return noLoadV(system) * (1 + armatureResistanceOhm / fieldResistanceOhm(system));
    }

    /**
     * The most its armature gives: what it gives at most, and the current of its own field if that is fed from it by a wire.
     *
     * @param outputA what it gives at most beside its field
     */
    public double armatureLimitA(VehicleSystem system, double outputA, boolean fieldWired) {
        return outputA + (fieldWired ? openV(system) / fieldResistanceOhm(system) : 0);
    }

    private double openV(VehicleSystem system) {
        return Math.min(regulatedV(system), noLoadV(system));
    }

    /** Volts of the turning machine before it builds up, in a given vehicle. */
    public static double residualV(VehicleSystem system) {
        return system.scaledFrom12V(RESIDUAL_12V);
    }

    /** Volts at its field from which it builds up, in a given vehicle. */
    public static double buildUpV(VehicleSystem system) {
        return BUILD_UP_SHARE * residualV(system);
    }
}
