package loomwright.backfeed;

import loomwright.backfeed.BackfeedReport.Remedy;
import loomwright.circuit.Plan;

/**
 * A change that may help.
 *
 * @param change what to do, in words
 * @param at id of the wire or part it is done to
 * @param changed the plan with the change made
 */
record Candidate(Remedy.Kind kind, String change, String at, Plan changed) {}
