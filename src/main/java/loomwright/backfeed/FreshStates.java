package loomwright.backfeed;

import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CopyOnWriteArrayList;
import loomwright.operation.Step;

/**
 * What relays, solenoids and chargers do in each setting and step when the key is turned from off through all steps with the
 * switches standing still. States are few, so each is kept once and settings hold its number. May be filled by several threads.
 */
final class FreshStates {
    private static final int STEPS = Step.values().length;
    private static final int UNKNOWN = -1;

    private final int[] stateOf;
    private final Map<BitSet, Integer> numbers = new ConcurrentHashMap<>();
    private final List<BitSet> states = new CopyOnWriteArrayList<>();

    FreshStates(int settings) {
        stateOf = new int[settings * STEPS];
        Arrays.fill(stateOf, UNKNOWN);
    }

    void put(int setting, Step step, BitSet memory) {
        stateOf[setting * STEPS + step.place()] = numberOf(memory);
    }

    /** The number of a state, which is given one if it has none yet. */
    int numberOf(BitSet memory) {
        Integer known = numbers.get(memory);
        return known == null ? add(memory) : known;
    }

    private synchronized int add(BitSet memory) {
        Integer known = numbers.get(memory);
        if (known != null) {
            return known;
        }
        BitSet kept = (BitSet) memory.clone();
        states.add(kept);
        numbers.put(kept, states.size() - 1);
        return states.size() - 1;
    }

    /** How many different states there are; with one alone nothing remembers anything. */
    int distinct() {
        return states.size();
    }

    BitSet state(int number) {
        return states.get(number);
    }

    /** Whether a setting was looked at. */
    boolean isKnown(int setting) {
        return stateOf[setting * STEPS] != UNKNOWN;
    }

    /** The number of the state in a setting that was looked at. */
    int at(int setting, Step step) {
        return stateOf[setting * STEPS + step.place()];
    }
}
