/** What all checks of a plan look at: {@link loomwright.review.context.ReviewContext}; {@link loomwright.review.context.FindingCode} lists what they can find. */
@NullMarked
package loomwright.review.context;

import org.jspecify.annotations.NullMarked;
