/**
 * The ignition of a vehicle with battery and coil: what the feed leaves for the coil, and what the coil leaves for the
 * spark.
 *
 * <p>Here is what all parts of it share: {@link loomwright.ignition.SelfHeating} of every winding and resistor, a root
 * that cannot be missed, numbers as a working shows them. Then read {@code ballast} (the steady currents of the feed),
 * {@code primary} (the current in the coil over time), {@code gap} (what the plug asks for), {@code spark} (both against
 * each other) and {@code change} (one ignition in the place of another).
 */
@NullMarked
package loomwright.ignition;

import org.jspecify.annotations.NullMarked;
