/** The exhaustive search for sneak paths, as a specification. */
@NullMarked
package loomwright.backfeed.sneak;

import org.jspecify.annotations.NullMarked;
