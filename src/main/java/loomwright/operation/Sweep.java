package loomwright.operation;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
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
    private final SweptSteps steps;
    private final Map<Step, List<Meant>> meant = new EnumMap<>(Step.class);
    private final Map<Step, Feed[]> feeds = new EnumMap<>(Step.class);

    /** How a load is fed that is not meant to be live; the strongest first, what is pulled in before what is not. */
    public record Feed(FeedStrength activity, boolean pulledIn) implements Comparable<Feed> {
        private static final Map<FeedStrength, Feed> PULLED_IN = new EnumMap<>(FeedStrength.class);
        private static final Map<FeedStrength, Feed> OTHER = new EnumMap<>(FeedStrength.class);

        static {
            for (FeedStrength activity : FeedStrength.values()) {
                PULLED_IN.put(activity, new Feed(activity, true));
                OTHER.put(activity, new Feed(activity, false));
            }
        }

        static Feed of(FeedStrength activity, boolean pulledIn) {
            return Objects.requireNonNull((pulledIn ? PULLED_IN : OTHER).get(activity));
        }

        @Override
        public int compareTo(Feed other) {
            int byActivity = activity.compareTo(other.activity);
            return byActivity != 0 ? byActivity : Boolean.compare(other.pulledIn, pulledIn);
        }
    }

    /** When a consumer is meant to be live: in the settings that agree with one of these; empty for never. */
    private record Meant(List<Agreement> anyOf) {
        boolean in(int[] setting) {
            for (Agreement one : anyOf) {
                if (one.with(setting)) {
                    return true;
                }
            }
            return false;
        }
    }

    /** Which settings of some parts agree, all of them together. */
    @SuppressWarnings("ArrayRecordComponent") // never compared
    private record Agreement(int[] part, boolean[][] agrees) {
        boolean with(int[] setting) {
            boolean all = true;
            for (int k = 0; all && k < part.length; k++) {
                all = agrees[k][setting[part[k]]];
            }
            return all;
        }
    }

    /**
     * Prepares a plan.
     *
     * @param open for each part that is open its settings
     * @return empty if it has more relays and the like than the quick way can keep
     * @throws loomwright.answer.RejectedInput if a conductor size is not known
     */
    public static Optional<Sweep> of(Plan plan, List<List<Part>> open) {
        List<Consumer> consumers = plan.listParts(Consumer.class);
        return SweptSteps.of(Wiring.of(plan), open, List.of(), consumers)
                .map(steps -> new Sweep(plan, open, consumers, steps));
    }

    private Sweep(Plan plan, List<List<Part>> open, List<Consumer> consumers, SweptSteps steps) {
        this.steps = steps;
        Map<String, Integer> index = new HashMap<>();
        for (int p = 0; p < open.size(); p++) {
            index.put(open.get(p).get(0).id(), p);
        }
        for (Step step : Step.values()) {
            feeds.put(step, new Feed[consumers.size()]);
            meant.put(
                    step,
                    consumers.stream()
                            .map(c -> meant(c, plan, step, open, index))
                            .toList());
        }
    }

    private static Meant meant(
            Consumer consumer, Plan plan, Step step, List<List<Part>> open, Map<String, Integer> index) {
        return new Meant(Intent.settings(consumer, plan, step).stream()
                .map(positions -> agreement(positions, step, open, index))
                .toList());
    }

    private static Agreement agreement(
            Map<String, List<String>> positions, Step step, List<List<Part>> open, Map<String, Integer> index) {
        List<Integer> parts = new ArrayList<>();
        List<boolean[]> agrees = new ArrayList<>();
        positions.forEach((id, accepted) -> {
            // Every free switch is open.
            int part = Objects.requireNonNull(index.get(id));
            List<Part> settings = open.get(part);
            boolean[] agreeing = new boolean[settings.size()];
            for (int s = 0; s < agreeing.length; s++) {
                Switch set = (Switch) settings.get(s);
                agreeing[s] = accepted.contains(set.in(step.condition()).name());
            }
            parts.add(part);
            agrees.add(agreeing);
        });
        return new Agreement(parts.stream().mapToInt(Integer::intValue).toArray(), agrees.toArray(boolean[][]::new));
    }

    /**
     * Goes through the steps with the switches in one setting.
     *
     * @param setting of each open part
     * @return false if this setting is for {@link PlanSolver} to judge
     */
    public boolean solve(int[] setting) {
        long active = 0;
        for (Step when : Step.values()) {
            SweptStep step = steps.get(when);
            List<Meant> meantHere = Objects.requireNonNull(meant.get(when));
            Feed[] fed = Objects.requireNonNull(feeds.get(when));
            active = step.settle(setting, active);
            if (active == SweptStep.UNCERTAIN) {
                return false;
            }
            for (int c = 0; c < fed.length; c++) {
                FeedStrength activity = meantHere.get(c).in(setting) ? FeedStrength.DEAD : step.activity(c, active);
                if (activity == null) {
                    return false;
                }
                fed[c] = Feed.of(activity, step.isPulledIn(c, active));
            }
        }
        return true;
    }

    /** How a consumer is fed in a step of the setting just solved; dead also if it is meant to be live. */
    public Feed feed(Step step, int consumer) {
        return Objects.requireNonNull(feeds.get(step))[consumer];
    }
}
