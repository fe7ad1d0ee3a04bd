package loomwright.backfeed.sneak;

import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import loomwright.circuit.Consumer;
import loomwright.circuit.Plan;
import loomwright.network.NetworkLimits;
import loomwright.operation.FeedStrength;
import loomwright.operation.Intent;
import loomwright.operation.PlanSolver;
import loomwright.operation.SolvedStep;
import loomwright.operation.Step;
import loomwright.operation.Sweep;
import loomwright.operation.Sweep.Feed;
import org.jspecify.annotations.Nullable;

/**
 * How each load is fed unasked in one setting after the other: by the quick solution, and by the full one where that leaves
 * it open. For one thread at a time.
 */
final class UnaskedFeeds {
    private static final Feed NONE = new Feed(FeedStrength.DEAD, false);

    private final Settings settings;
    private final List<Consumer> consumers;
    private final @Nullable Sweep sweep;
    private final PlanSolver solver;
    private final int[] setting;
    /** By step and consumer. */
    private final Map<Step, Feed[]> feeds = new EnumMap<>(Step.class);

    private boolean inFull;

    /**
     * Prepares a plan.
     *
     * @param quick false to solve every setting in full
     */
    UnaskedFeeds(Settings settings, boolean quick, NetworkLimits limits) {
        this.settings = settings;
        this.consumers = settings.plan().listParts(Consumer.class);
        this.sweep = quick ? Sweep.of(settings.plan(), settings.open()).orElse(null) : null;
        this.solver = new PlanSolver(limits);
        this.setting = new int[settings.open().size()];
        for (Step step : Step.values()) {
            feeds.put(step, new Feed[consumers.size()]);
        }
    }

    /** Solves the setting of that number and returns its code. */
    long solve(int number) {
        settings.read(number, setting);
        long code = settings.code(setting);
        inFull = sweep == null || !sweep.solve(setting);
        if (inFull || sweep == null) {
            solveInFull(settings.planAt(code));
        } else {
            for (Step step : Step.values()) {
                Feed[] here = in(step);
                for (int c = 0; c < here.length; c++) {
                    here[c] = sweep.feed(step, c);
                }
            }
        }
        return code;
    }

    private void solveInFull(Plan plan) {
        for (SolvedStep solved : solver.solve(plan)) {
            Feed[] here = in(solved.step());
            Arrays.fill(here, NONE);
            for (int c = 0; c < here.length && solved.solved(); c++) {
                if (!Intent.meantLive(consumers.get(c), plan, solved.step())) {
                    here[c] = SneakCase.feedOf(solved, consumers.get(c));
                }
            }
        }
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
