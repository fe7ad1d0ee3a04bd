package loomwright.backfeed;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import loomwright.backfeed.BackfeedReport.FeedPath;
import loomwright.backfeed.BackfeedReport.Occurrence;
import loomwright.backfeed.BackfeedReport.PathStep;
import loomwright.backfeed.BackfeedReport.UnintendedFeed;
import loomwright.circuit.Battery;
import loomwright.circuit.Consumer;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import loomwright.circuit.RandomVehicle;
import loomwright.message.Argument;
import loomwright.operation.Branch;
import loomwright.operation.Step;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.ShrinkingMode;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

/** Feature 15: a path is the load's own: once round, through the load once, and no battery on it twice. */
class B15_PathsAreTheLoadsOwnTest {
    @Property(seed = "15", tries = 8, shrinking = ShrinkingMode.OFF)
    void eachPathGoesRoundOnceAndTogetherTheyAreTheLoadsCurrent(
            @ForAll @IntRange(max = 1_000_000) int seed, @ForAll @IntRange(min = 10, max = 30) int parts) {
        RandomVehicle.Shape shape =
                RandomVehicle.Shape.of(parts).withSwitches(3).withCrossTies(4);
        Plan plan = RandomVehicle.of(seed, shape);
        for (UnintendedFeed feed : Searched.of(plan).report().unintendedFeeds()) {
            Consumer load = (Consumer) plan.findPart(feed.load()).orElseThrow();
            for (Occurrence occurrence : feed.occurrences()) {
                String where = "seed " + seed + ", " + shape + ", " + feed.load() + " " + occurrence.step();
                double sumA = 0;
                for (FeedPath path : occurrence.paths()) {
                    sumA += path.currentA();
                    goesRoundOnce(plan, load, path, where);
                }
                if (occurrence.pathsComplete()) {
                    assertThat(sumA)
                            .as(where)
                            .isCloseTo(
                                    occurrence.level().currentA(),
                                    within(0.011 * occurrence.level().currentA()));
                }
            }
        }
    }

    private static void goesRoundOnce(Plan plan, Consumer load, FeedPath path, String where) {
        List<PathStep> steps = path.steps();
        assertThat(steps)
                .as("%s: through the load once", where)
                .filteredOn(s -> s.id().equals(load.id()) && isAcross(load, s))
                .hasSize(1);
        assertThat(steps)
                .as("%s: wires once", where)
                .filteredOn(s -> s.owner() == Branch.Owner.WIRE)
                .extracting(PathStep::id)
                .doesNotHaveDuplicates();
        assertThat(steps)
                .as("%s: no battery twice", where)
                .filteredOn(s -> plan.findPart(s.id()).orElse(load) instanceof Battery)
                .extracting(PathStep::id)
                .doesNotHaveDuplicates();
        assertThat(steps)
                .as("%s: no terminal left twice", where)
                .extracting(PathStep::from)
                .doesNotHaveDuplicates();
    }

    private static boolean isAcross(Consumer load, PathStep step) {
        List<String> ends = List.of(
                load.terminal(load.feedTerminal()).toString(),
                load.terminal(load.returnTerminal()).toString());
        return ends.contains(step.from()) && ends.contains(step.to());
    }

    /** A fan with magnets on the feed of the coil generates for a moment after the key is turned off; a path from it says so. */
    @Test
    void aMotorThatFeedsAPathIsMarkedAsRunningDown() {
        Plan plan = Plans.of(
                "{'kind':'earth','id':'M'},{'kind':'battery','id':'B'},"
                        + "{'kind':'switch','id':'key','terminals':['in','out'],'positions':[{'name':'off','joins':[]},"
                        + "{'name':'on','joins':[['in','out']]}],'positionByCondition':"
                        + "{'off':'off','accessory':'off','run':'on','crank':'on','running':'on'}},"
                        + "{'kind':'motor','id':'fan','resistanceOhm':1.2,'meantLive':['run','crank','running'],"
                        + "'excitation':'permanent-magnet'},"
                        + "{'kind':'coil','id':'coil','primaryResistanceOhm':3,'meantLive':['run','crank','running']}",
                String.join(
                        ",",
                        wire("W1", "B.plus", "key.in"),
                        wire("W2", "B.minus", "M.31"),
                        wire("W3", "key.out", "fan.33"),
                        wire("W4", "fan.32", "M.31"),
                        wire("W5", "key.out", "coil.15"),
                        wire("W6", "coil.1", "M.31")));
        List<Occurrence> occurrences = Searched.of(plan).report().unintendedFeeds().stream()
                .flatMap(feed -> feed.occurrences().stream())
                .filter(each -> each.step() == Step.OFF_ENGINE_TURNING)
                .toList();
        assertThat(occurrences).isNotEmpty();
        for (Occurrence each : occurrences) {
            for (FeedPath path : each.paths()) {
                List<Argument> steps =
                        ((Argument.Listing) Verdicts.path(plan, path).value()).items();
                assertThat(path.steps().get(0).id()).isEqualTo("fan");
                assertThat(steps.get(0))
                        .extracting(said -> ((Argument.Nested) said).message().code())
                        .isEqualTo(BackfeedText.PATH_STEP_RUNNING_DOWN);
            }
        }
    }

    private static String wire(String id, String from, String to) {
        return "{'id':'" + id + "','from':'" + from + "','to':'" + to + "','resistanceOhm':0.001}";
    }
}
