/**
 * Wires, fuses and whole circuits asked as one question: how many volts a run loses, which size and which fuse suit, what
 * a load needs. Calculates with {@code conductor}, asks {@code judgement} for every verdict.
 *
 * <p>Reading order: {@link loomwright.sizing.WireQuestion}, {@link loomwright.sizing.VoltageDrop},
 * {@link loomwright.sizing.ConductorSizing}, {@link loomwright.sizing.FuseChoice}.
 */
@NullMarked
package loomwright.sizing;

import org.jspecify.annotations.NullMarked;
