/** Checks of the ignition: coil, ballast, bypass and module, and the battery while cranking. */
@NullMarked
package loomwright.review.ignition;

import org.jspecify.annotations.NullMarked;
