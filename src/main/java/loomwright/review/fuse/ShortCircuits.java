package loomwright.review.fuse;

import java.util.Collections;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoublePredicate;
import loomwright.backfeed.Situations;
import loomwright.backfeed.Situations.Situation;
import loomwright.circuit.TerminalRef;
import loomwright.circuit.Wire;
import loomwright.operation.Branch;
import loomwright.operation.ShortScan;
import loomwright.operation.SolvedStep;
import loomwright.review.context.ReviewContext;

/**
 * The prospective currents of shorts from the ends of wires to the chassis: copies of the plan with such a joint, solved.
 *
 * <p>Nearly all shorts do no harm. That is seen quickly, so the cost of a review grows little faster than the plan; what may
 * do harm, or is too close to call, is solved in full.
 */
final class ShortCircuits {
    /** A bolted short: nothing that would help the wire. */
    private static final double SHORT_OHM = 0.001;

    /** How far the quick figures may be off, ten times over, as a share. */
    private static final double MARGIN = 1e-3;

    private final ReviewContext context;
    private final Optional<ShortScan> quick;

    /**
     * Prepares shorts.
     *
     * @param ends the ends of wires that touch the chassis, one at a time
     */
    ShortCircuits(ReviewContext context, List<TerminalRef> ends) {
        this.context = context;
        this.quick = ends.isEmpty()
                ? Optional.empty()
                : Optional.of(context.survey().settings().scanShorts(Situations.open(context.plan()), ends, SHORT_OHM));
    }

    /**
     * The current of a wire, A, in the first step that lasts and in which it does harm, with an end of it shorted, in the
     * situation in which it carries most; in the plan as it stands if it never carries anything.
     *
     * @param end one of those prepared for
     */
    OptionalDouble findHarmfulA(Wire wire, TerminalRef end, DoublePredicate doesHarm) {
        Optional<Situation> most = context.lasting()
                .find(Branch.Owner.WIRE, wire.id())
                .map(peak -> peak.moment().situation());
        return isHarmless(wire, end, most, doesHarm) ? OptionalDouble.empty() : solve(wire, end, most, doesHarm);
    }

    /** Whether no step does harm, by a margin. */
    private boolean isHarmless(Wire wire, TerminalRef end, Optional<Situation> most, DoublePredicate doesHarm) {
        List<Integer> setting = most.map(Situation::setting)
                .orElseGet(() ->
                        Collections.nCopies(Situations.open(context.plan()).size(), 0));
        return quick.flatMap(q -> q.currentsA(wire, end, setting))
                .filter(currentsA -> currentsA.entrySet().stream()
                        .filter(e -> ReviewContext.lasts(e.getKey()))
                        .mapToDouble(Map.Entry::getValue)
                        .noneMatch(a -> doesHarm.test(a * (1 - MARGIN)) || doesHarm.test(a * (1 + MARGIN))))
                .isPresent();
    }

    private OptionalDouble solve(Wire wire, TerminalRef end, Optional<Situation> most, DoublePredicate doesHarm) {
        Iterator<SolvedStep> steps = context.survey()
                .settings()
                .stepsJoinedToChassis(most.map(Situation::plan).orElse(context.plan()), end, "short", SHORT_OHM);
        while (steps.hasNext()) {
            SolvedStep solved = steps.next();
            if (solved.solved() && ReviewContext.lasts(solved.step())) {
                double currentA = Math.abs(solved.currentA(wire));
                if (doesHarm.test(currentA)) {
                    return OptionalDouble.of(currentA);
                }
            }
        }
        return OptionalDouble.empty();
    }
}
