package loomwright.backfeed;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * The settings in which one load is fed in one step though it should not be: those of which no part of the changes alone
 * does as much, and the one that feeds it most strongly.
 */
final class LeastChanges {
    /** More than that many ways to bring about the same thing say nothing new. */
    private static final int MOST = 64;

    private final SettingCodes codes;
    private final List<Seen> least = new ArrayList<>();
    private @Nullable Seen strongest;
    private boolean full;

    /** One such setting and how the load is fed in it. */
    record Seen(long code, int changes, Feed feed) {}

    LeastChanges(SettingCodes codes) {
        this.codes = codes;
    }

    void add(long code, Feed feed) {
        Seen seen = new Seen(code, codes.changes(code), feed);
        strengthen(seen);
        for (Seen one : least) {
            if (one.feed.compareEffect(feed) <= 0 && codes.within(one.code, code)) {
                return;
            }
        }
        least.removeIf(one -> feed.compareEffect(one.feed) <= 0 && codes.within(code, one.code));
        least.add(seen);
        if (least.size() > MOST) {
            full = true;
            least.remove(least.stream().max(fewestChanges()).orElseThrow());
        }
    }

    private void strengthen(Seen seen) {
        if (strongest == null || strongestFirst().compare(seen, strongest) < 0) {
            strongest = seen;
        }
    }

    void addAll(LeastChanges other) {
        other.least.forEach(one -> add(one.code, one.feed));
        other.strongest().ifPresent(one -> add(one.code, one.feed));
        full |= other.full;
    }

    /** Fewest changes first. */
    List<Seen> list() {
        return least.stream().sorted(fewestChanges()).toList();
    }

    /** The one that feeds the load most strongly; of those alike the one of fewest changes. */
    Optional<Seen> strongest() {
        return Optional.ofNullable(strongest);
    }

    /** Whether some had to be left out. */
    boolean full() {
        return full;
    }

    static Comparator<Seen> fewestChanges() {
        return Comparator.comparingInt(Seen::changes)
                .thenComparing((a, b) -> a.feed.compareEffect(b.feed))
                .thenComparingLong(Seen::code);
    }

    static Comparator<Seen> strongestFirst() {
        return Comparator.comparing(Seen::feed).thenComparingInt(Seen::changes).thenComparingLong(Seen::code);
    }
}
