/**
 * Which faults explain what was measured. {@link loomwright.diagnosis.DiagnosisAnswer} answers;
 * {@link loomwright.diagnosis.Bench} says what a meter would show with a fault,
 * {@link loomwright.diagnosis.Likelihood} how well that goes with what it showed,
 * {@link loomwright.diagnosis.FaultSize} how many ohms a bad joint has and how flat a battery is,
 * {@link loomwright.diagnosis.FaultSearch} tries single faults and pairs, {@link loomwright.diagnosis.Ties} puts
 * together what the readings cannot tell apart, {@link loomwright.diagnosis.NextReadings} chooses what to measure next.
 */
@NullMarked
package loomwright.diagnosis;

import org.jspecify.annotations.NullMarked;
