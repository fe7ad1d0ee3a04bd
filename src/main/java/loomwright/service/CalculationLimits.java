package loomwright.service;

import loomwright.backfeed.BackfeedLimits;
import loomwright.backfeed.sneak.SneakLimits;
import loomwright.bulk.BulkLimits;
import loomwright.network.NetworkLimits;
import loomwright.review.mistakes.MistakesLimits;

/**
 * How much work one calculation takes on, each package with its own limits.
 *
 * @param network nodes, elements and steps of the solver
 * @param backfeed combinations, ways and remedies of the search for unintended feeds
 * @param mistakes solutions of a list of mistakes
 * @param sneaks combinations, cases, threads and time of the exhaustive search
 * @param bulk threads, window and number of bulk runs
 */
public record CalculationLimits(
        NetworkLimits network, BackfeedLimits backfeed, MistakesLimits mistakes, SneakLimits sneaks, BulkLimits bulk) {
    public static final CalculationLimits DEFAULT = new CalculationLimits(
            NetworkLimits.defaults(),
            BackfeedLimits.defaults(),
            MistakesLimits.defaults(),
            SneakLimits.defaults(),
            BulkLimits.defaults());
}
