package loomwright.ignition.spark;

import java.util.Objects;
import java.util.stream.Stream;
import loomwright.answer.InputError;
import loomwright.answer.RejectedInput;
import loomwright.ignition.AssumedValue;
import loomwright.ignition.Assumptions;
import loomwright.ignition.gap.BreakdownFormula;
import loomwright.ignition.gap.BreakdownVoltage;
import loomwright.ignition.gap.Compression;
import loomwright.ignition.gap.GapConditions;
import loomwright.message.MessageCode;
import org.jspecify.annotations.Nullable;

/**
 * The gap and its gas as asked about: pressure and temperature at the spark, or the compression they follow from.
 * Ranges as in {@link GapConditions} and {@link Compression}; what is left out is common practice.
 *
 * @param gapMm 0.65 if left out
 * @param pressurePa with {@code temperatureC}, instead of the following
 * @param temperatureC with {@code pressurePa}
 * @param compressionRatio 8 if left out
 * @param manifoldPressurePa 100 000, open throttle, if left out
 * @param intakeTemperatureC 40 if left out
 * @param polytropicExponent 1.3 if left out
 * @param advanceDegrees 20 if left out
 * @param formula the middle of those meant for the conditions if left out
 */
public record GapInput(
        @Nullable Double gapMm,
        @Nullable Double pressurePa,
        @Nullable Double temperatureC,
        @Nullable Double compressionRatio,
        @Nullable Double manifoldPressurePa,
        @Nullable Double intakeTemperatureC,
        @Nullable Double polytropicExponent,
        @Nullable Double advanceDegrees,
        @Nullable BreakdownFormula formula) {

    /** A gap in an engine of the common kind. */
    public static GapInput of(@Nullable Double gapMm) {
        return new GapInput(gapMm, null, null, null, null, null, null, null, null);
    }

    /** A gap at known pressure and temperature. */
    public static GapInput of(double gapMm, double pressurePa, double temperatureC) {
        return new GapInput(gapMm, pressurePa, temperatureC, null, null, null, null, null, null);
    }

    /**
     * With what is left out here taken from another; the gas as a whole, since pressure and temperature or compression go
     * together.
     */
    GapInput completedFrom(GapInput other) {
        boolean gasGiven = Stream.of(
                        pressurePa,
                        temperatureC,
                        compressionRatio,
                        manifoldPressurePa,
                        intakeTemperatureC,
                        polytropicExponent,
                        advanceDegrees)
                .anyMatch(Objects::nonNull);
        boolean whole = (other.pressurePa == null) == (other.temperatureC == null);
        GapInput gas = gasGiven || !whole ? this : other;
        return new GapInput(
                gapMm == null ? other.gapMm : gapMm,
                gas.pressurePa,
                gas.temperatureC,
                gas.compressionRatio,
                gas.manifoldPressurePa,
                gas.intakeTemperatureC,
                gas.polytropicExponent,
                gas.advanceDegrees,
                formula == null ? other.formula : formula);
    }

    BreakdownVoltage resolve(Assumptions assumptions) {
        double mm = assumptions.or(gapMm, AssumedValue.PLUG_GAP, 0.65, "mm");
        return BreakdownVoltage.of(conditions(assumptions, mm), formula);
    }

    private GapConditions conditions(Assumptions assumptions, double mm) {
        if (pressurePa == null && temperatureC == null) {
            Compression compression = compression(assumptions);
            assumptions.note(compression.working());
            return new GapConditions(mm, compression.pressurePa(), compression.temperatureC());
        }
        if (pressurePa == null || temperatureC == null) {
            throw rejected(
                    InputError.Code.MISSING,
                    pressurePa == null ? "/pressurePa" : "/temperatureC",
                    null,
                    AcceptedSpark.PRESSURE_AND_TEMPERATURE);
        }
        if (Stream.of(compressionRatio, manifoldPressurePa, intakeTemperatureC, polytropicExponent, advanceDegrees)
                .anyMatch(Objects::nonNull)) {
            throw rejected(
                    InputError.Code.CONTRADICTION,
                    "/pressurePa",
                    pressurePa.toString(),
                    AcceptedSpark.PRESSURE_OR_COMPRESSION);
        }
        return new GapConditions(mm, pressurePa, temperatureC);
    }

    private Compression compression(Assumptions assumptions) {
        return new Compression(
                assumptions.or(compressionRatio, AssumedValue.COMPRESSION_RATIO, 8, ""),
                assumptions.or(manifoldPressurePa, AssumedValue.MANIFOLD_PRESSURE, 100_000, 1e-3, "kPa"),
                assumptions.or(intakeTemperatureC, AssumedValue.INTAKE_TEMPERATURE, 40, "°C"),
                assumptions.or(polytropicExponent, AssumedValue.POLYTROPIC_EXPONENT, 1.3, ""),
                assumptions.or(advanceDegrees, AssumedValue.SPARK_ADVANCE, 20, "°"));
    }

    private static RejectedInput rejected(
            InputError.Code code, String pointer, @Nullable String value, MessageCode accepted) {
        return new RejectedInput(new InputError(code, pointer, value, accepted.with()));
    }
}
