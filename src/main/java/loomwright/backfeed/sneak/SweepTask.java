package loomwright.backfeed.sneak;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.BooleanSupplier;
import loomwright.circuit.Consumer;
import loomwright.circuit.Plan;
import loomwright.network.NetworkLimits;
import loomwright.operation.Activity;
import loomwright.operation.Intent;
import loomwright.operation.PlanSolver;
import loomwright.operation.SolvedStep;
import loomwright.operation.Step;
import loomwright.operation.Sweep;
import loomwright.operation.Sweep.Feed;
import org.jspecify.annotations.Nullable;

/** Goes through settings one after the other. For one thread at a time. */
final class SweepTask {
    private final Settings settings;
    private final List<Consumer> consumers;
    private final @Nullable Sweep sweep;
    private final PlanSolver solver;
    private final int[] setting;

    /** What a stretch of settings showed. */
    static final class Shown {
        private final Map<Step, List<LeastChanges>> least = new EnumMap<>(Step.class);
        /** By load, the settings in which it is fed unasked in some step. */
        final int[] fedIn;
        /** Settings that the full solver judged. */
        int judged;

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
    }

    SweepTask(Plan plan, Settings settings, boolean quick, NetworkLimits limits) {
        this.settings = settings;
        this.consumers = plan.listParts(Consumer.class);
        this.sweep = quick ? Sweep.of(plan, settings.open()).orElse(null) : null;
        this.solver = new PlanSolver(limits);
        this.setting = new int[settings.open().size()];
    }

    /**
     * Goes through the settings from one number to before another.
     *
     * @param stop asked before each setting
     */
    Shown run(int from, int to, BooleanSupplier stop) {
        Shown shown = new Shown(settings, consumers.size());
        for (int number = from; number < to && !stop.getAsBoolean(); number++) {
            settings.read(number, setting);
            long code = settings.code(setting);
            if (sweep != null && sweep.solve(setting)) {
                for (int c = 0; c < consumers.size(); c++) {
                    boolean fed = false;
                    for (Step step : Step.values()) {
                        fed |= note(shown, code, step, c, sweep.feed(step, c));
                    }
                    shown.fedIn[c] += fed ? 1 : 0;
                }
            } else {
                judge(shown, code);
            }
        }
        return shown;
    }

    private static boolean note(Shown shown, long code, Step step, int consumer, Feed feed) {
        if (feed.activity() == Activity.DEAD) {
            return false;
        }
        shown.at(step, consumer).add(code, feed);
        return true;
    }

    private void judge(Shown shown, long code) {
        shown.judged++;
        Plan plan = settings.planAt(code);
        boolean[] fed = new boolean[consumers.size()];
        for (SolvedStep solved : solver.solve(plan)) {
            for (int c = 0; c < fed.length && solved.solved(); c++) {
                if (!Intent.meantLive(consumers.get(c), plan, solved.step())) {
                    fed[c] |= note(shown, code, solved.step(), c, SneakCase.feedOf(solved, consumers.get(c)));
                }
            }
        }
        for (int c = 0; c < fed.length; c++) {
            shown.fedIn[c] += fed[c] ? 1 : 0;
        }
    }
}
