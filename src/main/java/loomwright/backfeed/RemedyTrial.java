package loomwright.backfeed;

import java.util.Comparator;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import loomwright.answer.Progress;
import loomwright.answer.Severity;
import loomwright.backfeed.BackfeedReport.Cost;
import loomwright.backfeed.BackfeedReport.Remedy;
import loomwright.backfeed.Situations.Situation;
import loomwright.backfeed.Survey.Moment;
import loomwright.circuit.Consumer;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.operation.FeedStrength;
import loomwright.operation.PlanSettings;
import loomwright.operation.PlanSolver;
import loomwright.operation.SolvedStep;
import loomwright.operation.Step;

/**
 * Tries a change on a copy of the plan, in every step and situation: is the load dead where it should be but for a trickle, is
 * nothing else fed more than a trickle that was not before, does everything still work that did, at what loss in volts, is what gets too little
 * no worse off, and what works again?
 */
final class RemedyTrial {
    /** A loss below this no meter in a workshop shows. */
    private static final double COST_V = 0.01;
    /** What a load that gets too little may lose, as a share of the nominal voltage (common practice, no source). */
    private static final double STARVED_SHARE = 0.05;

    private final Survey before;
    private final Consumer load;
    private final PlanSolver solver;
    private final int maxCombinations;

    RemedyTrial(Survey before, Consumer load, PlanSolver solver, int maxCombinations) {
        this.before = before;
        this.load = load;
        this.solver = solver;
        this.maxCombinations = maxCombinations;
    }

    /** What comes of a change, as far as it was tried. */
    private static final class Effects {
        /** By load and step, the largest loss. */
        final Map<String, Cost> costs = new LinkedHashMap<>();

        final Set<String> restores = new LinkedHashSet<>();
        double remainingV;

        void lose(Consumer consumer, Step step, double beforeV, double afterV) {
            costs.merge(
                    consumer.id() + "@" + step,
                    new Cost(consumer.id(), step, beforeV, afterV),
                    (a, b) -> a.beforeV() - a.afterV() >= b.beforeV() - b.afterV() ? a : b);
        }

        void remain(double trickleV) {
            remainingV = Math.max(remainingV, trickleV);
        }

        Remedy remedy(Candidate candidate) {
            List<Cost> losses = costs.values().stream()
                    .filter(c -> c.beforeV() - c.afterV() > COST_V)
                    .sorted(Comparator.comparingDouble((Cost c) -> c.afterV() - c.beforeV()))
                    .toList();
            return new Remedy(
                    candidate.kind(),
                    candidate.change(),
                    candidate.at(),
                    losses.isEmpty()
                            ? 0
                            : losses.get(0).beforeV() - losses.get(0).afterV(),
                    losses.isEmpty()
                            ? null
                            : losses.get(0).load() + ", " + losses.get(0).step().description(),
                    losses,
                    remainingV,
                    List.copyOf(restores));
        }
    }

    /** The remedy if the change works. */
    Optional<Remedy> run(Candidate candidate, Progress progress) {
        Effects effects = new Effects();
        Iterator<Moment> was = before.moments().iterator();
        Plan changed = candidate.changed().get();
        List<List<Part>> open = Situations.open(changed);
        int combinations = Situations.count(open, maxCombinations);
        PlanSettings settings = solver.settings(changed);
        for (int i = 0; i < combinations; i++) {
            Situation situation = Situations.get(changed, open, i);
            Iterator<SolvedStep> steps = settings.steps(situation.plan());
            while (steps.hasNext()) {
                if (!holds(was.next(), new Moment(situation, steps.next()), effects)) {
                    return Optional.empty();
                }
            }
            progress.at(i + 1, combinations);
        }
        return Optional.of(effects.remedy(candidate));
    }

    /** Whether nothing speaks against the change in one moment; notes what comes of it. */
    private boolean holds(Moment was, Moment is, Effects effects) {
        if (!is.solved().solved() || (is.solved().oscillating() && !was.solved().oscillating())) {
            return false;
        }
        if (!was.solved().solved()) {
            return true;
        }
        boolean sound = before.consumers().stream().noneMatch(c -> worksUnasked(c, was));
        for (Consumer consumer : before.consumers()) {
            if (is.isUnintended(consumer)) {
                boolean trickle = Verdicts.severity(consumer, is.solved().activity(consumer), is.isPulledIn(consumer))
                        == Severity.NOTE;
                if (!trickle && (consumer.id().equals(load.id()) || isStronger(consumer, is, was))) {
                    return false;
                } else if (consumer.id().equals(load.id())) {
                    effects.remain(is.solved().effectiveV(load));
                }
            } else if (was.isMeant(consumer)
                    && !was.solved().step().passing()
                    && !keepsItsFeed(consumer, was, is, sound, effects)) {
                return false;
            }
        }
        return true;
    }

    private static boolean worksUnasked(Consumer consumer, Moment moment) {
        return moment.isUnintended(consumer) && moment.solved().activity(consumer) == FeedStrength.OPERATES;
    }

    /**
     * Whether a load that is meant to work does if it did, and gets no less if it did not.
     *
     * @param sound whether nothing worked unasked, so that what the load had was its own
     */
    private static boolean keepsItsFeed(Consumer consumer, Moment was, Moment is, boolean sound, Effects effects) {
        double beforeV = Math.abs(was.solved().acrossV(consumer));
        double afterV = Math.abs(is.solved().acrossV(consumer));
        boolean works = is.solved().activity(consumer) == FeedStrength.OPERATES;
        if (was.solved().activity(consumer) == FeedStrength.OPERATES) {
            if (sound) {
                effects.lose(consumer, is.solved().step(), beforeV, afterV);
            }
            return works;
        } else if (works) {
            effects.restores.add(consumer.id());
        }
        double nominalV = is.solved().plan().system().nominalVoltageV();
        return beforeV - afterV <= STARVED_SHARE * nominalV;
    }

    private static boolean isStronger(Consumer consumer, Moment one, Moment other) {
        return one.solved().activity(consumer).compareTo(other.solved().activity(consumer)) < 0;
    }
}
