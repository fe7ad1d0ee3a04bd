package loomwright.backfeed;

import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import loomwright.backfeed.BackfeedReport.PathStep;
import loomwright.backfeed.Survey.Moment;
import loomwright.circuit.Consumer;
import loomwright.circuit.Electromagnet;
import loomwright.circuit.Plan;
import loomwright.operation.Branch;
import loomwright.operation.FeedStrength;
import loomwright.operation.SolvedStep;

/**
 * The ways by which loads are fed when they should be. A load that is live at another time, but fed through its own closed
 * switch by just that way, is no backfeed: the plan may have left that time out, and a question is asked.
 */
final class NormalWays {
    private final Survey survey;
    private final Map<String, Set<String>> byLoad = new HashMap<>();

    NormalWays(Survey survey) {
        this.survey = survey;
    }

    /** Whether a case is of the load's own way, forward, and no relay on it is in that should be out. */
    boolean isOwnWay(FeedCase one) {
        if (one.memory() || one.paths().paths().isEmpty()) {
            return false;
        }
        Set<String> normal = byLoad.computeIfAbsent(one.load().id(), id -> waysOf(one.load()));
        return one.paths().complete()
                && one.paths().paths().stream()
                        .flatMap(path -> path.steps().stream())
                        .allMatch(step -> !step.againstFeed()
                                && normal.contains(key(step))
                                && isInAsMeant(step, one.load(), one.solved()));
    }

    private static boolean isInAsMeant(PathStep step, Consumer load, SolvedStep solved) {
        Plan plan = solved.plan();
        boolean other = step.owner() == Branch.Owner.PART && !step.id().equals(load.id());
        return !other
                || plan.findPart(step.id())
                        .filter(part -> part instanceof Electromagnet)
                        .map(Consumer.class::cast)
                        .map(relay -> !solved.isActive(relay) || solved.isMeant(relay))
                        .orElse(true);
    }

    private Set<String> waysOf(Consumer load) {
        Set<String> ways = new HashSet<>();
        for (Moment moment : survey.solvedMoments()) {
            if (moment.isMeant(load) && moment.solved().activity(load) == FeedStrength.OPERATES) {
                FeedPaths.Found found =
                        FeedPaths.find(moment.solved(), moment.solved().findBranch(load), 1);
                // The strongest alone: another switch that is on may add a way of its own.
                found.paths().stream()
                        .limit(1)
                        .flatMap(path -> path.steps().stream())
                        .forEach(step -> ways.add(key(step)));
            }
        }
        return ways;
    }

    private static String key(PathStep step) {
        return step.owner() + " " + step.id() + " " + step.from() + " " + step.to();
    }
}
