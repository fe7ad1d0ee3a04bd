package loomwright.backfeed;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.HashMap;
import java.util.Map;
import java.util.Objects;
import java.util.Random;
import java.util.Set;
import loomwright.answer.Progress;
import loomwright.backfeed.BackfeedReport.Occurrence;
import loomwright.backfeed.BackfeedReport.UnintendedFeed;
import loomwright.backfeed.EverySetting.Fed;
import loomwright.circuit.Alternator;
import loomwright.circuit.FilamentLamp;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import loomwright.circuit.RandomVehicle;
import loomwright.circuit.Relay;
import loomwright.circuit.Shuffled;
import loomwright.circuit.Solenoid;
import loomwright.network.NetworkLimits;
import loomwright.operation.Step;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.ShrinkingMode;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

/**
 * Feature 12: the search finds what solving every setting one by one finds: no load and step less, each at its strongest,
 * and no more but for what a relay remembers from a move before.
 */
class B12_AgainstEverySettingTest {
    /** Two settings whose volts differ by less than this share are one to the search. */
    private static final double ALIKE = 1e-5;

    @Property(seed = "12", tries = 25, shrinking = ShrinkingMode.OFF)
    void loadsAndStepsAndStrengthAreThoseOfEverySetting(
            @ForAll @IntRange(max = 1_000_000) int seed, @ForAll @IntRange(min = 12, max = 40) int parts) {
        RandomVehicle.Shape shape =
                RandomVehicle.Shape.of(parts).withSwitches(4).withCrossTies(3);
        compare(RandomVehicle.of(seed, shape), "seed " + seed + ", " + shape);
    }

    /** Eight switches, 256 combinations: more than were once refused. */
    @Test
    void manyCombinationsAreNoReasonToRefuse() {
        StringBuilder parts = new StringBuilder("{'kind':'battery','id':'battery'},{'kind':'earth','id':'body'}");
        StringBuilder wires =
                new StringBuilder("{'id':'W','from':'battery.minus','to':'body.31','resistanceOhm':0.01}");
        for (int i = 0; i < 8; i++) {
            parts.append(String.format(
                    ",{'kind':'switch','id':'S%1$d','terminals':['a','b'],'positions':[{'name':'off','joins':[]},"
                            + "{'name':'on','joins':[['a','b']]}]},{'kind':'lamp','id':'L%1$d','ratedV':12,'ratedW':5,"
                            + "'meantLive':['off','accessory','run','crank','running'],"
                            + "'meantLiveWhen':[{'switches':{'S%1$d':['on']}}]}",
                    i));
            wires.append(String.format(
                    ",{'id':'A%1$d','from':'battery.plus','to':'S%1$d.a','resistanceOhm':0.01},"
                            + "{'id':'B%1$d','from':'S%1$d.b','to':'L%1$d.a','resistanceOhm':0.01},"
                            + "{'id':'C%1$d','from':'L%1$d.b','to':'body.31','resistanceOhm':0.01}",
                    i));
        }
        BackfeedReport report = search(Plans.of(parts.toString(), wires.toString()));
        assertThat(report.extent().combinations()).isEqualTo(256);
        assertThat(report.unintendedFeeds()).isEmpty();
    }

    @Property(seed = "121", tries = 15, shrinking = ShrinkingMode.OFF)
    void theStrongestDoesNotHangOnTheOrderOfParts(
            @ForAll @IntRange(max = 1_000_000) int seed, @ForAll @IntRange(min = 12, max = 40) int parts) {
        RandomVehicle.Shape shape =
                RandomVehicle.Shape.of(parts).withSwitches(4).withCrossTies(3);
        Plan plan = RandomVehicle.of(seed, shape);
        Map<String, Double> was = strongestV(search(plan));
        Map<String, Double> is = strongestV(search(Shuffled.of(plan, new Random(seed))));
        assertThat(is.keySet()).as("seed %s, %s", seed, shape).isEqualTo(was.keySet());
        was.forEach((what, volts) -> assertThat(is.get(what))
                .as("seed %s, %s: %s", seed, shape, what)
                .isEqualTo(volts));
    }

    /** A 30 W load in series with a 4 A load: what is too little for both at once is found all the same. */
    @Test
    void aLoadOfWattsInSeriesWithALoadOfAmpsIsFound() {
        String wires = "{'id':'W1','from':'battery.minus','to':'body.31','resistanceOhm':0.01},"
                + "{'id':'W2','from':'battery.plus','to':'S.a','resistanceOhm':0.01},"
                + "{'id':'W3','from':'S.b','to':'watts.a','resistanceOhm':0.01},"
                + "{'id':'W4','from':'watts.b','to':'amps.a','resistanceOhm':0.01},"
                + "{'id':'W5','from':'amps.b','to':'body.31','resistanceOhm':0.01}";
        Plan plan = Plans.of(
                "{'kind':'battery','id':'battery'},{'kind':'earth','id':'body'},"
                        + "{'kind':'switch','id':'S','terminals':['a','b'],'positions':[{'name':'off','joins':[]},"
                        + "{'name':'on','joins':[['a','b']]}]},"
                        + "{'kind':'load','id':'watts','powerW':30,'meantLive':[]},"
                        + "{'kind':'load','id':'amps','currentA':4,'minimumV':1,'meantLive':[]}",
                wires);
        compare(plan, "watts in series with amps");
        assertThat(search(plan).unintendedFeeds())
                .extracting(UnintendedFeed::load)
                .contains("watts");
    }

    private static void compare(Plan plan, String where) {
        Map<String, Fed> all = EverySetting.fedUnasked(plan);
        chargeLamps(plan).forEach(lamp -> all.remove(EverySetting.key(lamp, Step.OFF_ENGINE_TURNING)));
        Map<String, Occurrence> found = strongest(search(plan));
        assertThat(found.keySet()).as(where).containsAll(all.keySet());
        boolean remembers = plan.parts().stream().anyMatch(p -> p instanceof Relay || p instanceof Solenoid);
        if (!remembers) {
            assertThat(found.keySet()).as(where).isEqualTo(all.keySet());
        }
        all.forEach((what, fed) -> {
            Occurrence occurrence = Objects.requireNonNull(found.get(what));
            if (!remembers) {
                assertThat(occurrence.level().activity())
                        .as("%s: %s", where, what)
                        .isEqualTo(fed.strength());
                assertThat(occurrence.level().effectiveV())
                        .as("%s: %s", where, what)
                        .isCloseTo(fed.effectiveV(), within(ALIKE * (1 + fed.effectiveV())));
            } else {
                assertThat(occurrence.level().activity())
                        .as("%s: %s", where, what)
                        .isLessThanOrEqualTo(fed.strength());
            }
        });
    }

    /** Lamps of a machine: it is normal that they are lit while the engine runs down. */
    private static Set<String> chargeLamps(Plan plan) {
        Set<String> lamps = new java.util.HashSet<>();
        for (var wire : plan.wires()) {
            for (var end : java.util.List.of(wire.from(), wire.to())) {
                Part other = plan.findPart(
                                wire.from().equals(end)
                                        ? wire.to().part()
                                        : wire.from().part())
                        .orElseThrow();
                if (other instanceof FilamentLamp && end.terminal().equals(Alternator.WARNING_LAMP)) {
                    lamps.add(other.id());
                }
            }
        }
        return lamps;
    }

    private static BackfeedReport search(Plan plan) {
        return new BackfeedSearch(BackfeedLimits.defaults(), NetworkLimits.defaults()).find(plan, Progress.UNWATCHED);
    }

    private static Map<String, Occurrence> strongest(BackfeedReport report) {
        Map<String, Occurrence> strongest = new HashMap<>();
        for (UnintendedFeed feed : report.unintendedFeeds()) {
            for (Occurrence occurrence : feed.occurrences()) {
                strongest.merge(
                        EverySetting.key(feed.load(), occurrence.step()),
                        occurrence,
                        (a, b) -> BackfeedSearch.worstFirst().compare(a, b) <= 0 ? a : b);
            }
        }
        return strongest;
    }

    private static Map<String, Double> strongestV(BackfeedReport report) {
        Map<String, Double> volts = new HashMap<>();
        strongest(report)
                .forEach(
                        (what, occurrence) -> volts.put(what, occurrence.level().effectiveV()));
        return volts;
    }
}
