/**
 * Ballast, bypass and coil in each condition of the key, with the contacts closed and open.
 *
 * <p>Read {@link loomwright.ignition.ballast.BallastInput} (what is asked), then
 * {@link loomwright.ignition.ballast.FeedPlan} (the same as a plan of a vehicle, which is what gets solved: there is no
 * second formula), {@link loomwright.ignition.ballast.FeedState} (what is read off it),
 * {@link loomwright.ignition.ballast.BallastFeed} (the whole answer) and
 * {@link loomwright.ignition.ballast.BallastChoice} (the questions backwards).
 */
@NullMarked
package loomwright.ignition.ballast;

import org.jspecify.annotations.NullMarked;
