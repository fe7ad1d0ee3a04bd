package loomwright.backfeed;

import java.util.List;
import loomwright.backfeed.BackfeedReport.FeedPath;
import loomwright.backfeed.BackfeedReport.LoadLevel;
import loomwright.backfeed.BackfeedReport.Occurrence;
import loomwright.circuit.Consumer;
import loomwright.operation.FeedStrength;
import loomwright.operation.Move;
import loomwright.operation.SolvedStep;
import loomwright.operation.SwitchSettings;

/**
 * One load fed though it should not be, in one step of one setting, solved as it is reported.
 *
 * @param setting of each open part
 * @param moves all that is done to get there, for {@link loomwright.operation.MovedPlan}
 * @param memory whether it comes of a relay that stays in after a switch has moved back, so that the setting alone does not show it
 * @param solved the step
 * @param paths ways of its current, the strongest first
 */
@SuppressWarnings("ArrayRecordComponent") // never compared
record FeedCase(
        Consumer load, int[] setting, List<Move> moves, boolean memory, SolvedStep solved, FeedPaths.Found paths) {

    static FeedCase of(
            Consumer load, int[] setting, List<Move> moves, boolean memory, SolvedStep solved, int mostPaths) {
        return new FeedCase(
                load, setting, moves, memory, solved, FeedPaths.find(solved, solved.findBranch(load), mostPaths));
    }

    Feed feed() {
        return Feed.of(solved, load);
    }

    /** How many switches and contacts do not stand as drawn. */
    int changes() {
        int changes = 0;
        for (int place : setting) {
            changes += place == 0 ? 0 : 1;
        }
        return changes;
    }

    FeedPath strongest() {
        return paths.paths().get(0);
    }

    /** Where the load stands in a path. */
    int loadAt(FeedPath path) {
        for (int i = 0; i < path.steps().size(); i++) {
            var step = path.steps().get(i);
            boolean own = step.id().equals(load.id());
            String feed = load.terminal(load.feedTerminal()).toString();
            String back = load.terminal(load.returnTerminal()).toString();
            if (own
                    && ((step.from().equals(feed) && step.to().equals(back))
                            || (step.from().equals(back) && step.to().equals(feed)))) {
                return i;
            }
        }
        throw new IllegalStateException(load.id() + " is not on its own path");
    }

    Occurrence occurrence(SwitchSettings settings) {
        FeedStrength.Limits limits = FeedStrength.limits(load, solved.plan().system());
        return new Occurrence(
                solved.step(),
                solved.step().description(),
                settings.positions(setting, false),
                settings.positions(setting, true),
                moves.stream().map(Move::toString).toList(),
                memory,
                new LoadLevel(
                        feed().strength(),
                        feed().pulledIn(),
                        solved.effectiveV(load),
                        limits.operateV(),
                        limits.releaseV(),
                        Math.abs(solved.currentA(load))),
                paths.paths(),
                paths.complete());
    }
}
