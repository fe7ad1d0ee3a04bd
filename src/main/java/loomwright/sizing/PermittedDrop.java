package loomwright.sizing;

import loomwright.judgement.DropRule;
import org.jspecify.annotations.Nullable;

/**
 * The drop that a run may have: at most one of volts and per cent.
 *
 * @param limitV in volts
 * @param limitPercent in per cent of the supply
 * @param circuit for the usual limit where none is given; default GENERAL. The cables of a STARTER are judged by their ohms
 *     and need no fuse
 */
public record PermittedDrop(
        @Nullable Double limitV,
        @Nullable Double limitPercent,
        @Nullable DropRule circuit) {}
