/** Two plans compared, as a specification. */
@NullMarked
package loomwright.review.comparison;

import org.jspecify.annotations.NullMarked;
