/**
 * The exhaustive search for sneak paths: every setting of the free switches and breaker contacts, in every step.
 *
 * <p>Reading list: {@link loomwright.backfeed.sneak.SneakSearch} is the entry; {@link loomwright.backfeed.sneak.Settings}
 * counts through the settings, {@link loomwright.backfeed.sneak.SweepTask} goes through a stretch of them, {@link
 * loomwright.backfeed.sneak.LeastChanges} keeps the smallest that show something, {@link
 * loomwright.backfeed.sneak.SneakCase} is one of these solved in full; {@link loomwright.backfeed.sneak.Clues} says what is
 * typical of it. {@link loomwright.backfeed.sneak.SneakReport} is what comes out.
 */
@NullMarked
package loomwright.backfeed.sneak;

import org.jspecify.annotations.NullMarked;
