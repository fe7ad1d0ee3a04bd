package loomwright.backfeed.sneak;

import java.util.List;
import java.util.function.BooleanSupplier;
import loomwright.circuit.Consumer;
import loomwright.network.NetworkLimits;
import loomwright.operation.FeedStrength;
import loomwright.operation.Step;
import org.jspecify.annotations.Nullable;

/**
 * Goes through settings one after the other and keeps what they show: every load fed unasked, or, if there is a sound plan
 * to compare with, every load that is fed more strongly than there and by more than a trickle. For one thread at a time.
 */
final class SweepTask {
    private final Settings settings;
    private final UnaskedFeeds feeds;
    private final @Nullable UnaskedFeeds soundFeeds;
    /** By load its number in the sound plan, or −1. */
    private final int[] soundNumber;

    /**
     * Prepares a plan.
     *
     * @param sound the settings of the plan to compare with, as many
     * @param quick false to solve every setting in full
     */
    SweepTask(Settings settings, @Nullable Settings sound, boolean quick, NetworkLimits limits) {
        this.settings = settings;
        this.feeds = new UnaskedFeeds(settings, limits);
        this.soundFeeds = sound == null ? null : new UnaskedFeeds(sound, limits);
        List<String> soundIds = sound == null
                ? List.of()
                : sound.plan().listParts(Consumer.class).stream()
                        .map(Consumer::id)
                        .toList();
        this.soundNumber = settings.plan().listParts(Consumer.class).stream()
                .mapToInt(c -> soundIds.indexOf(c.id()))
                .toArray();
    }

    /**
     * Goes through the settings from one number to before another.
     *
     * @param stop asked before each setting
     */
    Shown run(int from, int to, BooleanSupplier stop) {
        Shown shown = new Shown(settings, soundNumber.length);
        for (int number = from; number < to && !stop.getAsBoolean(); number++) {
            long code = feeds.solve(number);
            shown.judged += feeds.inFull() ? 1 : 0;
            if (soundFeeds != null) {
                soundFeeds.solve(number);
            }
            for (int c = 0; c < soundNumber.length; c++) {
                boolean fed = false;
                for (Step step : Step.values()) {
                    if (counts(step, c)) {
                        shown.at(step, c).add(code, feeds.at(step, c));
                        fed = true;
                    }
                }
                shown.fedIn[c] += fed ? 1 : 0;
            }
        }
        return shown;
    }

    private boolean counts(Step step, int consumer) {
        Feed feed = feeds.at(step, consumer);
        if (soundFeeds == null) {
            return feed.activity() != FeedStrength.DEAD;
        }
        int same = soundNumber[consumer];
        return isWorse(feed, same < 0 ? null : soundFeeds.at(step, same));
    }

    /** Whether a load is fed by more than a trickle, and more strongly than in the sound plan. */
    static boolean isWorse(Feed feed, @Nullable Feed sound) {
        return feed.activity().compareTo(FeedStrength.LEAKS) < 0 && (sound == null || feed.compareTo(sound) < 0);
    }
}
