/**
 * Two plans compared: as built and as modified.
 *
 * <p>Reading list: {@link loomwright.comparison.ComparisonAnswer} is the entry, {@link
 * loomwright.comparison.PlanComparison} what comes out. {@link loomwright.comparison.Matching} says which
 * part and wire of the one plan is which of the other; everything else follows from it. All of it treats the two plans
 * alike, so that swapping them mirrors the result.
 */
@NullMarked
package loomwright.comparison;

import org.jspecify.annotations.NullMarked;
