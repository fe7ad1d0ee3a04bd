package loomwright.backfeed.sneak;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import loomwright.backfeed.sneak.LeastChanges.Seen;
import loomwright.operation.Step;

/** What a stretch of settings showed. */
final class Shown {
    private final Map<Step, List<LeastChanges>> least = new EnumMap<>(Step.class);
    /** By load, the settings in which it is fed unasked in some step. */
    final int[] fedIn;
    /** Settings that the full solver judged. */
    int judged;

    /** A setting in which a load is fed unasked in a step. */
    record Moment(Step step, Seen seen) {}

    Shown(Settings settings, int consumers) {
        fedIn = new int[consumers];
        for (Step step : Step.values()) {
            List<LeastChanges> here = new ArrayList<>();
            for (int c = 0; c < consumers; c++) {
                here.add(new LeastChanges(settings));
            }
            least.put(step, here);
        }
    }

    LeastChanges at(Step step, int consumer) {
        return Objects.requireNonNull(least.get(step)).get(consumer);
    }

    void addAll(Shown other) {
        judged += other.judged;
        for (int c = 0; c < fedIn.length; c++) {
            fedIn[c] += other.fedIn[c];
            for (Step step : Step.values()) {
                at(step, c).addAll(other.at(step, c));
            }
        }
    }

    /** All moments of a load, step by step, those of fewest changes first. */
    List<Moment> all(int consumer) {
        List<Moment> all = new ArrayList<>();
        for (Step step : Step.values()) {
            at(step, consumer).list().forEach(seen -> all.add(new Moment(step, seen)));
        }
        return all;
    }

    /** Of the moments in which a load is fed most strongly the one of fewest changes. */
    Optional<Moment> worst(int consumer) {
        return all(consumer).stream()
                .min(Comparator.comparing((Moment m) -> m.seen().feed())
                        .thenComparing(Moment::seen, LeastChanges.fewestChanges()));
    }

    /** Whether none had to be left out. */
    boolean complete(int consumer) {
        return least.values().stream().noneMatch(byLoad -> byLoad.get(consumer).full());
    }
}
