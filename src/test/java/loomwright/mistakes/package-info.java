/** What each single mistake does. */
@NullMarked
package loomwright.mistakes;

import org.jspecify.annotations.NullMarked;
