/**
 * Which faults explain what was measured. {@link loomwright.review.diagnosis.DiagnosisAnswer} answers;
 * {@link loomwright.review.diagnosis.Bench} says what a meter would show with a fault,
 * {@link loomwright.review.diagnosis.Likelihood} how well that goes with what it showed,
 * {@link loomwright.review.diagnosis.FaultSize} how many ohms a bad joint has and how flat a battery is,
 * {@link loomwright.review.diagnosis.Search} tries single faults and pairs, {@link loomwright.review.diagnosis.Ties} puts
 * together what the readings cannot tell apart, {@link loomwright.review.diagnosis.NextReadings} chooses what to measure next.
 */
@NullMarked
package loomwright.review.diagnosis;

import org.jspecify.annotations.NullMarked;
