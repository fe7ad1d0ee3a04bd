package loomwright.operation;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import loomwright.operation.StableState.Outcome;

/**
 * Finds the state in which relays, solenoids, chargers, modules and loads with a voltage limit come to rest in one step. The
 * one search of that kind: it asks a {@link Circuit}, whether that is solved to decide or to report.
 *
 * <p>All parts past a threshold change at once and the circuit is solved again, until none changes. Where two or more parts
 * with a memory (relays, solenoids, chargers) want to change at once, each is changed alone first: if after each the others
 * still want to change and no other does, their order is irrelevant. If not, or if a state comes back, the states that are
 * reached by one part at a time are explored, at most {@value #MOST_EXPLORED}; modules and loads follow at once. One state of
 * rest is the outcome; several are a race; none is an oscillation.
 *
 * <p>States are sets of active parts, by their place in the list of {@link Threshold}s, which is in the order of ids, so that
 * nothing depends on the order of the plan.
 */
final class StateSearch {
    /** States of one race that are looked at. */
    static final int MOST_EXPLORED = 64;

    /** A step of a plan that can be solved with its parts in any state. */
    interface Circuit {
        /**
         * Solves the circuit in a state.
         *
         * @param active the parts past their thresholds
         * @param changes emptied, then given the parts that would change at the voltages of the solution
         */
        Verdict probe(BitSet active, BitSet changes);
    }

    /** What a solution says of a state. */
    enum Verdict {
        TOLD,
        /** Too close to a limit to tell at this accuracy. */
        UNDECIDED,
        /** There is no solution. */
        UNSOLVABLE
    }

    private final Circuit circuit;
    /** The parts with a memory. */
    private final BitSet memory;

    private final BitSet changes = new BitSet();

    StateSearch(Circuit circuit, BitSet memory) {
        this.circuit = circuit;
        this.memory = memory;
    }

    /**
     * Settles the step; afterwards the circuit is solved in the state told, unless that is undecided.
     *
     * @param before the parts that were active when the step began
     */
    StableState settle(BitSet before) {
        List<BitSet> seen = new ArrayList<>(4);
        BitSet active = (BitSet) before.clone();
        while (true) {
            Verdict verdict = circuit.probe(active, changes);
            if (verdict != Verdict.TOLD) {
                return StableState.without(verdict, active);
            } else if (changes.isEmpty()) {
                return StableState.settled(active);
            }
            int first = seen.indexOf(active);
            if (first >= 0) {
                BitSet moving = moving(seen.subList(first, seen.size()));
                return moving.cardinality() < 2 ? oscillating(active, moving) : explore(active, moving);
            }
            seen.add((BitSet) active.clone());
            BitSet wanted = (BitSet) changes.clone();
            if (hasSeveralWithMemory(wanted)) {
                BitSet racing = (BitSet) wanted.clone();
                racing.and(memory);
                switch (orderMatters(active, racing)) {
                    case NO -> {}
                    case YES -> {
                        return explore(active, racing);
                    }
                    case UNDECIDED -> {
                        return StableState.without(Verdict.UNDECIDED, active);
                    }
                }
            }
            active.xor(wanted);
        }
    }

    private boolean hasSeveralWithMemory(BitSet wanted) {
        int count = 0;
        for (int part = wanted.nextSetBit(0); part >= 0; part = wanted.nextSetBit(part + 1)) {
            count += memory.get(part) ? 1 : 0;
        }
        return count > 1;
    }

    private enum OrderMatters {
        YES,
        NO,
        UNDECIDED
    }

    /** Whether one of the racing parts, changed alone, keeps another from changing or makes one change that did not want to. */
    private OrderMatters orderMatters(BitSet active, BitSet racing) {
        BitSet alone = (BitSet) active.clone();
        BitSet others = (BitSet) racing.clone();
        for (int part = racing.nextSetBit(0); part >= 0; part = racing.nextSetBit(part + 1)) {
            alone.flip(part);
            others.clear(part);
            Verdict verdict = circuit.probe(alone, changes);
            if (verdict == Verdict.UNDECIDED) {
                return OrderMatters.UNDECIDED;
            }
            changes.and(memory);
            if (verdict == Verdict.UNSOLVABLE || !changes.equals(others)) {
                return OrderMatters.YES;
            }
            alone.flip(part);
            others.set(part);
        }
        return OrderMatters.NO;
    }

    /** Goes through the states that are reached by one part at a time. */
    private StableState explore(BitSet start, BitSet moving) {
        List<BitSet> rests = new ArrayList<>();
        Map<BitSet, Boolean> reached = new LinkedHashMap<>();
        List<BitSet> open = new ArrayList<>();
        open.add(start);
        reached.put(start, true);
        boolean all = true;
        for (int k = 0; k < open.size(); k++) {
            BitSet state = open.get(k);
            Verdict verdict = circuit.probe(state, changes);
            if (verdict == Verdict.UNDECIDED) {
                return StableState.without(verdict, start);
            } else if (verdict == Verdict.UNSOLVABLE) {
                continue;
            } else if (changes.isEmpty()) {
                rests.add(state);
                continue;
            }
            for (BitSet next : nextStates(state, reached.keySet())) {
                if (reached.size() < MOST_EXPLORED) {
                    if (reached.putIfAbsent(next, true) == null) {
                        open.add(next);
                    }
                } else {
                    all &= reached.containsKey(next);
                }
            }
        }
        if (rests.isEmpty()) {
            return oscillating(start, moving);
        }
        // The circuit is to stand solved in the state told.
        if (circuit.probe(rests.get(0), changes) != Verdict.TOLD) {
            throw new IllegalStateException("a state of rest has lost its solution");
        }
        return rests.size() == 1 && all
                ? StableState.settled(rests.get(0))
                : new StableState(Outcome.RACE, rests.get(0), moving, rests, all);
    }

    /**
     * The parts without a memory follow at once; of those with one, and where only the former move, one at a time. Where the
     * followers only go round, the others do not wait for them.
     */
    private List<BitSet> nextStates(BitSet state, Set<BitSet> reached) {
        BitSet followers = (BitSet) changes.clone();
        followers.andNot(memory);
        List<BitSet> next = new ArrayList<>();
        if (!followers.isEmpty() && changes.intersects(memory)) {
            BitSet followed = changed(state, followers);
            if (!reached.contains(followed)) {
                next.add(followed);
                return next;
            }
        }
        for (int part = changes.nextSetBit(0); part >= 0; part = changes.nextSetBit(part + 1)) {
            BitSet one = (BitSet) state.clone();
            one.flip(part);
            next.add(one);
        }
        return next;
    }

    private static BitSet changed(BitSet state, BitSet parts) {
        BitSet changed = (BitSet) state.clone();
        changed.xor(parts);
        return changed;
    }

    private StableState oscillating(BitSet active, BitSet moving) {
        Verdict verdict = circuit.probe(active, changes);
        return verdict == Verdict.TOLD
                ? new StableState(Outcome.OSCILLATING, active, moving, List.of(), true)
                : StableState.without(verdict, active);
    }

    /** The parts that differ between the states of a cycle. */
    private static BitSet moving(List<BitSet> cycle) {
        BitSet ever = new BitSet();
        BitSet always = (BitSet) cycle.get(0).clone();
        for (BitSet state : cycle) {
            ever.or(state);
            always.and(state);
        }
        ever.andNot(always);
        return ever;
    }
}
