package loomwright.service;

import loomwright.backfeed.BackfeedLimits;
import loomwright.network.NetworkLimits;

/**
 * How much work one calculation takes on, each package with its own limits.
 *
 * @param network nodes, elements and steps of the solver
 * @param backfeed combinations, ways and remedies of the search for unintended feeds
 */
public record CalculationLimits(NetworkLimits network, BackfeedLimits backfeed) {
    public static final CalculationLimits DEFAULT =
            new CalculationLimits(NetworkLimits.defaults(), BackfeedLimits.defaults());
}
