package loomwright.operation;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import loomwright.circuit.Consumer;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.Switch;

/**
 * Goes through the settings of a plan's open switches and contacts and tells which loads are fed unasked, far quicker than
 * {@link PlanSolver}, and with the same answers: where a figure is too close to a limit, where relays find no rest, or
 * where the numbers are not to be trusted, it says so and leaves that setting to {@code PlanSolver}.
 *
 * <p>Cost on a harness of 60 nodes: tens of microseconds for the seven steps of one setting. Not thread safe.
 */
public final class Sweep {
    private static final int MOST_THRESHOLDS = 62;

    private final List<Consumer> consumers;
    private final List<SweptStep> steps = new ArrayList<>();
    private final List<List<Meant>> meant = new ArrayList<>();
    private final Feed[][] feeds;

    /** How a load is fed that is not meant to be live. */
    public record Feed(Activity activity, boolean pulledIn) {
        private static final Feed[] ALL = new Feed[2 * Activity.values().length];

        static {
            for (Activity activity : Activity.values()) {
                ALL[2 * activity.ordinal()] = new Feed(activity, true);
                ALL[2 * activity.ordinal() + 1] = new Feed(activity, false);
            }
        }

        /** 0 the strongest; what is pulled in before what is not. */
        public int rank() {
            return 2 * activity.ordinal() + (pulledIn ? 0 : 1);
        }

        /** The feed of a rank. */
        public static Feed of(int rank) {
            return ALL[rank];
        }
    }

    /** When a consumer is meant to be live: in no setting, or in those that agree with the lists. */
    private record Meant(boolean ever, int[] part, boolean[][] agrees) {
        boolean in(int[] setting) {
            boolean all = ever;
            for (int k = 0; all && k < part.length; k++) {
                all = agrees[k][setting[part[k]]];
            }
            return all;
        }
    }

    private Sweep(List<Consumer> consumers) {
        this.consumers = consumers;
        this.feeds = new Feed[Step.values().length][consumers.size()];
    }

    /**
     * Prepares a plan.
     *
     * @param open for each part that is open its settings
     * @return empty if it has more relays and the like than the quick way can keep
     * @throws loomwright.answer.RejectedInput if a conductor size is not known
     */
    public static Optional<Sweep> of(Plan plan, List<List<Part>> open) {
        Wiring wiring = Wiring.of(plan);
        List<Threshold> thresholds = plan.parts().stream()
                .flatMap(p -> Threshold.find(p, plan.system()).stream())
                .toList();
        if (thresholds.size() > MOST_THRESHOLDS) {
            return Optional.empty();
        }
        Sweep sweep = new Sweep(plan.listParts(Consumer.class));
        Map<String, Integer> index = new HashMap<>();
        for (int p = 0; p < open.size(); p++) {
            index.put(open.get(p).get(0).id(), p);
        }
        for (Step step : Step.values()) {
            sweep.steps.add(new SweptStep(wiring, step, open, thresholds, sweep.consumers));
            sweep.meant.add(sweep.consumers.stream()
                    .map(c -> meant(c, plan, step, open, index))
                    .toList());
        }
        return Optional.of(sweep);
    }

    private static Meant meant(
            Consumer consumer, Plan plan, Step step, List<List<Part>> open, Map<String, Integer> index) {
        boolean ever = consumer.meantLive().contains(step.condition());
        List<Integer> parts = new ArrayList<>();
        List<boolean[]> agrees = new ArrayList<>();
        for (Map.Entry<String, List<String>> when : consumer.meantLiveWhen().entrySet()) {
            Integer part = index.get(when.getKey());
            if (part == null) {
                Switch tied = (Switch) plan.findPart(when.getKey()).orElseThrow();
                ever &= when.getValue().contains(tied.in(step.condition()).name());
            } else {
                List<Part> settings = open.get(part);
                boolean[] agreeing = new boolean[settings.size()];
                for (int s = 0; s < agreeing.length; s++) {
                    Switch set = (Switch) settings.get(s);
                    agreeing[s] =
                            when.getValue().contains(set.in(step.condition()).name());
                }
                parts.add(part);
                agrees.add(agreeing);
            }
        }
        return new Meant(ever, parts.stream().mapToInt(Integer::intValue).toArray(), agrees.toArray(boolean[][]::new));
    }

    /**
     * Goes through the steps with the switches in one setting.
     *
     * @param setting of each open part
     * @return false if this setting is for {@link PlanSolver} to judge
     */
    public boolean solve(int[] setting) {
        long active = 0;
        for (int s = 0; s < steps.size(); s++) {
            SweptStep step = steps.get(s);
            active = step.settle(setting, active);
            if (active == SweptStep.UNCERTAIN) {
                return false;
            }
            for (int c = 0; c < consumers.size(); c++) {
                Activity activity = meant.get(s).get(c).in(setting) ? Activity.DEAD : step.activity(c, active);
                if (activity == null) {
                    return false;
                }
                feeds[s][c] = Feed.of(2 * activity.ordinal() + (step.isPulledIn(c, active) ? 0 : 1));
            }
        }
        return true;
    }

    /** How a consumer is fed in a step of the setting just solved; dead also if it is meant to be live. */
    public Feed feed(Step step, int consumer) {
        return feeds[step.ordinal()][consumer];
    }
}
