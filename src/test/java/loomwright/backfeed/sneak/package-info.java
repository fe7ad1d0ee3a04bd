/**
 * The exhaustive search for sneak paths, as a specification: K01 the quick solution against the full one, K02 the search
 * against all combinations solved one by one, K03 what is told of a sneak, K04 its clues, K05 limits, progress, stopping, K06 with
 * single faults, K07 what is remembered.
 */
@NullMarked
package loomwright.backfeed.sneak;

import org.jspecify.annotations.NullMarked;
