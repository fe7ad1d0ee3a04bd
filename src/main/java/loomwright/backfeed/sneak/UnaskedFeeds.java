package loomwright.backfeed.sneak;

import java.util.Arrays;
import java.util.BitSet;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import loomwright.circuit.Consumer;
import loomwright.circuit.Plan;
import loomwright.network.NetworkLimits;
import loomwright.operation.FeedStrength;
import loomwright.operation.Intent;
import loomwright.operation.SettingScan;
import loomwright.operation.Step;
import loomwright.operation.SwitchSettings;

/** How each load is fed unasked in one setting after the other. For one thread at a time. */
final class UnaskedFeeds {
    private static final Feed NONE = new Feed(FeedStrength.DEAD, false);

    private final Settings settings;
    private final List<Consumer> consumers;
    private final SettingScan scan;
    private final int[] setting;
    /** By step and consumer. */
    private final Map<Step, Feed[]> feeds = new EnumMap<>(Step.class);

    private boolean inFull;

    /** Prepares a plan. */
    UnaskedFeeds(Settings settings, NetworkLimits limits) {
        this.settings = settings;
        this.consumers = settings.plan().listParts(Consumer.class);
        this.scan = new SettingScan(SwitchSettings.of(settings.plan()), limits);
        this.setting = new int[settings.open().size()];
        for (Step step : Step.values()) {
            feeds.put(step, new Feed[consumers.size()]);
        }
    }

    /** Solves the setting of that number and returns its code. */
    long solve(int number) {
        settings.read(number, setting);
        long code = settings.code(setting);
        Plan plan = settings.planAt(code);
        int before = scan.undecided();
        BitSet active = new BitSet();
        for (Step step : Step.values()) {
            Feed[] here = in(step);
            Arrays.fill(here, NONE);
            active = scan.settle(setting, step, active);
            for (int c = 0; c < here.length && scan.solved(); c++) {
                if (!Intent.meantLive(consumers.get(c), plan, step)) {
                    here[c] = new Feed(scan.activity(c), scan.isPulledIn(c));
                }
            }
        }
        inFull = scan.undecided() > before;
        return code;
    }

    /** Whether the setting just solved was left to the full solver. */
    boolean inFull() {
        return inFull;
    }

    /** How a load is fed in a step of the setting just solved; dead also if it is meant to be live. */
    Feed at(Step step, int consumer) {
        return in(step)[consumer];
    }

    private Feed[] in(Step step) {
        return Objects.requireNonNull(feeds.get(step));
    }
}
