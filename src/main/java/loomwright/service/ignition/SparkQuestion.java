package loomwright.service.ignition;

import static loomwright.message.Arg.arg;
import static loomwright.message.Arg.texts;

import java.util.List;
import loomwright.answer.Accepted;
import loomwright.answer.Answer;
import loomwright.answer.InputError;
import loomwright.answer.InputErrors;
import loomwright.answer.RejectedInput;
import loomwright.ignition.gap.BreakdownFormula;
import loomwright.ignition.primary.CoilData;
import loomwright.ignition.primary.CoilPreset;
import loomwright.ignition.primary.Firing;
import loomwright.ignition.spark.CoilInput;
import loomwright.ignition.spark.EngineInput;
import loomwright.ignition.spark.FeedInput;
import loomwright.ignition.spark.GapInput;
import loomwright.ignition.spark.SearchInput;
import loomwright.ignition.spark.Spark;
import loomwright.ignition.spark.SparkCurves;
import loomwright.ignition.spark.SparkInput;
import loomwright.ignition.spark.SparkResult;
import loomwright.ignition.spark.SweepRange;
import loomwright.ignition.spark.SwitchInput;
import org.jspecify.annotations.Nullable;

/**
 * A question about a spark in the names and units of the contract; ranges and defaults as in {@link SparkInput}.
 *
 * @param gapIn gap in inches instead of {@code gapMm}
 * @param speedFromRpm with {@code speedToRpm} and {@code speedSteps}: the speed sweep
 * @param supplyFromV with {@code supplyToV} and {@code supplySteps}: the supply sweep
 */
public record SparkQuestion(
        @Nullable Double speedRpm,
        @Nullable Integer nominalVoltageV,
        @Nullable Double supplyV,
        @Nullable Double feedResistanceOhm,
        @Nullable Double ballastResistanceOhm,
        @Nullable Boolean bypassed,
        @Nullable CoilPreset coilKind,
        @Nullable Double primaryResistanceOhm,
        @Nullable Double inductanceMh,
        @Nullable Double turnsRatio,
        @Nullable Double primaryClampV,
        @Nullable Double secondaryCapacitancePf,
        @Nullable Double efficiencyFraction,
        CoilData.@Nullable Feed coilMeantFor,
        @Nullable Double coilTemperatureC,
        @Nullable Double coilThermalResistanceKPerW,
        SwitchInput.@Nullable Kind switchedBy,
        @Nullable Double dropV,
        @Nullable Double currentLimitA,
        @Nullable Double switchRatingA,
        @Nullable Double moduleLeastV,
        SwitchInput.@Nullable DwellRule dwellRule,
        @Nullable Double dwellDegrees,
        @Nullable Double dwellMs,
        @Nullable Double maxDutyFraction,
        @Nullable Integer cylinders,
        @Nullable Integer strokes,
        Firing.@Nullable Arrangement arrangement,
        @Nullable Double gapMm,
        @Nullable Double gapIn,
        @Nullable Double pressureKpa,
        @Nullable Double temperatureC,
        @Nullable Double compressionRatio,
        @Nullable Double manifoldPressureKpa,
        @Nullable Double intakeTemperatureC,
        @Nullable Double polytropicExponent,
        @Nullable Double advanceDegrees,
        @Nullable BreakdownFormula formula,
        @Nullable Double burningV,
        @Nullable Double reserveRatio,
        @Nullable Double topSpeedRpm,
        @Nullable Double crankingSpeedRpm,
        @Nullable Boolean crankingBypassed,
        @Nullable Double speedFromRpm,
        @Nullable Double speedToRpm,
        @Nullable Integer speedSteps,
        @Nullable Double supplyFromV,
        @Nullable Double supplyToV,
        @Nullable Integer supplySteps) {
    private static final double MM_PER_INCH = 25.4;

    /**
     * Answers it.
     *
     * @throws RejectedInput with every fault, named as in the contract
     */
    public Answer<SparkReport> answer() {
        Answer<SparkResult> answer = ContractNames.named(() -> Spark.calculate(input()));
        return new Answer<>(SparkReport.of(answer.result()), answer.working(), answer.basis(), answer.cautions());
    }

    /** What a plot of the answer shows. */
    public SparkCurves curves() {
        return ContractNames.named(() -> SparkCurves.of(input()));
    }

    /** The same question as the domain takes it. */
    SparkInput input() {
        InputErrors faults = new InputErrors();
        SweepRange speeds = sweep(faults, "speed", "Rpm", speedFromRpm, speedToRpm, speedSteps);
        SweepRange supplies = sweep(faults, "supply", "V", supplyFromV, supplyToV, supplySteps);
        // What the domain leaves alone because nothing asks for it has to be in range all the same.
        faults.range("/dwellDegrees", dwellDegrees, 1, 719)
                .range("/dwellMs", dwellMs, 0.1, 100)
                .range("/maxDutyFraction", maxDutyFraction, 0.05, 0.98)
                .range("/gapMm", gapMm, 0.2, 3)
                .range("/gapIn", gapIn, 0.008, 0.118);
        faults.check(
                gapMm == null || gapIn == null,
                InputError.Code.CONTRADICTION,
                "/gapIn",
                gapIn,
                Accepted.NOT_BOTH,
                arg("first", "gapMm"),
                arg("second", "gapIn"));
        faults.reject();
        return new SparkInput(
                speedRpm,
                new FeedInput(supplyV, feedResistanceOhm, ballastResistanceOhm, bypassed, nominalVoltageV),
                new CoilInput(
                        coilKind,
                        primaryResistanceOhm,
                        per(inductanceMh, 1e3),
                        turnsRatio,
                        primaryClampV,
                        per(secondaryCapacitancePf, 1e12),
                        efficiencyFraction,
                        coilMeantFor),
                coilTemperatureC,
                coilThermalResistanceKPerW,
                new SwitchInput(
                        switchedBy,
                        dropV,
                        currentLimitA,
                        dwellRule,
                        dwellDegrees,
                        per(dwellMs, 1e3),
                        maxDutyFraction,
                        switchRatingA,
                        moduleLeastV),
                new EngineInput(cylinders, strokes, arrangement),
                gap(),
                burningV,
                new SearchInput(reserveRatio, topSpeedRpm, crankingSpeedRpm, crankingBypassed, speeds, supplies));
    }

    private GapInput gap() {
        return new GapInput(
                gapIn == null ? gapMm : (Double) (gapIn * MM_PER_INCH),
                per(pressureKpa, 1e-3),
                temperatureC,
                compressionRatio,
                per(manifoldPressureKpa, 1e-3),
                intakeTemperatureC,
                polytropicExponent,
                advanceDegrees,
                formula);
    }

    /** A quantity in SI, of whose unit in the contract there are {@code perSi} to one. Dividing keeps the ends exact. */
    private static @Nullable Double per(@Nullable Double value, double perSi) {
        if (value == null) {
            return null;
        }
        return perSi < 1 ? (Double) (value * Math.rint(1 / perSi)) : (Double) (value / perSi);
    }

    private static @Nullable SweepRange sweep(
            InputErrors faults,
            String name,
            String unit,
            @Nullable Double from,
            @Nullable Double to,
            @Nullable Integer steps) {
        if (from == null && to == null && steps == null) {
            return null;
        }
        if (from == null || to == null || steps == null) {
            String missing = from == null ? "From" + unit : to == null ? "To" + unit : "Steps";
            faults.check(
                    false,
                    InputError.Code.MISSING,
                    "/" + name + missing,
                    null,
                    Accepted.ALL_OF,
                    texts("names", List.of(name + "From" + unit, name + "To" + unit, name + "Steps")));
            return null;
        }
        try {
            return new SweepRange(from, to, steps);
        } catch (RejectedInput rejected) {
            rejected.faults()
                    .forEach(fault -> faults.add(ContractNames.at(
                            fault, fault.pointer().equals("/to") ? "/" + name + "To" + unit : "/" + name + "Steps")));
            return null;
        }
    }
}
