package loomwright.backfeed;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import loomwright.answer.Severity;
import loomwright.backfeed.BackfeedReport.PathStep;
import loomwright.backfeed.BackfeedReport.Remedy;
import loomwright.circuit.Condition;
import loomwright.circuit.Diode;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import loomwright.circuit.Solenoid;
import loomwright.circuit.TerminalRef;
import loomwright.circuit.Wire;
import loomwright.message.Argument.Listing;
import loomwright.message.Argument.Nested;
import loomwright.message.Message;
import loomwright.operation.FeedStrength;
import loomwright.operation.Step;
import org.junit.jupiter.api.Test;

/**
 * A bypass wire from the starter terminal to the ballast's tap, without a relay, feeds the starter solenoid backwards with
 * the key on.
 *
 * <pre>
 *  key 15 --- ballast a --[0.9]-- tap1 --[0.6]-- b --- coil --- points --- earth
 *                                  |
 *                                 W35 (meant to feed the tap while cranking)
 *                                  |
 *  key 50 ------------------- solenoid 50 ---[3.4]--- earth
 * </pre>
 */
class B01_StartBypassTest {
    private final Plan unguarded = Plans.example("sandpiper-unguarded-bypass");

    @Test
    void withTheContactsOpenItPullsTheStarterInWithTheKeyOn() {
        var found = Searched.of(unguarded);
        assertThat(found.feed("solenoid").severity()).isEqualTo(Severity.DANGER);
        var run = found.at("solenoid", Step.RUN);
        assertThat(run.level().activity()).isEqualTo(FeedStrength.OPERATES);
        assertThat(run.switches()).containsEntry("points", "open");
        assertThat(found.feed("starter").severity()).isEqualTo(Severity.DANGER);
    }

    /** No meter shows what two windings pull like together. */
    @Test
    void ofASolenoidWithTwoWindingsTheVoltsAcrossItAreToldApartFromItsPull() {
        Plan twoWindings = unguarded.withPart(new Solenoid(
                "solenoid",
                "Starter solenoid",
                3.4,
                1.0,
                null,
                null,
                0.0005,
                300.0,
                List.of(Condition.CRANK),
                List.of()));
        Message verdict = Searched.of(twoWindings).feed("solenoid").verdict();
        assertThat(verdict.arguments().get("feed"))
                .isInstanceOfSatisfying(
                        Nested.class,
                        feed -> assertThat(feed.message().code()).isEqualTo(BackfeedText.FEED_OF_HOLD_IN));
        assertThat(verdict.arguments().get("windings"))
                .isInstanceOfSatisfying(
                        Listing.class, windings -> assertThat(windings.items()).hasSize(1));
        assertThat(Searched.of(unguarded).feed("solenoid").verdict().arguments())
                .containsEntry("windings", new Listing(List.of()));
    }

    @Test
    void onceInItStaysInWhileTheEngineRuns() {
        var running = Searched.of(unguarded).at("solenoid", Step.RUNNING);
        assertThat(running.level().activity()).isEqualTo(FeedStrength.HOLDS);
        assertThat(running.level().pulledIn()).isTrue();
    }

    @Test
    void theCurrentComesThroughTheFirstElementAndTakesTheBypassBackwards() {
        var path = Searched.of(unguarded).at("solenoid", Step.RUN).paths().get(0);
        assertThat(path.steps())
                .extracting(PathStep::id)
                .containsExactly(
                        "battery",
                        "W4",
                        "link",
                        "W5",
                        "W6",
                        "key",
                        "W7",
                        "C1",
                        "W8",
                        "ballast",
                        "W35",
                        "solenoid",
                        "W16",
                        "W2");
        assertThat(path.steps().stream().filter(PathStep::againstFeed))
                .extracting(PathStep::id)
                .containsExactly("W35");
    }

    @Test
    void howStronglyDependsOnTheElementInThePath() {
        // From 12.6 V through the element and about 0.1 ohm of feed into 3.4 ohm, contacts open.
        double[] elementOhm = {0.3, 0.9, 3.0, 12.0};
        List<FeedStrength> strength = new ArrayList<>();
        for (double ohm : elementOhm) {
            var run = Searched.of(withElement(ohm)).at("solenoid", Step.RUN);
            strength.add(run.level().activity());
            if (run.switches().containsValue("open") && !run.level().pulledIn()) {
                assertThat(run.level().effectiveV()).isCloseTo(12.6 * 3.4 / (3.4 + ohm + 0.1), within(0.35));
            }
        }
        assertThat(strength)
                .containsExactly(FeedStrength.OPERATES, FeedStrength.OPERATES, FeedStrength.HOLDS, FeedStrength.LEAKS);
    }

    @Test
    void withARelayTheSolenoidIsDead() {
        assertThat(Searched.of(Plans.example("sandpiper-bypass-relay")).find("solenoid"))
                .isEmpty();
        assertThat(Searched.of(Plans.example("sandpiper-bypass-relay")).find("starter"))
                .isEmpty();
    }

    @Test
    void aRelayIsProposedAndCostsNothing() {
        Remedy relay = Searched.of(unguarded).remedy("solenoid", Remedy.Kind.RELAY, "W35");
        assertThat(relay.costV()).isZero();
    }

    /** The starter that runs on pulls the supply down so far that the charge warning lamp glows. */
    @Test
    void theWarningLampIsHelpedByTheSameRelayThoughATrickleStays() {
        Remedy relay = Searched.of(unguarded).remedy("charge-lamp", Remedy.Kind.RELAY, "W35");
        assertThat(relay.remainingV()).isBetween(0.01, 1.0);
        assertThat(relay.costs()).isEmpty();
    }

    @Test
    void theMoveToTheSolenoidsOwnContactIsProposed() {
        assertThat(Searched.of(unguarded)
                        .remedy("solenoid", Remedy.Kind.MOVE, "W35")
                        .change()
                        .arguments())
                .containsEntry("to", new Nested(unguarded.describe(new TerminalRef("solenoid", "15a"))));
    }

    /** The plan does not show whether the solenoid has that contact; a relay holds in any case. */
    @Test
    void whatNeedsAContactThatThePlanDoesNotShowStandsLast() {
        List<Remedy> remedies = Searched.of(unguarded).feed("solenoid").remedies();
        assertThat(remedies.get(0).kind()).isEqualTo(Remedy.Kind.RELAY);
        assertThat(remedies.get(remedies.size() - 1).kind()).isEqualTo(Remedy.Kind.MOVE);
    }

    @Test
    void aDiodeTheRightWayRoundHelpsAndItsCostInCrankingVoltsIsStated() {
        Remedy diode = Searched.of(unguarded).remedy("solenoid", Remedy.Kind.DIODE, "W35");
        assertThat(diode.costs().get(0))
                .satisfies(cost -> assertThat(cost.load()).isEqualTo("coil"))
                .satisfies(cost -> assertThat(cost.step()).isEqualTo(Step.CRANK));
        // The diode's drop of 0.7 V and some, divided between what is left of the ballast (0.6) and the coil (1.5 of
        // 2.13 ohm).
        assertThat(diode.costV()).isCloseTo(0.74 * 1.5 / 2.13, within(0.05));
        assertThat(Searched.of(withDiode(true)).find("solenoid"))
                .as("what is left is the trickle from the warning lamp")
                .isEmpty();
    }

    /** What frees the solenoid frees the motor behind its contact. */
    @Test
    void theStarterIsHelpedByTheMoveThatHelpsItsSolenoid() {
        assertThat(Searched.of(unguarded)
                        .remedy("starter", BackfeedReport.Remedy.Kind.MOVE, "W35")
                        .patch())
                .isEqualTo(Searched.of(unguarded)
                        .remedy("solenoid", BackfeedReport.Remedy.Kind.MOVE, "W35")
                        .patch());
    }

    @Test
    void aDiodeTheWrongWayRoundDoesNotHelp() {
        assertThat(Searched.of(withDiode(false))
                        .at("solenoid", Step.RUN)
                        .level()
                        .activity())
                .isIn(FeedStrength.OPERATES, FeedStrength.HOLDS);
    }

    private Plan withElement(double ohm) {
        return unguarded.withPart(new loomwright.circuit.Ballast("ballast", null, List.of(ohm, 0.6)));
    }

    /** The unguarded bypass with a diode at its tap end. */
    private Plan withDiode(boolean rightWay) {
        Diode diode = Diode.silicon("D", null);
        TerminalRef near = diode.terminal(rightWay ? Diode.ANODE : Diode.CATHODE);
        TerminalRef far = diode.terminal(rightWay ? Diode.CATHODE : Diode.ANODE);
        List<Part> parts = new ArrayList<>(unguarded.parts());
        parts.add(diode);
        List<Wire> wires = new ArrayList<>();
        for (Wire wire : unguarded.wires()) {
            wires.add(wire.id().equals("W35") ? wire.withEnds(wire.from(), near) : wire);
        }
        wires.add(Wire.ofResistance("W35b", far, TerminalRef.parse("ballast.tap1"), 0.005));
        return unguarded.with(parts, wires);
    }
}
