/** Checks of wires: current, voltage drop, protection by a fuse, direction of the current. */
@NullMarked
package loomwright.review.wire;

import org.jspecify.annotations.NullMarked;
