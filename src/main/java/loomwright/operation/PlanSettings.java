package loomwright.operation;

import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.NoSuchElementException;
import java.util.Optional;
import java.util.Set;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.TerminalRef;

/**
 * A plan with its switches and contacts set in one way after another, each solved as {@link PlanSolver} does; what the
 * settings have in common is worked out once, and a network that comes again is not solved again. Not thread safe.
 */
public final class PlanSettings {
    private final Settling settling;

    PlanSettings(Settling settling) {
        this.settling = settling;
    }

    /**
     * Solves all steps, each when it is asked for.
     *
     * @param set the plan, differing from the one prepared in nothing but how switches and contacts are set
     * @throws loomwright.network.NoConvergence (the iterator) if a network could not be solved within the limits
     */
    public Iterator<SolvedStep> steps(Plan set) {
        return new Steps(settling.with(set));
    }

    /** As {@link #steps}, all of them. */
    public List<SolvedStep> solve(Plan set) {
        List<SolvedStep> solved = new ArrayList<>();
        steps(set).forEachRemaining(solved::add);
        return solved;
    }

    /**
     * As {@link #steps}, with a terminal joined to the chassis by one more wire, as if it were the last of the plan's.
     *
     * @param wire an id for it
     * @param resistanceOhm of it
     */
    public Iterator<SolvedStep> stepsJoinedToChassis(
            Plan set, TerminalRef terminal, String wire, double resistanceOhm) {
        return new Steps(settling.with(set).withWireToChassis(terminal, wire, resistanceOhm));
    }

    /**
     * Prepares a quick look at what wires carry while one terminal after another is joined to the chassis as by {@link
     * #stepsJoinedToChassis}.
     *
     * @param open the parts in which the settings differ, each in all of its own
     * @return empty if the plan is not for the quick way
     */
    public Optional<SweptShorts> sweepShorts(List<List<Part>> open, List<TerminalRef> terminals, double resistanceOhm) {
        return SweptShorts.of(settling.wiring(), open, terminals, resistanceOhm);
    }

    /** The steps in the order they happen, each beginning in the state that the one before left. */
    private static final class Steps implements Iterator<SolvedStep> {
        private static final Step[] ALL = Step.values();

        private final Settling settling;
        private Set<String> active = Set.of();
        private int next;

        Steps(Settling settling) {
            this.settling = settling;
        }

        @Override
        public boolean hasNext() {
            return next < ALL.length;
        }

        @Override
        public SolvedStep next() {
            if (!hasNext()) {
                throw new NoSuchElementException();
            }
            SolvedStep solved = settling.solve(ALL[next++], active);
            active = solved.active();
            return solved;
        }
    }
}
