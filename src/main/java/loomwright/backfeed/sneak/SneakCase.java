package loomwright.backfeed.sneak;

import loomwright.backfeed.BackfeedReport.FeedPath;
import loomwright.backfeed.BackfeedReport.Occurrence;
import loomwright.backfeed.FeedPaths;
import loomwright.circuit.Consumer;
import loomwright.circuit.Relay;
import loomwright.circuit.Solenoid;
import loomwright.operation.FeedStrength;
import loomwright.operation.SolvedStep;

/**
 * One load fed unasked in one step of one setting, solved in full.
 *
 * @param changes how many open parts do not stand as drawn
 * @param solved the step
 * @param paths ways of its current, the strongest first
 */
record SneakCase(Consumer load, long code, int changes, SolvedStep solved, FeedPaths.Found paths) {
    private static final int MOST_PATHS = 6;

    static SneakCase of(Consumer load, long code, int changes, SolvedStep solved) {
        return new SneakCase(load, code, changes, solved, FeedPaths.find(solved, solved.findBranch(load), MOST_PATHS));
    }

    /** How a load is fed, meant or not. */
    static Feed feedOf(SolvedStep solved, Consumer load) {
        boolean hasArmature = load instanceof Relay || load instanceof Solenoid;
        return new Feed(solved.activity(load), hasArmature && solved.isActive(load));
    }

    Feed feed() {
        return feedOf(solved, load);
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

    /** Load and path: what two cases have in common that are one sneak. */
    String group() {
        StringBuilder key = new StringBuilder(load.id());
        strongest()
                .steps()
                .forEach(s -> key.append('|').append(s.id()).append('>').append(s.to()));
        return key.toString();
    }

    Occurrence occurrence(Settings settings) {
        FeedStrength.Limits limits = FeedStrength.limits(load, solved.plan().system());
        return new Occurrence(
                solved.step(),
                solved.step().description(),
                settings.positions(code, true),
                feed().activity(),
                feed().pulledIn(),
                solved.effectiveV(load),
                limits.operateV(),
                limits.releaseV(),
                Math.abs(solved.currentA(load)),
                paths.paths(),
                paths.complete());
    }
}
