/**
 * The review of a plan: every wire, fuse, link, contact and connector judged in every step and switch position.
 *
 * <p>Reading list: {@link loomwright.review.PlanReview} is the entry; {@link loomwright.review.Checks} lists the checks,
 * each a class of its own that implements {@link loomwright.review.context.Check}; {@link loomwright.review.context.ReviewContext} is
 * what they all look at; {@link loomwright.review.context.FindingCode} names all that can be found. {@link
 * loomwright.review.context.FeedGraph} and {@link loomwright.review.context.Protection} say which wire hangs behind which fuse, {@link
 * loomwright.review.context.LoadCircuit} which way the current of a load takes.
 */
@NullMarked
package loomwright.review;

import org.jspecify.annotations.NullMarked;
