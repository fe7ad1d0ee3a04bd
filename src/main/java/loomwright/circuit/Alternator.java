package loomwright.circuit;

import com.fasterxml.jackson.annotation.JsonProperty;
import com.fasterxml.jackson.annotation.JsonTypeName;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A regulated source behind a rectifier, with terminals {@code B+}, {@code B-}, {@code D+} (warning lamp and exciter
 * diodes) and, if its regulator measures elsewhere, {@code S} (sense). It generates while the engine turns fast enough, in condition running and still just after the key is turned off, and
 * while a current in its exciter terminal excites its field, which it keeps up itself once it generates.
 *
 * <p>In a vehicle with positive earth {@code B+} is on the chassis, and {@code D+} stands for the exciter terminal of the
 * live pole, which is then negative: the warning lamp hangs between it and the live pole in either.
 *
 * @param regulatedV voltage the regulator holds; absent: 14.2 V at 12 V, in proportion otherwise (common practice)
 * @param sourceResistanceOhm by how much the voltage sags with load; 0.02 unless said
 * @param limitA the most it gives; 35 A unless said
 * @param rectifier the state of its main diodes; sound unless said
 * @param leakageA what its diodes let back from the battery at the nominal voltage while it stands; absent for none
 * @param senseLost what the regulator of a machine with a sense terminal does when nothing is joined to that; absent: it has no sense
 *     terminal and holds the voltage at its output
 * @param speedRpm its own speed while the engine runs; absent: fast enough for all it can give
 */
@JsonTypeName("alternator")
public record Alternator(
        String id,
        @Nullable String label,
        @Nullable Double regulatedV,
        Double sourceResistanceOhm,
        Double limitA,
        @JsonUnwrapped Exciter exciter,
        Rectifier rectifier,
        @Nullable Double leakageA,
        @Nullable SenseLost senseLost,
        @Nullable Double speedRpm)
        implements Generator {
    /** Current at D+ below which it does not begin to generate (common practice, no source). */
    public static final double LEAST_FIELD_A = 0.1;

    public static final String OUTPUT = "B+";
    public static final String RETURN = "B-";
    public static final String WARNING_LAMP = "D+";
    public static final String SENSE = "S";
    private static final List<String> TERMINALS = List.of(OUTPUT, RETURN, WARNING_LAMP);
    private static final List<String> TERMINALS_WITH_SENSE = List.of(OUTPUT, RETURN, WARNING_LAMP, SENSE);

    /** From S to the earthed pole through the regulator: some milliamperes (common practice, no source). */
    public static final double SENSE_OHM = 10_000;

    /** From the live pole to S in a regulator that falls back: so the volts rise by 2 % when the sense wire is lost. */
    public static final double FALL_BACK_OHM = 200;

    /** By what share of its set volts a machine at full field rises above them, on a battery (common practice, no source). */
    private static final double FULL_FIELD_RISE = 0.3;

    /** What a regulator does when its sense terminal has lost its wire. */
    public enum SenseLost {
        /**
         * It holds the voltage at its output, slightly higher than set (service manual of a 1998 car; that it is 2 % is common practice,
         * no source).
         */
        @JsonProperty("falls-back")
        FALLS_BACK,
        /** It measures nothing and gives all it can (common practice, no source). */
        @JsonProperty("full-output")
        FULL_OUTPUT
    }

    /** What state the six main diodes are in, and how much of its rating is left (common practice, no source). */
    public enum Rectifier {
        @JsonProperty("sound")
        SOUND(1),
        /** One diode is open: one phase gives half. */
        @JsonProperty("diode-open")
        DIODE_OPEN(0.67),
        /** One diode is shorted: it shorts two phases for half of the time. */
        @JsonProperty("diode-shorted")
        DIODE_SHORTED(0.33);

        private final double share;

        Rectifier(double share) {
            this.share = share;
        }
    }

    public Alternator {
        var faults = Generator.check(
                id, label, regulatedV, limitA, sourceResistanceOhm, exciter.fieldResistanceOhm(), speedRpm);
        Bounds.current(faults, "/leakageA", leakageA);
        Bounds.current(faults, "/exciterLimitA", exciter.exciterLimitA()).reject();
        rectifier = orSound(rectifier);
        sourceResistanceOhm = Bounds.orElse(sourceResistanceOhm, 0.02);
        limitA = Bounds.orElse(limitA, 35);
    }

    private static Rectifier orSound(@Nullable Rectifier stated) {
        return stated == null ? Rectifier.SOUND : stated;
    }

    /** The most it gives with its diodes as they are, turning fast, A. */
    public double outputLimitA() {
        return rectifier.share * limitA;
    }

    @Override
    public Boolean selfExciting() {
        return exciter.selfExciting();
    }

    @Override
    public List<String> terminals() {
        return senseLost == null ? TERMINALS : TERMINALS_WITH_SENSE;
    }

    /** By how much its regulator can raise it above what it is set to, V. */
    public double highestRaiseV(VehicleSystem system) {
        return FULL_FIELD_RISE * regulatedV(system);
    }

    @Override
    public String outputTerminal() {
        return OUTPUT;
    }

    @Override
    public String returnTerminal() {
        return RETURN;
    }

    @Override
    public String lampTerminal() {
        return WARNING_LAMP;
    }

    @Override
    public List<Winding> windings(VehicleSystem system) {
        return List.of(new Winding(WARNING_LAMP, earthedPole(system), fieldResistanceOhm(system)));
    }

    /** The field winding ends there. */
    @Override
    public String earthedPole(VehicleSystem system) {
        return system.earthPolarity() == EarthPolarity.NEGATIVE ? RETURN : OUTPUT;
    }

    @Override
    public String livePole(VehicleSystem system) {
        return system.earthPolarity() == EarthPolarity.NEGATIVE ? OUTPUT : RETURN;
    }

    /** The field's resistance in a given vehicle. */
    public double fieldResistanceOhm(VehicleSystem system) {
        return Bounds.orElse(exciter.fieldResistanceOhm(), system.scaledFrom12V(4));
    }

    @Override
    public double regulatedV(VehicleSystem system) {
        return Bounds.orElse(regulatedV, system.scaledFrom12V(UsualVoltages.CHARGING_V));
    }

    /**
     * What feeds its field.
     *
     * @param fieldResistanceOhm from D+ to the earthed pole through the field winding and regulator; absent: 4 ohm at 12 V,
     *     in proportion otherwise, so that the field current stays within what the exciter diodes give (common practice, no source)
     * @param exciterLimitA the most its exciter diodes give at D+; 5 A unless said
     * @param exciterDiodes whether exciter diodes feed its field from D+ once it generates; false for one whose field is fed from the ignition
     *     at D+ all the time. True unless said
     * @param selfExciting whether it generates without a current in its exciter terminal, as a machine of one wire does; false
     *     unless said
     */
    public record Exciter(
            @Nullable Double fieldResistanceOhm, Double exciterLimitA, Boolean exciterDiodes, Boolean selfExciting) {
        public Exciter {
            selfExciting = Bounds.orFalse(selfExciting);
            exciterLimitA = Bounds.orElse(exciterLimitA, 5);
            exciterDiodes = exciterDiodes == null || exciterDiodes;
        }
    }
}
