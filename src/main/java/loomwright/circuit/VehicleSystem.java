package loomwright.circuit;

import static loomwright.message.Arg.texts;

import java.util.List;
import java.util.Set;
import loomwright.answer.Accepted;
import loomwright.answer.InputError;
import loomwright.answer.InputErrors;
import org.jspecify.annotations.Nullable;

/**
 * What the whole circuit shares.
 *
 * @param nominalVoltageV 6, 12 or 24
 * @param earthPolarity which pole is on the chassis; negative unless said
 * @param ambientTemperatureC of the cabin and of everything not in the engine bay; 30 unless said, for which the tables of
 *     ampacity hold (33 CFR 183.425)
 * @param engineBayTemperatureC 50 unless said (33 CFR 183.425, engine spaces)
 */
public record VehicleSystem(
        Double nominalVoltageV, EarthPolarity earthPolarity, Double ambientTemperatureC, Double engineBayTemperatureC) {
    /** The nominal voltages of vehicles. */
    private static final Set<Double> NOMINAL_V = Set.of(6.0, 12.0, 24.0);

    /** Ambient where nobody says: 33 CFR 183.425 Table 5. */
    public static final double AMBIENT_C = 30;

    /** The same in an engine bay: note 1 of that table. */
    public static final double ENGINE_BAY_C = 50;

    public VehicleSystem {
        InputErrors faults = new InputErrors().required("/nominalVoltageV", nominalVoltageV);
        checkNominal(faults, nominalVoltageV);
        faults.range("/ambientTemperatureC", ambientTemperatureC, Bounds.MIN_TEMPERATURE_C, Bounds.MAX_TEMPERATURE_C);
        faults.range(
                "/engineBayTemperatureC", engineBayTemperatureC, Bounds.MIN_TEMPERATURE_C, Bounds.MAX_TEMPERATURE_C);
        faults.reject();
        earthPolarity = or(earthPolarity, EarthPolarity.NEGATIVE);
        ambientTemperatureC = Bounds.orElse(ambientTemperatureC, AMBIENT_C);
        engineBayTemperatureC = Bounds.orElse(engineBayTemperatureC, ENGINE_BAY_C);
    }

    /**
     * Checks a nominal voltage.
     *
     * @param nominalVoltageV 6, 12 or 24; absent: nothing to be checked
     */
    public static InputErrors checkNominal(InputErrors faults, @Nullable Number nominalVoltageV) {
        return faults.check(
                nominalVoltageV == null || NOMINAL_V.contains(nominalVoltageV.doubleValue()),
                InputError.Code.NOT_ONE_OF,
                "/nominalVoltageV",
                nominalVoltageV,
                Accepted.ONE_OF,
                texts("names", List.of("6", "12", "24")));
    }

    /** The nominal voltage of a vehicle whose supply has so many volts: 6, 12 or 24 (common practice, no source). */
    public static double nominalOf(double supplyV) {
        return supplyV <= 9 ? 6 : supplyV <= 18 ? 12 : 24;
    }

    private static EarthPolarity or(@Nullable EarthPolarity value, EarthPolarity otherwise) {
        return value == null ? otherwise : value;
    }

    public double temperatureC(Place place) {
        return place == Place.ENGINE_BAY ? engineBayTemperatureC : ambientTemperatureC;
    }

    /** A figure given for a 12 V vehicle, volts or ohms, in proportion to this one's nominal voltage. */
    public double scaledFrom12V(double figure) {
        return figure * nominalVoltageV / 12;
    }
}
