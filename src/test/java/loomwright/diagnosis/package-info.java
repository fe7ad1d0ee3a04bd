/**
 * Which faults explain readings: D01 what is accepted, D02 likelihood, D03 how bad a fault is, D04 single faults and ties,
 * D05 pairs, none of these, a wrong reading, D06 what to measure next, D07 faults of the demo plans put in and found, D08 flat and worn batteries,
 * D09 slips of whoever measured, D10 confirmation and procedure, D12 what complaints leave unsaid.
 */
@NullMarked
package loomwright.diagnosis;

import org.jspecify.annotations.NullMarked;
