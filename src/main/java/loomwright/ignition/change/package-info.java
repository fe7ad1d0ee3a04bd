/**
 * One ignition in the place of another: {@link loomwright.ignition.change.IgnitionChange} sets the sparks of both side by
 * side and judges the new currents against what has to carry them;
 * {@link loomwright.ignition.change.BypassLeft} solves what a bypass does that was left in place.
 */
@NullMarked
package loomwright.ignition.change;

import org.jspecify.annotations.NullMarked;
