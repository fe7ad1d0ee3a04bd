package loomwright.operation;

import java.util.Arrays;
import java.util.List;
import loomwright.circuit.Consumer;
import loomwright.network.SwitchedNetwork;
import org.jspecify.annotations.Nullable;

/**
 * One step of a plan for all settings of its switches: settles as {@link Settling} does, on a {@link SwitchedNetwork}.
 *
 * <p>Sets of active parts are bits of a long, in the order of the thresholds.
 */
final class SweptStep {
    /** No state, because the quick way cannot be relied on here. */
    static final long UNCERTAIN = -1;

    private static final int MOST_ROUNDS = 64;

    private final SweptElements elements;
    private final SwitchedNetwork network;
    private final SweptMeters meters;
    private final int thresholds;
    private final long[] seen = new long[MOST_ROUNDS];
    private int seenCount;
    private long restless;

    /** Whether the network is at rest in a state, in which, and for which setting. */
    private boolean rested;

    private long rest;
    private final int[] restSetting;

    SweptStep(Wiring wiring, SweptElements elements, List<Threshold> thresholds, List<Consumer> consumers) {
        this.elements = elements;
        this.network = elements.network();
        this.meters = new SweptMeters(network, wiring, elements, thresholds, consumers);
        this.thresholds = thresholds.size();
        this.restSetting = new int[elements.choices()];
    }

    /** Whether a step of the same plan with these elements is electrically the same. */
    boolean hasElements(SweptElements others) {
        return elements.isSameAs(others);
    }

    /**
     * The state in which the relays and the like come to rest, and with it the solution.
     *
     * @param setting of each open part, and which addition is there, 0 for none
     * @param before the state they were in
     * @return {@link #UNCERTAIN} if the full solver must say
     */
    long settle(int[] setting, long before) {
        if (rested && before == rest && Arrays.equals(setting, restSetting)) {
            return rest;
        }
        rest = find(setting, before);
        rested = restless == 0 && rest != UNCERTAIN;
        System.arraycopy(setting, 0, restSetting, 0, setting.length);
        return rest;
    }

    private long find(int[] setting, long before) {
        long together = settle(setting, before, false);
        if (Long.bitCount(restless) < 2) {
            return together;
        }
        long oneByOne = settle(setting, before, true);
        if (restless == 0) {
            return oneByOne;
        }
        // There is no rest either way: the figures are those of one moment, as Settling gives them.
        return solve(setting, together) ? together : UNCERTAIN;
    }

    /** Sets {@link #restless} to the parts that keep changing. */
    private long settle(int[] setting, long before, boolean oneAtATime) {
        long active = before;
        seenCount = 0;
        restless = 0;
        while (seenCount < seen.length) {
            if (!solve(setting, active)) {
                return UNCERTAIN;
            }
            long next = meters.next(active, oneAtATime);
            if (next == active || next == UNCERTAIN) {
                return next;
            }
            for (int k = 0; k < seenCount; k++) {
                if (seen[k] == active) {
                    restless = restless(k);
                    return active;
                }
            }
            seen[seenCount++] = active;
            active = next;
        }
        return UNCERTAIN;
    }

    /** The parts that differ between the states of the cycle that begins at one of those seen. */
    private long restless(int first) {
        long ever = 0;
        long always = -1;
        for (int k = first; k < seenCount; k++) {
            ever |= seen[k];
            always &= seen[k];
        }
        return ever & ~always;
    }

    private boolean solve(int[] setting, long active) {
        network.clear();
        for (int p = 0; p < setting.length; p++) {
            network.add(elements.inSetting(p, setting[p]));
        }
        for (int t = 0; t < thresholds; t++) {
            network.add(elements.inState(t, (active >>> t & 1) != 0));
        }
        return network.solve();
    }

    /** Current of the branch of a wire or connector in the solution, A. */
    double currentA(int branch) {
        return network.currentA(branch);
    }

    /** How strongly a consumer is fed in the solution; null if too close to a limit to tell. */
    @Nullable
    FeedStrength activity(int consumer, long active) {
        return meters.activity(consumer, active);
    }

    /** Whether a consumer is a relay or solenoid that is pulled in. */
    boolean isPulledIn(int consumer, long active) {
        return meters.isPulledIn(consumer, active);
    }
}
