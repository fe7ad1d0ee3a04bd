package loomwright.backfeed;

import java.util.List;
import java.util.function.BooleanSupplier;
import loomwright.circuit.Consumer;
import loomwright.network.NetworkLimits;
import loomwright.operation.FeedStrength;
import loomwright.operation.Step;
import loomwright.operation.SwitchSettings;
import org.jspecify.annotations.Nullable;

/**
 * The work space of one thread of a scan. With a sound plan beside it a load counts if it is fed by more than a trickle, and
 * more strongly than there in the same setting.
 */
final class ScanTask {
    private final SettingCodes codes;
    private final UnintendedFeedScan feeds;
    private final @Nullable UnintendedFeedScan soundFeeds;
    /** By load its number in the sound plan, or −1. */
    private final int[] soundNumber;

    private final @Nullable FreshStates states;

    ScanTask(SettingCodes codes, @Nullable SwitchSettings sound, @Nullable FreshStates states, NetworkLimits limits) {
        this.codes = codes;
        this.states = states;
        this.feeds = new UnintendedFeedScan(codes.settings(), limits);
        this.soundFeeds = sound == null ? null : new UnintendedFeedScan(sound, limits);
        List<String> soundIds = soundFeeds == null
                ? List.of()
                : soundFeeds.consumers().stream().map(Consumer::id).toList();
        this.soundNumber = feeds.consumers().stream()
                .mapToInt(c -> soundIds.indexOf(c.id()))
                .toArray();
    }

    /**
     * Goes through the settings from one number to before another. What it tells does not depend on the stretches before, and so not
     * on which thread had which.
     *
     * @param stop asked before each setting
     */
    ScanResult run(int from, int to, BooleanSupplier stop) {
        ScanResult result = nothing();
        feeds.forget();
        if (soundFeeds != null) {
            soundFeeds.forget();
        }
        int[] setting = codes.settings().drawn();
        for (int number = from; number < to && !stop.getAsBoolean(); number++) {
            codes.settings().read(number, setting);
            long code = codes.code(setting);
            feeds.solve(setting, step -> result.peaks.look(feeds, step, setting, code));
            if (soundFeeds != null) {
                soundFeeds.solve(setting, step -> {});
            }
            if (states != null) {
                for (Step step : Step.values()) {
                    states.put(number, step, feeds.memory(step));
                }
            }
            for (int c = 0; c < soundNumber.length; c++) {
                boolean fed = false;
                for (Step step : Step.values()) {
                    if (counts(step, c)) {
                        result.at(step, c).add(code, feeds.at(step, c));
                        fed = true;
                    }
                }
                result.fedIn[c] += fed ? 1 : 0;
            }
            result.settings++;
        }
        return result;
    }

    /** What no setting shows. */
    ScanResult nothing() {
        return new ScanResult(codes, soundNumber.length, feeds.scan().wires());
    }

    private boolean counts(Step step, int consumer) {
        Feed feed = feeds.at(step, consumer);
        if (soundFeeds == null) {
            return !feed.isDead();
        }
        int same = soundNumber[consumer];
        return isWorse(feed, same < 0 ? null : soundFeeds.at(step, same));
    }

    /** Whether a load is fed by more than a trickle, and does more than in the sound plan. */
    static boolean isWorse(Feed feed, @Nullable Feed sound) {
        return feed.strength().compareTo(FeedStrength.LEAKS) < 0 && (sound == null || feed.compareEffect(sound) < 0);
    }
}
