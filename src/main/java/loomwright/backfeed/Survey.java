package loomwright.backfeed;

import java.util.ArrayList;
import java.util.List;
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

        /** Whether a consumer is fed though it should not be. */
        public boolean isUnintended(Consumer consumer) {
            return !isMeant(consumer) && solved.activity(consumer) != FeedStrength.DEAD;
        }

        /** Whether a consumer has an armature that is pulled in. */
        public boolean isPulledIn(Consumer consumer) {
            boolean hasArmature = consumer instanceof Relay || consumer instanceof Solenoid;
            return hasArmature && solved.isActive(consumer);
        }
    }

    private final Plan plan;
    private final List<Consumer> consumers;
    private final PlanSettings settings;
    private final List<Situation> situations;
    private final List<Moment> moments;
    private final List<Moment> solvedMoments;
    private final boolean complete;

    private Survey(
            Plan plan, PlanSettings settings, List<Situation> situations, List<Moment> moments, boolean complete) {
        this.plan = plan;
        this.consumers = plan.listParts(Consumer.class);
        this.settings = settings;
        this.situations = situations;
        this.moments = moments;
        this.complete = complete;
        this.solvedMoments = moments.stream().filter(m -> m.solved().solved()).toList();
    }

    /**
     * Solves a plan in some combinations, the first of them in any case, the rest as long as there is time.
     *
     * @param situations at least one
     */
    static Survey of(Plan plan, PlanSolver solver, List<Situation> situations, SearchClock clock) {
        List<Moment> moments = new ArrayList<>();
        PlanSettings settings = solver.settings(plan);
        int done = 0;
        do {
            for (SolvedStep solved : settings.solve(situations.get(done).plan())) {
                moments.add(new Moment(situations.get(done), solved));
            }
            done++;
        } while (done < situations.size() && clock.at(done));
        return new Survey(plan, settings, situations.subList(0, done), moments, done == situations.size());
    }

    Plan plan() {
        return plan;
    }

    public List<Consumer> consumers() {
        return consumers;
    }

    /** The combinations that were solved. */
    List<Situation> situations() {
        return situations;
    }

    /** In a fixed order: situation by situation, and in each the steps as they happen. */
    public List<Moment> moments() {
        return moments;
    }

    /** The steps of one of the combinations. */
    List<Moment> momentsOf(int situation) {
        int steps = Step.values().length;
        return moments.subList(situation * steps, (situation + 1) * steps);
    }

    /** The moments that have a solution. */
    public List<Moment> solvedMoments() {
        return solvedMoments;
    }

    /** The plan, for more to be solved of its situations. */
    public PlanSettings settings() {
        return settings;
    }

    /** Whether there was time for all that were asked for. */
    boolean isComplete() {
        return complete;
    }

    public int combinations() {
        return situations.size();
    }
}
