package loomwright.backfeed;

import java.util.ArrayList;
import java.util.List;
import loomwright.answer.Progress;
import loomwright.backfeed.Situations.Situation;
import loomwright.circuit.Consumer;
import loomwright.circuit.Plan;
import loomwright.circuit.Relay;
import loomwright.circuit.Solenoid;
import loomwright.operation.FeedStrength;
import loomwright.operation.Intent;
import loomwright.operation.PlanSettings;
import loomwright.operation.PlanSolver;
import loomwright.operation.SolvedStep;
import loomwright.operation.Step;

/**
 * A plan solved in every step of every situation. Cost: combinations times steps.
 */
public final class Survey {

    /** One step of one situation. */
    public record Moment(Situation situation, SolvedStep solved) {
        public boolean isMeant(Consumer consumer) {
            return Intent.meantLive(consumer, situation.plan(), solved.step());
        }

        /** Whether a consumer is fed though it is not meant to be. */
        public boolean isUnintended(Consumer consumer) {
            return !isMeant(consumer) && solved.activity(consumer) != FeedStrength.DEAD;
        }

        /** Whether a consumer has an armature that is pulled in. */
        public boolean isPulledIn(Consumer consumer) {
            boolean hasArmature = consumer instanceof Relay || consumer instanceof Solenoid;
            return hasArmature && solved.isActive(consumer);
        }
    }

    private final List<Consumer> consumers;
    private final PlanSettings settings;
    private final List<Moment> moments;
    private final List<Moment> solvedMoments;

    private Survey(List<Consumer> consumers, PlanSettings settings, List<Moment> moments) {
        this.consumers = consumers;
        this.settings = settings;
        this.moments = moments;
        this.solvedMoments = moments.stream().filter(m -> m.solved().solved()).toList();
    }

    /**
     * Solves a plan.
     *
     * @throws loomwright.answer.RejectedInput OVER_LIMIT if there are more than {@code maxCombinations}
     */
    public static Survey of(Plan plan, PlanSolver solver, int maxCombinations, Progress progress) {
        List<Moment> moments = new ArrayList<>();
        List<Situation> situations = Situations.list(plan, maxCombinations);
        PlanSettings settings = solver.settings(plan);
        for (int i = 0; i < situations.size(); i++) {
            for (SolvedStep solved : settings.solve(situations.get(i).plan())) {
                moments.add(new Moment(situations.get(i), solved));
            }
            progress.at(i + 1, situations.size());
        }
        return new Survey(plan.listParts(Consumer.class), settings, moments);
    }

    public List<Consumer> consumers() {
        return consumers;
    }

    /** In a fixed order: situation by situation, and in each the steps as they happen. */
    public List<Moment> moments() {
        return moments;
    }

    /** The moments that have a solution. */
    public List<Moment> solvedMoments() {
        return solvedMoments;
    }

    /** The plan, for more to be solved of its situations. */
    public PlanSettings settings() {
        return settings;
    }

    public long combinations() {
        return moments.size() / Step.values().length;
    }
}
