/** What each single mistake does. */
@NullMarked
package loomwright.review.mistakes;

import org.jspecify.annotations.NullMarked;
