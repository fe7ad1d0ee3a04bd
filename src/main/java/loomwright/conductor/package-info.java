/**
 * Sizes of wires and what follows from them: resistance, voltage drop, ampacity, fuses and fusible links. Pure functions
 * over tables that are data files; depends on {@code answer} and the JDK.
 *
 * <p>Reading order: {@link loomwright.conductor.ReferenceTable}, {@link loomwright.conductor.ConductorSize},
 * {@link loomwright.conductor.Ampacity}, then the calculations {@link loomwright.conductor.Conductors},
 * {@link loomwright.conductor.VoltageDrop}, {@link loomwright.conductor.ConductorSizing} and
 * {@link loomwright.conductor.FuseChoice}.
 */
@NullMarked
package loomwright.conductor;

import org.jspecify.annotations.NullMarked;
