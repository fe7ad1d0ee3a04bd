package loomwright.backfeed;

import java.util.function.Supplier;
import loomwright.backfeed.BackfeedReport.Remedy;
import loomwright.circuit.Plan;

/**
 * A change that may help.
 *
 * @param change what to do, in words
 * @param at id of the wire or part it is done to
 * @param changed makes the plan with the change
 */
record Candidate(Remedy.Kind kind, String change, String at, Supplier<Plan> changed) {}
