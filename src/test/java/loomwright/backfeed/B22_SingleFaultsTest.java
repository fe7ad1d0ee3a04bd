package loomwright.backfeed;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import loomwright.answer.Progress;
import loomwright.backfeed.Situations.Situation;
import loomwright.circuit.Consumer;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import loomwright.circuit.fault.FaultWording;
import loomwright.circuit.fault.SingleFault;
import loomwright.circuit.fault.SingleFault.Kind;
import loomwright.circuit.fault.SingleFaults;
import loomwright.network.NetworkLimits;
import loomwright.operation.FeedStrength;
import loomwright.operation.Intent;
import loomwright.operation.PlanSolver;
import loomwright.operation.SolvedStep;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

/** With single faults the search tells of each what it alone feeds unasked, and with the fewest changes that show it. */
class B22_SingleFaultsTest {
    private static final BackfeedSearch SEARCH =
            new BackfeedSearch(BackfeedLimits.defaults(), NetworkLimits.defaults());
    private final PlanSolver solver = new PlanSolver(NetworkLimits.defaults());

    /** Two lamps that share an earth, each with its switch. */
    private static final Plan COMMON_EARTH = Plans.of(
            "{'kind':'battery','id':'battery'},{'kind':'earth','id':'body'},{'kind':'joint','id':'splice',"
                    + "'terminals':['1','2','3']}," + SwitchPlans.contact("left") + "," + SwitchPlans.contact("right")
                    + ",{'kind':'lamp','id':'lamp','ratedV':12,'ratedW':21," + SwitchPlans.meant("left") + "}"
                    + ",{'kind':'load','id':'fan','resistanceOhm':6,'meantLive':[]}",
            SwitchPlans.wires(
                    "battery.plus left.a",
                    "battery.minus body.31",
                    "left.b lamp.a",
                    "lamp.b splice.1",
                    "splice.2 body.31",
                    "splice.3 fan.a",
                    "fan.b body.31"));

    @Test
    void aReturnThatComesOffSendsTheCurrentThroughAnotherLoad() {
        BackfeedReport report = SEARCH.findWithFaults(COMMON_EARTH, Progress.UNWATCHED);
        assertThat(report.unintendedFeeds()).isEmpty();
        assertThat(report.withFaults())
                .filteredOn(f -> f.kind() == Kind.WIRE_OFF && f.ids().equals(List.of("W5")))
                .hasSize(2)
                .allSatisfy(off -> assertThat(off.unintendedFeeds())
                        .singleElement()
                        .satisfies(fan -> {
                            assertThat(fan.load()).isEqualTo("fan");
                            assertThat(fan.main().paths().get(0).steps())
                                    .extracting(s -> s.id())
                                    .containsExactly(
                                            "battery", "W1", "left", "W3", "lamp", "W4", "W6", "fan", "W7", "W2");
                            assertThat(fan.occurrences())
                                    .singleElement()
                                    .satisfies(o -> assertThat(o.changes()).isEqualTo(Map.of("left", "on")));
                        }));
    }

    @Property(seed = "20261125", tries = 5)
    void itIsTheSameAsSolvingEachFaultInEachCombination(
            @ForAll long seed, @ForAll @IntRange(min = 1, max = 2) int switches, @ForAll @IntRange(max = 2) int ties) {
        Plan plan = RandomHarness.of(seed, switches, ties);
        assertThat(found(SEARCH.findWithFaults(plan, Progress.UNWATCHED))).isEqualTo(oneByOne(plan));
    }

    /** How a load is fed, and by how many changes; the worst and then the fewest first. */
    private record Fed(Feed feed, int changes) implements Comparable<Fed> {
        @Override
        public int compareTo(Fed other) {
            int byFeed = feed.compareTo(other.feed);
            return byFeed != 0 ? byFeed : Integer.compare(changes, other.changes);
        }
    }

    /** By fault and load, how strongly it is fed and by how many changes. */
    private static Map<String, Set<String>> found(BackfeedReport report) {
        Map<String, Set<String>> all = new TreeMap<>();
        for (BackfeedReport.FaultFeeds faulty : report.withFaults()) {
            for (BackfeedReport.UnintendedFeed fed : faulty.unintendedFeeds()) {
                BackfeedReport.Occurrence one = fed.occurrences().get(0);
                all.computeIfAbsent(faulty.description().toString(), words -> new TreeSet<>())
                        .add(fed.load() + " " + one.level().activity() + " "
                                + one.level().pulledIn() + " " + one.changes().size());
            }
        }
        return all;
    }

    private Map<String, Set<String>> oneByOne(Plan plan) {
        Map<String, Set<String>> all = new TreeMap<>();
        for (SingleFault fault : SingleFaults.list(plan)) {
            Map<String, Fed> worst = new TreeMap<>();
            for (Situation situation : Situations.list(plan, 1 << 10)) {
                List<SolvedStep> sound = solver.solve(situation.plan());
                List<SolvedStep> faulty = solver.solve(fault.applyTo(situation.plan()));
                for (int s = 0; s < faulty.size(); s++) {
                    compare(sound.get(s), faulty.get(s), situation.changes(), worst);
                }
            }
            worst.forEach((load, fed) -> all.computeIfAbsent(
                            FaultWording.of(fault, plan).toString(), words -> new TreeSet<>())
                    .add(load + " " + fed.feed().strength() + " " + fed.feed().pulledIn() + " " + fed.changes()));
        }
        return all;
    }

    private static void compare(SolvedStep sound, SolvedStep faulty, int changes, Map<String, Fed> worst) {
        if (!faulty.solved()) {
            return;
        }
        for (Consumer load : faulty.plan().listParts(Consumer.class)) {
            Feed feed = Feed.of(faulty, load);
            boolean stronger = !sound.solved() || feed.compareEffect(Feed.of(sound, load)) < 0;
            boolean told = !Intent.meantLive(load, faulty.plan(), faulty.step())
                    && feed.strength().compareTo(FeedStrength.LEAKS) < 0
                    && stronger;
            if (told) {
                worst.merge(load.id(), new Fed(feed, changes), (a, b) -> a.compareTo(b) <= 0 ? a : b);
            }
        }
    }
}
