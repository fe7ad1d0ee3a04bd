/**
 * The primary circuit of a coil over time.
 *
 * <p>Read {@link loomwright.ignition.primary.Firing} (how often a coil is asked), then
 * {@link loomwright.ignition.primary.DwellLaw} and {@link loomwright.ignition.primary.Dwell} (how long it is charged),
 * then {@link loomwright.ignition.primary.PrimaryCircuit} and {@link loomwright.ignition.primary.PrimaryCurrent} (what it
 * then carries), {@link loomwright.ignition.primary.CoilData} and
 * {@link loomwright.ignition.primary.SecondaryVoltage} (what that raises).
 */
@NullMarked
package loomwright.ignition.primary;

import org.jspecify.annotations.NullMarked;
