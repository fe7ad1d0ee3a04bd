package loomwright.backfeed;

import java.util.function.Supplier;
import loomwright.backfeed.BackfeedReport.Remedy;
import loomwright.circuit.Diode;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.Relay;
import loomwright.message.Message;
import org.jspecify.annotations.Nullable;

/**
 * A change that may help.
 *
 * @param change what to do
 * @param at id of the wire or part it is done to
 * @param added id of the part that it adds to the way of the current and that must do something; absent if there is none
 * @param changed makes the plan with the change
 */
record Candidate(
        Remedy.Kind kind,
        Message change,
        String at,
        @Nullable String added,
        Supplier<Plan> changed) {

    /** A remedy that was told already, to be judged on another plan. */
    static Candidate of(Remedy remedy, Plan plan, Plan changed) {
        String added = changed.parts().stream()
                .filter(part -> part instanceof Diode || part instanceof Relay)
                .map(Part::id)
                .filter(id -> plan.findPart(id).isEmpty())
                .findFirst()
                .orElse(null);
        return new Candidate(remedy.kind(), remedy.change(), remedy.at(), added, () -> changed);
    }
}
