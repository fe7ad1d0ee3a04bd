package loomwright.backfeed;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import loomwright.answer.Severity;
import loomwright.backfeed.BackfeedReport.Occurrence;
import loomwright.backfeed.BackfeedReport.Remedy;
import loomwright.backfeed.BackfeedReport.UnintendedFeed;
import loomwright.circuit.Battery;
import loomwright.circuit.Condition;
import loomwright.circuit.Consumer;
import loomwright.circuit.Diode;
import loomwright.circuit.EarthPolarity;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import loomwright.circuit.RandomVehicle;
import loomwright.circuit.Relay;
import loomwright.circuit.TerminalRef;
import loomwright.circuit.Wire;
import loomwright.message.Message;
import loomwright.network.NetworkLimits;
import loomwright.operation.Mirror;
import loomwright.operation.PlanSolver;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.ShrinkingMode;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Feature 14: every remedy told is put into the plan and the plan asked again: it takes part, it helps, it takes nothing. */
class B14_RemediesThatHoldTest {
    private static final List<String> NAMED = List.of(
            "common-earth",
            "lost-common-earth",
            "ignition-relay-and-charge-lamp",
            "relay-held-through-lamp",
            "two-feeds-one-switch");

    /** A remedy for a load, and the plan with it. */
    private record Applied(String load, Remedy remedy, Plan plan) {
        String where() {
            return remedy.kind() + " at " + remedy.at() + " for " + load;
        }
    }

    /** All remedies that are told of a plan, each applied to it. The one place that knows how. */
    private static List<Applied> applied(Plan plan) {
        Survey survey = Searched.survey(plan, new PlanSolver(NetworkLimits.defaults()));
        BackfeedReport report = Searched.of(plan).report();
        Map<String, List<Occurrence>> all = report.unintendedFeeds().stream()
                .collect(Collectors.toMap(UnintendedFeed::load, UnintendedFeed::occurrences));
        List<Applied> applied = new ArrayList<>();
        for (UnintendedFeed feed : report.unintendedFeeds()) {
            Consumer load = (Consumer) plan.findPart(feed.load()).orElseThrow();
            Map<Message, Plan> changed = RemedyCandidates.list(plan, survey, load, all).stream()
                    .collect(
                            Collectors.toMap(Candidate::change, c -> c.changed().get(), (a, b) -> a));
            for (Remedy remedy : feed.remedies()) {
                Plan with = Objects.requireNonNull(
                        changed.get(remedy.change()), remedy.change().text());
                applied.add(new Applied(feed.load(), remedy, with));
            }
        }
        return applied;
    }

    private static Plan odd(int seed, int parts) {
        return RandomVehicle.of(
                seed, RandomVehicle.Shape.of(parts).withSwitches(3).withCrossTies(2));
    }

    static Stream<Plan> namedPlans() {
        return Stream.concat(NAMED.stream().map(Plans::named), Stream.of(Plans.example("sandpiper-unguarded-bypass")))
                .flatMap(plan -> Stream.of(plan, Mirror.of(plan)));
    }

    // Asked again.

    @ParameterizedTest(name = "{index}")
    @MethodSource("namedPlans")
    void ofTheKnownPlansEveryRemedyHelpsAndBringsNothingNew(Plan plan) {
        askAgain(plan, plan.name());
    }

    @Property(seed = "14", tries = 12, shrinking = ShrinkingMode.OFF)
    void everyRemedyHelpsAndBringsNothingNew(
            @ForAll @IntRange(max = 1_000_000) int seed, @ForAll @IntRange(min = 10, max = 20) int parts) {
        askAgain(odd(seed, parts), "seed " + seed + ", " + parts + " parts");
    }

    private static void askAgain(Plan plan, String where) {
        Map<String, Severity> before = severities(plan);
        for (Applied applied : applied(plan)) {
            Map<String, Severity> after = severities(applied.plan());
            // The worst comes first; a note that is left, or new, is no finding of the same weight.
            assertThat(after.getOrDefault(applied.load(), Severity.NOTE))
                    .as("%s: %s leaves it fed", where, applied.where())
                    .isEqualTo(Severity.NOTE);
            after.forEach((load, severity) -> assertThat(severity)
                    .as("%s: %s, %s", where, applied.where(), load)
                    .isGreaterThanOrEqualTo(before.getOrDefault(load, Severity.NOTE)));
        }
    }

    private static Map<String, Severity> severities(Plan plan) {
        Map<String, Severity> severities = new TreeMap<>();
        Searched.of(plan).report().unintendedFeeds().forEach(f -> severities.put(f.load(), f.severity()));
        return severities;
    }

    // Takes part.

    @ParameterizedTest(name = "{index}")
    @MethodSource("namedPlans")
    void ofTheKnownPlansWhatIsAddedTakesPart(Plan plan) {
        takesPart(plan, plan.name());
    }

    @Property(seed = "141", tries = 12, shrinking = ShrinkingMode.OFF)
    void aDiodeThatIsAddedConductsAtSomeTimeAndARelayPullsIn(
            @ForAll @IntRange(max = 1_000_000) int seed, @ForAll @IntRange(min = 10, max = 20) int parts) {
        takesPart(odd(seed, parts), "seed " + seed + ", " + parts + " parts");
    }

    private static void takesPart(Plan plan, String where) {
        for (Applied applied : applied(plan)) {
            Set<String> idle = new HashSet<>();
            added(plan, applied.plan()).stream()
                    .filter(p -> p instanceof Diode || p instanceof Relay)
                    .forEach(p -> idle.add(p.id()));
            EverySetting.forEachStep(applied.plan(), solved -> {
                for (Part part : applied.plan().parts()) {
                    if (idle.contains(part.id())
                            && (part instanceof Relay
                                    ? solved.isActive(part)
                                    : solved.currentA(solved.firstBranchOf(part.id())) > 1e-3)) {
                        idle.remove(part.id());
                    }
                }
            });
            assertThat(idle)
                    .as("%s: %s never does anything", where, applied.where())
                    .isEmpty();
        }
    }

    private static List<Part> added(Plan plan, Plan with) {
        return with.parts().stream()
                .filter(p -> plan.findPart(p.id()).isEmpty())
                .toList();
    }

    // A relay is fed from the live pole.

    @ParameterizedTest(name = "{index}")
    @MethodSource("namedPlans")
    void ofTheKnownPlansARelayIsFedFromTheLivePole(Plan plan) {
        fedFromTheLivePole(plan, plan.name());
    }

    @Property(seed = "142", tries = 12, shrinking = ShrinkingMode.OFF)
    void aRelayIsFedFromTheLivePoleNeverFromTheEarthedOneNorFromWhatItFeeds(
            @ForAll @IntRange(max = 1_000_000) int seed, @ForAll @IntRange(min = 10, max = 20) int parts) {
        fedFromTheLivePole(odd(seed, parts), "seed " + seed + ", " + parts + " parts");
    }

    private static void fedFromTheLivePole(Plan plan, String where) {
        String live = plan.system().earthPolarity() == EarthPolarity.NEGATIVE ? Battery.PLUS : Battery.MINUS;
        for (Applied applied : applied(plan)) {
            for (Part part : added(plan, applied.plan())) {
                if (part instanceof Relay) {
                    Set<TerminalRef> at30 = ends(applied.plan(), part.terminal(Relay.COMMON));
                    Set<TerminalRef> at87 = ends(applied.plan(), part.terminal(Relay.MAKE));
                    assertThat(at30)
                            .as("%s: %s, 30", where, applied.where())
                            .allMatch(t -> applied.plan().findPart(t.part()).orElseThrow() instanceof Battery
                                    && t.terminal().equals(live));
                    assertThat(at87).as("%s: %s, 87", where, applied.where()).doesNotContainAnyElementsOf(at30);
                }
            }
        }
    }

    private static Set<TerminalRef> ends(Plan plan, TerminalRef terminal) {
        Set<TerminalRef> ends = new HashSet<>();
        for (Wire wire : plan.wires()) {
            if (wire.from().equals(terminal)) {
                ends.add(wire.to());
            } else if (wire.to().equals(terminal)) {
                ends.add(wire.from());
            }
        }
        return ends;
    }

    // What it costs.

    @ParameterizedTest(name = "{index}")
    @MethodSource("namedPlans")
    void ofTheKnownPlansWhatARemedyCostsDoesNotHangOnAStrayLoad(Plan plan) {
        compareCosts(plan, plan.name());
    }

    @Property(seed = "143", tries = 10, shrinking = ShrinkingMode.OFF)
    void whatARemedyCostsDoesNotHangOnAStrayLoad(
            @ForAll @IntRange(max = 1_000_000) int seed, @ForAll @IntRange(min = 10, max = 20) int parts) {
        compareCosts(odd(seed, parts), "seed " + seed + ", " + parts + " parts");
    }

    /** A clock on the battery, always live though nobody said that it is meant to be. */
    private static void compareCosts(Plan plan, String where) {
        Battery battery = plan.listParts(Battery.class).get(0);
        List<Part> parts = new ArrayList<>(plan.parts());
        List<Wire> wires = new ArrayList<>(plan.wires());
        parts.addAll(Plans.of("{'kind':'load','id':'stray','resistanceOhm':1000,'meantLive':[]}", "")
                .parts());
        wires.add(Wire.ofResistance("stray-feed", battery.terminal(Battery.PLUS), new TerminalRef("stray", "a"), 0.01));
        wires.add(Wire.ofResistance(
                "stray-return", battery.terminal(Battery.MINUS), new TerminalRef("stray", "b"), 0.01));
        Map<String, Double> was = costsV(plan);
        Map<String, Double> is = costsV(plan.with(parts, wires));
        assertThat(is.keySet()).as(where).containsAll(was.keySet());
        was.forEach((remedy, costV) ->
                assertThat(is.get(remedy)).as("%s: %s", where, remedy).isCloseTo(costV, within(0.02)));
    }

    private static Map<String, Double> costsV(Plan plan) {
        Map<String, Double> costs = new LinkedHashMap<>();
        for (UnintendedFeed feed : Searched.of(plan).report().unintendedFeeds()) {
            if (!feed.load().equals("stray")) {
                feed.remedies().forEach(r -> costs.put(feed.load() + " " + r.kind() + " " + r.at(), r.costV()));
            }
        }
        return costs;
    }

    // What a wire is for.

    /** W11 is the machine's output, W10 its exciter lead. */
    @Test
    void theOutputWireOfAMachineIsNeverTakenOutNorGivenADiodeAndItsExciterLeadStays() {
        for (Plan plan : ignitionKeptAliveByTheMachine()) {
            for (UnintendedFeed feed : Searched.of(plan).report().unintendedFeeds()) {
                assertThat(feed.remedies()).extracting(Remedy::at).doesNotContain("W11", "W12", "W2");
                assertThat(feed.remedies())
                        .filteredOn(r -> r.at().equals("W10") || r.at().equals("W9"))
                        .extracting(Remedy::kind)
                        .doesNotContain(Remedy.Kind.REMOVE, Remedy.Kind.RELAY);
            }
        }
    }

    @Test
    void anIgnitionThatStaysLiveHasARemedyThoughTheChargeLampHangsOnTheSameKey() {
        for (Plan plan : ignitionKeptAliveByTheMachine()) {
            UnintendedFeed feed = Searched.of(plan).feed("ignition-relay");
            assertThat(feed.remedies()).as(plan.system().earthPolarity().name()).isNotEmpty();
            assertThat(feed.remedies())
                    .as(plan.system().earthPolarity().name())
                    .filteredOn(r -> r.kind() == Remedy.Kind.DIODE)
                    .extracting(Remedy::at)
                    .containsAnyOf("W9", "W10");
        }
    }

    /** The relay is held by what comes from D+ through the lamp; the lamp is meant to be lit with the key on only. */
    private static List<Plan> ignitionKeptAliveByTheMachine() {
        Plan named = Plans.named("ignition-relay-and-charge-lamp");
        Consumer lamp = (Consumer) named.findPart("charge-lamp").orElseThrow();
        Plan plan = named.withPart(lamp.withMeantLive(List.of(Condition.RUN, Condition.CRANK), List.of()));
        return List.of(plan, Mirror.of(plan));
    }

    // Their order.

    /** W8 joins two circuits that have nothing to do with each other. */
    @Test
    void aWireThatServesNothingIsTakenOutFirst() {
        Plan plan = crossTie();
        for (String load : List.of("lamp", "fan")) {
            List<Remedy> remedies = Searched.of(plan).feed(load).remedies();
            assertThat(remedies).as(load).isNotEmpty();
            assertThat(remedies.get(0).kind()).as(load).isEqualTo(Remedy.Kind.REMOVE);
            assertThat(remedies.get(0).at()).as(load).isEqualTo("W8");
            assertThat(remedies.get(0).costV()).as(load).isZero();
        }
    }

    /** W4 feeds the relay's contact and never carries current back to the fuse: no relay is to feed the fuse in its place. */
    @Test
    void noRelayFeedsAnEndThatTheWireNeverFed() {
        String on =
                "'meantLive':['off','accessory','run','crank','running'],'meantLiveWhen':[{'switches':{'main':['on']}}]";
        Plan latch = Plans.of(
                "{'kind':'battery','id':'battery'},{'kind':'earth','id':'body'},{'kind':'fuse','id':'fuse','ratingA':20},"
                        + "{'kind':'switch','id':'main','terminals':['a','b'],'positions':[{'name':'off','joins':[]},"
                        + "{'name':'on','joins':[['a','b']]}]},{'kind':'relay','id':'spot-relay','coilResistanceOhm':85,"
                        + on + "},{'kind':'lamp','id':'spots','ratedV':12,'ratedW':110," + on + "}",
                "{'id':'W1','from':'battery.minus','to':'body.31','resistanceOhm':0.002},"
                        + "{'id':'W2','from':'battery.plus','to':'fuse.a','resistanceOhm':0.005},"
                        + "{'id':'W3','from':'fuse.b','to':'main.a','resistanceOhm':0.01},"
                        + "{'id':'W4','from':'fuse.b','to':'spot-relay.30','resistanceOhm':0.01},"
                        + "{'id':'W5','from':'main.b','to':'spot-relay.86','resistanceOhm':0.02},"
                        + "{'id':'W6','from':'spot-relay.85','to':'body.31','resistanceOhm':0.02},"
                        + "{'id':'W7','from':'spot-relay.87','to':'spots.a','resistanceOhm':0.01},"
                        + "{'id':'W8','from':'spots.b','to':'body.31','resistanceOhm':0.01},"
                        + "{'id':'W9','from':'spot-relay.87','to':'spot-relay.86','resistanceOhm':0.02}");
        List<Remedy> remedies = Searched.of(latch).feed("spot-relay").remedies();
        assertThat(remedies).isNotEmpty();
        assertThat(remedies.get(0).at()).isEqualTo("W9");
        assertThat(remedies)
                .noneMatch(remedy ->
                        remedy.kind() == Remedy.Kind.RELAY && remedy.at().equals("W4"));
    }

    private static Plan crossTie() {
        String on =
                "'meantLive':['off','accessory','run','crank','running'],'meantLiveWhen':[{'switches':{'%s':['on']}}]";
        String contact = "{'kind':'switch','id':'%s','terminals':['a','b'],'positions':[{'name':'off','joins':[]},"
                + "{'name':'on','joins':[['a','b']]}]},";
        String[] joined = {
            "battery.plus left.a", "battery.plus right.a", "battery.minus body.31", "left.b lamp.a",
            "right.b fan.a", "lamp.b body.31", "fan.b body.31", "lamp.a fan.a"
        };
        StringBuilder wires = new StringBuilder();
        for (int i = 0; i < joined.length; i++) {
            String[] ends = joined[i].split(" ", -1);
            wires.append(i == 0 ? "" : ",")
                    .append("{'id':'W" + (i + 1) + "','from':'" + ends[0] + "','to':'" + ends[1]
                            + "','resistanceOhm':0.02}");
        }
        return Plans.of(
                "{'kind':'battery','id':'battery'},{'kind':'earth','id':'body'}," + contact.replace("%s", "left")
                        + contact.replace("%s", "right") + "{'kind':'lamp','id':'lamp','ratedV':12,'ratedW':21,"
                        + on.replace("%s", "left") + "},{'kind':'load','id':'fan','resistanceOhm':6,"
                        + on.replace("%s", "right") + "}",
                wires.toString());
    }
}
