package loomwright.backfeed.sneak;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * The settings in which one load is fed unasked in one step, but only those of which no part of the changes alone shows it
 * as strongly.
 */
final class LeastChanges {
    /** More than that many ways to bring about the same thing say nothing new. */
    private static final int MOST = 64;

    private final Settings settings;
    private final List<Seen> seen = new ArrayList<>();
    private boolean full;

    /** One such setting and how the load is fed in it. */
    record Seen(long code, int changes, Feed feed) {}

    LeastChanges(Settings settings) {
        this.settings = settings;
    }

    void add(long code, Feed feed) {
        for (Seen one : seen) {
            if (one.feed.compareTo(feed) <= 0 && settings.within(one.code, code)) {
                return;
            }
        }
        seen.removeIf(one -> feed.compareTo(one.feed) <= 0 && settings.within(code, one.code));
        seen.add(new Seen(code, settings.changes(code), feed));
        if (seen.size() > MOST) {
            full = true;
            seen.remove(seen.stream().max(fewestChanges()).orElseThrow());
        }
    }

    void addAll(LeastChanges other) {
        other.seen.forEach(one -> add(one.code, one.feed));
        full |= other.full;
    }

    /** Fewest changes first. */
    List<Seen> list() {
        return seen.stream().sorted(fewestChanges()).toList();
    }

    /** Whether some had to be left out. */
    boolean full() {
        return full;
    }

    static Comparator<Seen> fewestChanges() {
        return Comparator.comparingInt(Seen::changes).thenComparing(Seen::feed).thenComparingLong(Seen::code);
    }
}
