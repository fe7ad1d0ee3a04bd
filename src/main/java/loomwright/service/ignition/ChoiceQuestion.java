package loomwright.service.ignition;

import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import loomwright.answer.Answer;
import loomwright.ignition.ballast.BallastChoice;
import loomwright.ignition.ballast.BallastInput;
import loomwright.ignition.ballast.ChoiceInput;
import loomwright.ignition.ballast.ChoiceResult;
import loomwright.service.form.Table;
import org.jspecify.annotations.Nullable;

/** What a coil is wanted to have; names, units and ranges as in {@link ChoiceInput} and {@link BallastInput}. */
public record ChoiceQuestion(
        @Nullable Double wantedCoilV,
        @Nullable Double wantedCoilA,
        @Nullable Double wantedCoilHeatW,
        @Nullable Double ballastOhm,
        @Nullable Double wantedCrankingCoilV,
        @Nullable Double nominalVoltageV,
        @JsonUnwrapped BallastInput.SupplyVolts supply,
        @JsonUnwrapped BallastInput.PrimaryLeads leads,
        @Nullable Double coilPrimaryOhm,
        @JsonUnwrapped BallastInput.ClosedSwitch primarySwitch,
        @Nullable Double ambientC,
        @Nullable Double coilTemperatureC,
        @JsonUnwrapped BallastInput.VoltsWindow window) {

    public Answer<ChoiceResult> answer() {
        return BallastChoice.calculate(
                new ChoiceInput(feed(), wantedCoilV, wantedCoilA, wantedCoilHeatW, ballastOhm, wantedCrankingCoilV));
    }

    /** The feed around the ballast that is looked for; any ballast and tap stand in its place. */
    private BallastInput feed() {
        return new BallastInput(
                nominalVoltageV,
                new BallastInput.BallastElements(List.of(1.0), 1, false),
                supply,
                leads,
                coilPrimaryOhm,
                primarySwitch,
                null,
                new BallastInput.Warmth(ambientC, coilTemperatureC, null, null, null, null),
                window);
    }

    /** The ballast in ohms for one cell, where there is one. */
    public static OptionalDouble figure(ChoiceResult result) {
        Double ohm = result.ballastOhm();
        return ohm == null ? OptionalDouble.empty() : OptionalDouble.of(ohm);
    }

    /** No ballast if the coil needs none, then the exact ballast and what can be had. */
    public static Table table(ChoiceResult result) {
        List<List<@Nullable Object>> rows = new ArrayList<>();
        ChoiceResult.Gives without = result.without();
        if (without != null) {
            rows.add(row("none", without));
        }
        ChoiceResult.Gives exact = result.exact();
        if (exact != null) {
            rows.add(row("exact", exact));
        }
        result.nearest().forEach(one -> rows.add(row(one.series(), one.gives())));
        return new Table(
                List.of(
                        "series",
                        "ballastOhm",
                        "coilV",
                        "coilA",
                        "coilHeatW",
                        "ballastHeatW",
                        "runningCoilV",
                        "runningCoilHeatW",
                        "ratingToBuyW",
                        "level",
                        "verdict"),
                rows);
    }

    private static List<@Nullable Object> row(Object series, ChoiceResult.Gives gives) {
        return List.of(
                series,
                gives.ballastOhm(),
                gives.keyOn().coilV(),
                gives.keyOn().coilA(),
                gives.keyOn().coilHeatW(),
                gives.keyOn().ballastHeatW(),
                gives.runningCoilV(),
                gives.runningCoilHeatW(),
                gives.ratingToBuyW(),
                gives.level(),
                gives.verdict());
    }
}
