package loomwright.backfeed;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import loomwright.answer.Severity;
import loomwright.backfeed.BackfeedReport.Occurrence;
import loomwright.backfeed.BackfeedReport.UnintendedFeed;
import loomwright.circuit.Consumer;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import loomwright.message.MessageFinder;
import loomwright.network.NetworkLimits;
import loomwright.operation.FeedStrength;
import loomwright.operation.Move;
import loomwright.operation.MovedPlan;
import loomwright.operation.PlanSolver;
import loomwright.operation.SolvedStep;
import org.junit.jupiter.api.Test;

/**
 * Feature 23: a relay that is in may stay in after a free switch has moved back. No setting of the switches shows that by itself,
 * only the order in which they were moved.
 */
class B23_MemoryOfSwitchesTest {
    /**
     * A relay for spot lamps. Main beam pulls it in through the switch of the spot lamps; its own output feeds its winding back
     * through the same switch, so it stays in when main beam goes off.
     */
    private static Plan spotLamps(String ofSpots) {
        return Plans.of(
                "{'kind':'battery','id':'battery'},{'kind':'earth','id':'body'}," + SwitchPlans.contact("main") + ","
                        + SwitchPlans.contact("spots").replace("'id':'spots'", "'id':'spots'" + ofSpots)
                        + ",{'kind':'relay','id':'relay','coilResistanceOhm':85,'meantLive':['off','accessory','run',"
                        + "'crank','running'],'meantLiveWhen':[{'switches':{'main':['on'],'spots':['on']}}]}"
                        + ",{'kind':'lamp','id':'beam','ratedV':12,'ratedW':55," + SwitchPlans.meant("main") + "}"
                        + ",{'kind':'lamp','id':'spot','ratedV':12,'ratedW':55,'meantLive':['off','accessory','run',"
                        + "'crank','running'],'meantLiveWhen':[{'switches':{'main':['on'],'spots':['on']}}]}",
                SwitchPlans.wires(
                        "battery.plus main.a",
                        "battery.plus relay.30",
                        "battery.minus body.31",
                        "main.b beam.a",
                        "beam.b body.31",
                        "main.b spots.a",
                        "spots.b relay.86",
                        "relay.85 body.31",
                        "relay.87 spot.a",
                        "spot.b body.31",
                        "relay.87 spots.a"));
    }

    @Test
    void lampsThatStayLitAfterEverySwitchIsOffAreFound() {
        Plan plan = spotLamps("");
        Searched found = Searched.of(plan);
        for (String load : List.of("relay", "spot", "beam")) {
            UnintendedFeed feed = found.feed(load);
            assertThat(feed.severity()).as(load).isNotEqualTo(Severity.NOTE);
            Occurrence remembered = feed.occurrences().stream()
                    .filter(Occurrence::remembered)
                    .findFirst()
                    .orElseThrow(() -> new AssertionError(load + " is not found to stay on"));
            SolvedStep solved =
                    MovedPlan.follow(plan, Move.parse(remembered.after()), new PlanSolver(NetworkLimits.defaults()));
            assertThat(solved.activity((Consumer) plan.findPart(load).orElseThrow()))
                    .as("%s after %s", load, remembered.after())
                    .isEqualTo(FeedStrength.OPERATES);
        }
        assertThat(found.report().extent().switchMoves()).isGreaterThanOrEqualTo(2);
    }

    /** The positions of the switches alone do not show why: the verdict says what was moved, in order. */
    @Test
    void theVerdictSaysByWhichMovesItComesToThat() {
        Searched found = Searched.of(spotLamps(""));
        for (String load : List.of("relay", "spot", "beam")) {
            UnintendedFeed feed = found.feed(load);
            int moves = feed.main().remembered() ? feed.main().after().size() : 0;
            assertThat(MessageFinder.words(feed.verdict(), "moves")).as(load).hasSize(moves);
        }
        assertThat(found.feed("relay").main().remembered()).isTrue();
    }

    /** A spring-loaded switch is back before anything is reported: what only lasts while it is held is no finding. */
    @Test
    void aPushButtonIsBackBeforeAnythingIsReported() {
        BackfeedReport report = Searched.of(spotLamps(",'momentary':true")).report();
        assertThat(report.unintendedFeeds().stream()
                        .flatMap(feed -> feed.occurrences().stream())
                        .filter(Occurrence::remembered))
                .allSatisfy(one -> assertThat(one.switches()).containsEntry("spots", "off"));
    }
}
