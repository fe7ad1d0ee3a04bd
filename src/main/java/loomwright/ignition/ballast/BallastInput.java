package loomwright.ignition.ballast;

import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * An ignition feed as it is asked about; what is left out is taken as common, and the working says so.
 *
 * @param nominalVoltageV 6, 12 or 24; 12 if left out. All usual values go in proportion to it
 * @param coilPrimaryOhm at 20 C, 0.05 to 100
 * @param dwellFraction share of the time that the primary is closed while the engine runs, 0.01 to 1; 0.6 if left out
 */
public record BallastInput(
        @Nullable Double nominalVoltageV,
        @JsonUnwrapped BallastElements ballast,
        @JsonUnwrapped SupplyVolts supply,
        @JsonUnwrapped PrimaryLeads leads,
        @Nullable Double coilPrimaryOhm,
        @JsonUnwrapped ClosedSwitch primarySwitch,
        @Nullable Double dwellFraction,
        @JsonUnwrapped Warmth warmth,
        @JsonUnwrapped VoltsWindow window) {
    /**
     * The resistance elements of the ballast.
     *
     * @param elementsOhm elements of the ballast from the feed end at 20 C, up to 8, 0.001 to 100 each; none if left out or empty
     * @param bypassTap where the bypass feeds: 1 after the first element and so on; the number of elements for the coil end
     * @param turned whether the ballast is mounted end for end
     */
    public record BallastElements(
            @Nullable List<Double> elementsOhm,
            @Nullable Integer bypassTap,
            @Nullable Boolean turned) {}

    /**
     * The volts at the source.
     *
     * @param supplyAtRestV at the battery, key on, engine stopped: 0.5 to 60; 12.6 if left out
     * @param supplyCrankingV at the battery while cranking; 10 if left out
     * @param supplyChargingV at the battery while charging; 14.2 if left out
     */
    public record SupplyVolts(
            @Nullable Double supplyAtRestV,
            @Nullable Double supplyCrankingV,
            @Nullable Double supplyChargingV) {}

    /**
     * The wires of the primary circuit.
     *
     * @param feedResistanceOhm from the battery to the ballast, 0 to 10; 0.05 if neither it nor a wire is given
     * @param feedSize size of that wire instead, such as {@code 14 AWG}
     * @param feedLengthM its length, 0.001 to 1000
     * @param feedLengthFt its length in feet
     * @param returnResistanceOhm from breaker or module back to the battery, 0 to 10; 0 if left out
     * @param bypassResistanceOhm from the battery to the tap, 0 to 10; 0 if left out
     */
    public record PrimaryLeads(
            @Nullable Double feedResistanceOhm,
            @Nullable String feedSize,
            @Nullable Double feedLengthM,
            @Nullable Double feedLengthFt,
            @Nullable Double returnResistanceOhm,
            @Nullable Double bypassResistanceOhm) {}

    /**
     * What switches the coil.
     *
     * @param contactBreakerOhm resistance of the closed contacts, 0 to 10; 0.03 if left out
     * @param moduleDropV saturation voltage of a module in the place of contacts, 0 to 5
     * @param moduleLimitA its current limit, 0.5 to 30; none if left out
     * @param moduleLeastV supply below which the module does not work, 0 to 60; 6 at 12 V if left out
     */
    public record ClosedSwitch(
            @Nullable Double contactBreakerOhm,
            @Nullable Double moduleDropV,
            @Nullable Double moduleLimitA,
            @Nullable Double moduleLeastV) {}

    /**
     * How warm coil and ballast are.
     *
     * @param ambientC around wires, ballast and coil, -60 to 150; 20 if left out
     * @param coilTemperatureC of the primary winding, -60 to 250; the ambient temperature if left out
     * @param ballastTemperatureC -60 to 600; the ambient temperature if left out
     * @param ballastCoefficientPerK change of the ballast's resistance, -0.001 to 0.01; 0 if left out
     * @param ballastThermalResistanceKPerW from the ballast to the air, 0 to 100; with it, or the next, the warm end is found
     * @param coilThermalResistanceKPerW from the winding to the air, 0 to 100
     */
    public record Warmth(
            @Nullable Double ambientC,
            @Nullable Double coilTemperatureC,
            @Nullable Double ballastTemperatureC,
            @Nullable Double ballastCoefficientPerK,
            @Nullable Double ballastThermalResistanceKPerW,
            @Nullable Double coilThermalResistanceKPerW) {}

    /**
     * The volts that the coil should have.
     *
     * @param windowLowV the least that the coil should have in every condition; by its ohms if left out
     * @param windowHighV the most; by its ohms if left out
     */
    public record VoltsWindow(
            @Nullable Double windowLowV, @Nullable Double windowHighV) {}
}
