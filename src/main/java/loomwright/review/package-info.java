/**
 * The review of a plan: every wire, fuse, link, contact and connector judged in every step and switch position.
 *
 * <p>Reading list: {@link loomwright.review.PlanReview} is the entry; {@link loomwright.review.Checks} lists the checks,
 * each a class of its own that implements {@link loomwright.review.Check}; {@link loomwright.review.ReviewContext} is
 * what they all look at; {@link loomwright.review.FindingCode} names all that can be found. {@link
 * loomwright.review.FeedGraph} and {@link loomwright.review.Protection} say which wire hangs behind which fuse, {@link
 * loomwright.review.LoadLoop} which way the current of a load takes.
 */
@NullMarked
package loomwright.review;

import org.jspecify.annotations.NullMarked;
