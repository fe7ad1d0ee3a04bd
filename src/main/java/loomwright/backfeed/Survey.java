package loomwright.backfeed;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import loomwright.backfeed.Situations.Situation;
import loomwright.circuit.Consumer;
import loomwright.circuit.Electromagnet;
import loomwright.circuit.Plan;
import loomwright.operation.FeedStrength;
import loomwright.operation.PlanSettings;
import loomwright.operation.PlanSolver;
import loomwright.operation.SettingScan;
import loomwright.operation.SolvedStep;
import loomwright.operation.Step;
import loomwright.operation.SwitchSettings;

/**
 * A plan solved in every step of every situation. Cost: combinations times steps.
 */
public final class Survey {

    /** One step of one situation. */
    public record Moment(Situation situation, SolvedStep solved) {
        public boolean isMeant(Consumer consumer) {
            return solved.isMeant(consumer);
        }

        /** Whether a consumer is fed though it should not be. */
        public boolean isUnintended(Consumer consumer) {
            return !isMeant(consumer) && solved.activity(consumer) != FeedStrength.DEAD;
        }

        /** Whether a consumer has an armature that is pulled in. */
        public boolean isPulledIn(Consumer consumer) {
            boolean hasArmature = consumer instanceof Electromagnet;
            return hasArmature && solved.isActive(consumer);
        }
    }

    private final Plan plan;
    private final List<Consumer> consumers;
    private final SettingScan scan;
    private final List<Situation> situations;
    private final List<Moment> moments;
    private final List<Moment> solvedMoments;
    private final boolean complete;

    private Survey(Plan plan, SettingScan scan, List<Situation> situations, List<Moment> moments, boolean complete) {
        this.plan = plan;
        this.consumers = plan.listParts(Consumer.class);
        this.scan = scan;
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
        return of(plan, new SettingScan(SwitchSettings.of(plan), solver), Map.of(), situations, clock);
    }

    /** Other combinations of the same plan; those that were solved already are not solved again. */
    Survey with(List<Situation> others, SearchClock clock) {
        Map<List<Integer>, List<Moment>> known = new HashMap<>();
        for (int i = 0; i < situations.size(); i++) {
            known.put(situations.get(i).setting(), momentsOf(i));
        }
        return of(plan, scan, known, others, clock);
    }

    private static Survey of(
            Plan plan,
            SettingScan scan,
            Map<List<Integer>, List<Moment>> known,
            List<Situation> situations,
            SearchClock clock) {
        List<Moment> moments = new ArrayList<>();
        int done = 0;
        do {
            Situation situation = situations.get(done);
            List<Moment> solved = known.get(situation.setting());
            moments.addAll(
                    solved != null
                            ? solved
                            : scan.report(ints(situation.setting())).stream()
                                    .map(step -> new Moment(situation, step))
                                    .toList());
            done++;
        } while (done < situations.size() && clock.at(done));
        return new Survey(plan, scan, situations.subList(0, done), moments, done == situations.size());
    }

    private static int[] ints(List<Integer> setting) {
        return setting.stream().mapToInt(Integer::intValue).toArray();
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
        return scan.reported();
    }

    /** Whether there was time for all that were asked for. */
    boolean isComplete() {
        return complete;
    }

    public int combinations() {
        return situations.size();
    }
}
