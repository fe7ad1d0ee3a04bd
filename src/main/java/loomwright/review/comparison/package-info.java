/**
 * Two plans compared: as built and as modified.
 *
 * <p>Reading list: {@link loomwright.review.comparison.ComparisonAnswer} is the entry, {@link
 * loomwright.review.comparison.PlanComparison} what comes out. {@link loomwright.review.comparison.Matching} says which
 * part and wire of the one plan is which of the other; everything else follows from it. All of it treats the two plans
 * alike, so that swapping them mirrors the result.
 */
@NullMarked
package loomwright.review.comparison;

import org.jspecify.annotations.NullMarked;
