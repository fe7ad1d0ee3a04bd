/**
 * Unintended feeds: loads that are live though they should not be, the way the current takes, and what stops it.
 *
 * <p>Reading list: {@link loomwright.backfeed.BackfeedSearch} is the entry; {@link loomwright.backfeed.Situations} goes
 * through the switch positions, {@link loomwright.backfeed.FeedPaths} follows the current, {@link
 * loomwright.backfeed.RemedyCandidates} thinks of remedies, {@link loomwright.backfeed.EarthCandidates} and {@link
 * loomwright.backfeed.MasterSwitchCandidates} of those at the cause, and {@link loomwright.backfeed.RemedyTrial} tries each on a
 * copy of the plan. {@link loomwright.backfeed.BackfeedReport} is what comes out.
 */
@NullMarked
package loomwright.backfeed;

import org.jspecify.annotations.NullMarked;
