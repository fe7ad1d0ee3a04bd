package loomwright.backfeed;

import java.util.Arrays;
import java.util.BitSet;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import loomwright.circuit.Consumer;
import loomwright.network.NetworkLimits;
import loomwright.operation.SettingScan;
import loomwright.operation.Step;
import loomwright.operation.SwitchSettings;

/** How each load is fed that should not be live, in one setting after the other. For one thread at a time. */
final class UnintendedFeedScan {
    private final SettingScan scan;
    private final MeantTable meant;
    private final List<Consumer> consumers;
    /** By step and consumer. */
    private final Map<Step, Feed[]> feeds = new EnumMap<>(Step.class);

    private final Map<Step, BitSet> states = new EnumMap<>(Step.class);

    UnintendedFeedScan(SwitchSettings settings, NetworkLimits limits) {
        this.scan = new SettingScan(settings, limits);
        this.consumers = scan.consumers();
        this.meant = new MeantTable(settings, consumers);
        for (Step step : Step.values()) {
            feeds.put(step, new Feed[consumers.size()]);
        }
    }

    /** See {@link SettingScan#forget}. */
    void forget() {
        scan.forget();
    }

    /** Somebody who looks at each step while the scan stands at it. */
    @FunctionalInterface
    interface EachStep {
        void at(Step step);
    }

    List<Consumer> consumers() {
        return consumers;
    }

    SettingScan scan() {
        return scan;
    }

    /** Goes through the steps of a setting, each beginning where the one before ended.
     *
     * @param each is called while the scan stands at a step
     */
    void solve(int[] setting, EachStep each) {
        BitSet active = new BitSet();
        for (Step step : Step.values()) {
            active = scan.settle(setting, step, active);
            states.put(step, active);
            Feed[] here = Objects.requireNonNull(feeds.get(step));
            Arrays.fill(here, Feed.NONE);
            for (int c = 0; c < here.length; c++) {
                here[c] = feedNow(setting, step, c);
            }
            each.at(step);
        }
    }

    /** Whether a load should be live. */
    boolean isMeant(int consumer, Step step, int[] setting) {
        return meant.isMeant(consumer, step, setting);
    }

    /** How a load is fed in the step that the scan settled last; not at all if it should be live. */
    Feed feedNow(int[] setting, Step step, int consumer) {
        return !scan.solved() || meant.isMeant(consumer, step, setting)
                ? Feed.NONE
                : new Feed(scan.activity(consumer), scan.isPulledIn(consumer), scan.effectiveV(consumer));
    }

    /** How a load is fed in a step of the setting gone through last; not at all if it should be live. */
    Feed at(Step step, int consumer) {
        return Objects.requireNonNull(feeds.get(step))[consumer];
    }

    /** What the parts with a memory do at the end of a step of that setting. */
    BitSet memory(Step step) {
        return scan.memory(Objects.requireNonNull(states.get(step)));
    }
}
