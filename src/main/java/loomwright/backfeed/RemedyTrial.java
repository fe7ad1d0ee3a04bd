package loomwright.backfeed;

import java.util.Comparator;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import loomwright.answer.Progress;
import loomwright.backfeed.BackfeedReport.Cost;
import loomwright.backfeed.BackfeedReport.Remedy;
import loomwright.backfeed.Situations.Situation;
import loomwright.backfeed.Survey.Moment;
import loomwright.circuit.Consumer;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.operation.Activity;
import loomwright.operation.PlanSettings;
import loomwright.operation.PlanSolver;
import loomwright.operation.SolvedStep;
import loomwright.operation.Step;

/**
 * Tries a change on a copy of the plan, in every step and situation: is the load dead where it should be, is nothing else
 * fed that was not before, does everything still work that did, and how many volts does it lose?
 */
final class RemedyTrial {
    /** A loss below this no meter in a workshop shows. */
    private static final double COST_V = 0.01;

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

    /** The remedy if the change works. */
    Optional<Remedy> run(Candidate candidate, Progress progress) {
        Map<String, Cost> worst = new LinkedHashMap<>();
        Iterator<Moment> was = before.moments().iterator();
        Plan changed = candidate.changed().get();
        List<List<Part>> open = Situations.open(changed);
        int combinations = Situations.count(open, maxCombinations);
        PlanSettings settings = solver.settings(changed);
        for (int i = 0; i < combinations; i++) {
            Situation situation = Situations.get(changed, open, i);
            Iterator<SolvedStep> steps = settings.steps(situation.plan());
            while (steps.hasNext()) {
                if (!holds(was.next(), new Moment(situation, steps.next()), worst)) {
                    return Optional.empty();
                }
            }
            progress.at(i + 1, combinations);
        }
        List<Cost> costs = worst.values().stream()
                .filter(c -> c.beforeV() - c.afterV() > COST_V)
                .sorted(Comparator.comparingDouble((Cost c) -> c.afterV() - c.beforeV()))
                .toList();
        return Optional.of(new Remedy(
                candidate.kind(),
                candidate.change(),
                candidate.at(),
                costs.isEmpty() ? 0 : costs.get(0).beforeV() - costs.get(0).afterV(),
                costs.isEmpty()
                        ? null
                        : costs.get(0).load() + ", " + costs.get(0).step().words(),
                costs));
    }

    /** Whether nothing speaks against the change in one moment; notes the volts it costs. */
    private boolean holds(Moment was, Moment is, Map<String, Cost> costs) {
        if (!is.solved().solved() || (is.solved().oscillating() && !was.solved().oscillating())) {
            return false;
        }
        if (!was.solved().solved()) {
            return true;
        }
        for (Consumer consumer : before.consumers()) {
            if (is.isUnintended(consumer)) {
                if (consumer.id().equals(load.id()) || isStronger(consumer, was, is)) {
                    return false;
                }
            } else if (worked(consumer, was)) {
                if (is.solved().activity(consumer) != Activity.OPERATES) {
                    return false;
                }
                note(consumer, was, is, costs);
            }
        }
        return true;
    }

    private static boolean isStronger(Consumer consumer, Moment was, Moment is) {
        return is.solved().activity(consumer).compareTo(was.solved().activity(consumer)) < 0;
    }

    private static boolean worked(Consumer consumer, Moment was) {
        return !was.solved().step().passing()
                && was.isMeant(consumer)
                && was.solved().activity(consumer) == Activity.OPERATES;
    }

    private static void note(Consumer consumer, Moment was, Moment is, Map<String, Cost> costs) {
        double beforeV = Math.abs(was.solved().acrossV(consumer));
        double afterV = Math.abs(is.solved().acrossV(consumer));
        Step step = is.solved().step();
        costs.merge(
                consumer.id() + "@" + step,
                new Cost(consumer.id(), step, beforeV, afterV),
                (a, b) -> a.beforeV() - a.afterV() >= b.beforeV() - b.afterV() ? a : b);
    }
}
