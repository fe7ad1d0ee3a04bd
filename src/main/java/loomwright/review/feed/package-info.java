/** Checks of feeds: loads live when they should be off, loads without power, the earthed pole. */
@NullMarked
package loomwright.review.feed;

import org.jspecify.annotations.NullMarked;
