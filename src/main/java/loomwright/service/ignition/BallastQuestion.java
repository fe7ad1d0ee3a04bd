package loomwright.service.ignition;

import java.util.ArrayList;
import java.util.List;
import loomwright.answer.Answer;
import loomwright.ignition.ballast.BallastFeed;
import loomwright.ignition.ballast.BallastInput;
import loomwright.ignition.ballast.BallastResult;
import loomwright.ignition.ballast.FeedState;
import loomwright.service.form.Table;
import org.jspecify.annotations.Nullable;

/** A question about a ballast; its names and units are those of the contract already. */
public final class BallastQuestion {
    public static final List<String> COLUMNS = List.of(
            "condition",
            "bypass",
            "supplyV",
            "coilV",
            "currentA",
            "averageCoilV",
            "averageA",
            "coilHeatW",
            "ballastHeatW",
            "verdict");

    private BallastQuestion() {}

    public static Answer<BallastResult> answer(BallastInput input) {
        return BallastFeed.calculate(input);
    }

    /** One row for each condition, with and without bypass. */
    public static Table table(BallastResult result) {
        List<List<@Nullable Object>> rows = new ArrayList<>();
        for (BallastResult.InCondition in : result.conditions()) {
            rows.add(row(in, false, in.withoutBypass()));
            FeedState bypassed = in.withBypass();
            if (bypassed != null) {
                rows.add(row(in, true, bypassed));
            }
        }
        return new Table(COLUMNS, rows);
    }

    private static List<@Nullable Object> row(BallastResult.InCondition in, boolean bypass, FeedState state) {
        return List.of(
                in.condition(),
                bypass,
                in.supplyV(),
                state.electric().coilV(),
                state.electric().currentA(),
                state.electric().averageCoilV(),
                state.electric().averageA(),
                state.heat().coilHeatW(),
                state.heat().ballastHeatW(),
                state.verdict());
    }
}
