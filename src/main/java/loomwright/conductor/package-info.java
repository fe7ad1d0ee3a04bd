/**
 * Sizes of wires and what their standards print: resistance, ampacity tables, opening times of fuses, fusible links,
 * melting currents. Pure functions over tables that are data files; judges nothing. Depends on {@code answer} and the JDK.
 *
 * <p>Reading order: {@link loomwright.conductor.ReferenceTable}, {@link loomwright.conductor.ConductorSize},
 * {@link loomwright.conductor.AmpacityTable}, {@link loomwright.conductor.FuseCurve},
 * {@link loomwright.conductor.Conductors}.
 */
@NullMarked
package loomwright.conductor;

import org.jspecify.annotations.NullMarked;
