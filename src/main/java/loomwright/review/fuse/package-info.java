/** Checks of fuses and fusible links: their load, and the wires that they protect. */
@NullMarked
package loomwright.review.fuse;

import org.jspecify.annotations.NullMarked;
