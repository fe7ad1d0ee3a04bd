package loomwright.backfeed;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import loomwright.backfeed.BackfeedReport.Remedy;
import loomwright.backfeed.BackfeedReport.Remedy.Kind;
import loomwright.circuit.EarthPoint;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import loomwright.circuit.TerminalRef;
import loomwright.circuit.Wire;
import loomwright.message.MessageFinder;
import loomwright.operation.FeedStrength;
import loomwright.operation.Mirror;
import org.junit.jupiter.api.Test;

/** Feature 25: where a bad joint, a bad earth or a master switch with one pole is the cause, the remedy is to mend that. */
class B25_CausesTest {
    private final Plan badEarth = Plans.named("bad-common-earth");
    private final Plan master = Plans.named("master-switch");

    private static List<Remedy> remedies(Plan plan, String load) {
        return Searched.of(plan).feed(load).remedies();
    }

    private static Plan earthOf(Plan plan, double ohm) {
        return plan.withPart(new EarthPoint("wing", null, ohm));
    }

    /** Two lamps share an earth of 8 ohm: one lights the other through it. No part is added to get round that. */
    @Test
    void ofABadEarthTheRemedyIsThatEarthAndNothingElse() {
        for (Plan plan : List.of(badEarth, Mirror.of(badEarth))) {
            assertThat(remedies(plan, "lamp2")).singleElement().satisfies(remedy -> {
                assertThat(remedy.kind()).isEqualTo(Kind.REPAIR);
                assertThat(remedy.at()).isEqualTo("wing");
                assertThat(remedy.restoredLoads()).contains("lamp1");
            });
        }
    }

    @Test
    void itSaysWhatTheEarthLosesAndWhatAGoodOneMay() {
        Remedy remedy = remedies(badEarth, "lamp2").get(0);
        assertThat(remedy.change().code()).isEqualTo(BackfeedText.REPAIR_JOINT);
        // 0.1 V for one heavy earth joint: US Army TM 9-2320-211-20.
        assertThat(MessageFinder.quantity(remedy.change(), "limitV")).isCloseTo(0.1, within(1e-12));
        assertThat(MessageFinder.quantity(remedy.change(), "lostV")).isGreaterThan(2);
    }

    @Test
    void theEndOfAWireCountsAsAJoint() {
        Plan badEnd = earthOf(badEarth, 0);
        badEnd = badEnd.with(
                badEnd.parts(),
                badEnd.wires().stream()
                        .map(wire -> wire.id().equals("W10") ? wire.withJoints(0, 8) : wire)
                        .toList());
        assertThat(remedies(badEnd, "lamp2"))
                .extracting(Remedy::kind, Remedy::at)
                .containsExactly(tuple(Kind.REPAIR, "W10"));
    }

    @Test
    void anEarthThatLosesNoMoreThanAGoodOneIsLeftAlone() {
        assertThat(Searched.of(earthOf(badEarth, 0.001)).report().unintendedFeeds())
                .flatExtracting(BackfeedReport.UnintendedFeed::remedies)
                .extracting(Remedy::kind)
                .doesNotContain(Kind.REPAIR);
    }

    /** The alternator keeps the ignition alive when the battery is switched off. */
    @Test
    void aMachineThatKeepsTheIgnitionAliveNeedsASecondPoleOfTheMasterSwitch() {
        for (Plan plan : List.of(master, Mirror.of(master))) {
            assertThat(remedies(plan, "coil")).isNotEmpty().allSatisfy(remedy -> {
                assertThat(remedy.kind()).isEqualTo(Kind.SECOND_POLE);
                assertThat(remedy.at()).isNotEqualTo("W5");
            });
            Plan cured = PlanPatch.apply(plan, remedies(plan, "coil").get(0).patch());
            assertThat(Searched.of(cured)
                            .find("coil")
                            .map(feed -> feed.main().level().activity()))
                    .isNotEqualTo(Optional.of(FeedStrength.OPERATES));
        }
    }

    /** The lead from the machine to the battery is not opened: without a battery its voltage rises. */
    @Test
    void theOutputOfTheMachineIsNeverOpened() {
        List<Wire> output = master.wires().stream()
                .filter(wire -> wire.from().equals(TerminalRef.parse("alternator.B+")))
                .toList();
        assertThat(output).hasSize(1);
        assertThat(remedies(master, "coil"))
                .extracting(Remedy::at)
                .doesNotContain(output.get(0).id());
    }

    /**
     * With the key let go the contact drives the same current through both windings, which then hold nothing. A valve of 0.8 ohm
     * that draws from between them leaves the pull-in winding with more, and the starter stays in.
     */
    @Test
    void whatUnbalancesTwoWindingsIsTakenOffByARelay() {
        Plan plan = Plans.named("unbalanced-windings");
        assertThat(Searched.of(plan).feed("solenoid").main().level().activity()).isNotEqualTo(FeedStrength.LEAKS);
        for (String load : List.of("solenoid", "starter")) {
            assertThat(remedies(plan, load))
                    .extracting(Remedy::kind, Remedy::at)
                    .contains(tuple(Kind.RELAY, "W7"));
        }
    }
}
