package loomwright.service.limits;

import static loomwright.message.Arg.plain;

import loomwright.answer.Accepted;
import loomwright.answer.InputError;
import loomwright.answer.InputErrors;
import loomwright.backfeed.BackfeedLimits;
import loomwright.bulk.BulkLimits;
import loomwright.network.NetworkLimits;
import loomwright.service.network.NetworkQuestion;

/**
 * How much work one calculation takes on, each package with its own limits.
 *
 * @param network nodes, elements and steps of the solver
 * @param backfeed combinations, ways, remedies and time of the search for unintended feeds
 * @param bulk threads, window and number of bulk runs
 * @param timeMs how long any other calculation of a plan may take, in ms
 */
public record CalculationLimits(NetworkLimits network, BackfeedLimits backfeed, BulkLimits bulk, int timeMs) {
    public static final CalculationLimits DEFAULT =
            new CalculationLimits(NetworkLimits.defaults(), BackfeedLimits.defaults(), BulkLimits.defaults(), 60_000);

    public CalculationLimits {
        new InputErrors()
                .check(
                        network.maxElements() <= NetworkQuestion.MOST_ELEMENTS,
                        InputError.Code.OUT_OF_RANGE,
                        "/network/maxElements",
                        network.maxElements(),
                        Accepted.NUMBER,
                        plain("min", 1),
                        plain("max", NetworkQuestion.MOST_ELEMENTS))
                .range("/timeMs", timeMs, 1, 3_600_000)
                .reject();
    }
}
