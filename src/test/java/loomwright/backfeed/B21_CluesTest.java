package loomwright.backfeed;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import loomwright.backfeed.BackfeedReport.Clue;
import loomwright.backfeed.BackfeedReport.Clue.Pattern;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import org.junit.jupiter.api.Test;

/**
 * The patterns of sneak circuit analysis: line, Y, inverted Y, X and H; path, timing, indication and label (MIL-STD-785B,
 * task 205; RADC-TR-90-109; from memory).
 */
class B21_CluesTest {
    private static List<Clue> clues(Plan plan, String load) {
        return SwitchPlans.search(plan).unintendedFeeds().stream()
                .filter(s -> s.load().equals(load))
                .findFirst()
                .map(BackfeedReport.UnintendedFeed::clues)
                .orElseThrow();
    }

    @Test
    void aTieThatCarriesCurrentEitherWayIsTheBarOfAnH() {
        assertThat(clues(SwitchPlans.crossTie(), "fan")).singleElement().satisfies(clue -> {
            assertThat(clue.pattern()).isEqualTo(Pattern.H_PATTERN);
            assertThat(clue.ids()).containsExactly("W8");
        });
    }

    @Test
    void aLampLitUnaskedIsAFalseIndication() {
        assertThat(clues(SwitchPlans.crossTie(), "lamp"))
                .extracting(Clue::pattern)
                .contains(Pattern.H_PATTERN, Pattern.INDICATION);
    }

    @Test
    void aContactInTheFeedAndOneInTheReturnAreNamedTogether() {
        assertThat(clues(SwitchPlans.feedAndEarthSwitched(), "horn"))
                .singleElement()
                .satisfies(clue -> {
                    assertThat(clue.pattern()).isEqualTo(Pattern.SWITCHED_FEED_AND_EARTH);
                    assertThat(clue.ids()).containsExactly("feed", "return");
                });
    }

    @Test
    void aPlainWayFromSourceToLoadIsALineAndAContactCalledOffIsALabel() {
        Plan plan = Plans.of(
                "{'kind':'battery','id':'battery'},{'kind':'earth','id':'body'},{'kind':'switch','id':'main',"
                        + "'terminals':['a','b'],'positions':[{'name':'on','joins':[]},{'name':'off','joins':[['a','b']]}]},"
                        + "{'kind':'load','id':'pump','resistanceOhm':5,'meantLive':[]}",
                SwitchPlans.wires("battery.plus main.a", "main.b pump.a", "pump.b body.31", "battery.minus body.31"));
        assertThat(clues(plan, "pump")).extracting(Clue::pattern).containsExactly(Pattern.LINE, Pattern.LABEL);
    }

    @Test
    void twoFeedsAtOnceAreAPowerDomeAndTwoReturnsAGroundDome() {
        Plan plan = Plans.of(
                "{'kind':'battery','id':'battery'},{'kind':'earth','id':'body'},"
                        + "{'kind':'load','id':'pump','resistanceOhm':5,'meantLive':[]}",
                SwitchPlans.wires(
                        "battery.plus pump.a",
                        "battery.plus pump.a",
                        "pump.b body.31",
                        "pump.b body.31",
                        "battery.minus body.31"));
        assertThat(clues(plan, "pump"))
                .extracting(Clue::pattern)
                .containsExactly(Pattern.POWER_DOME, Pattern.GROUND_DOME);
    }

    @Test
    void aRelayHeldThroughALampIsFedThroughAnotherLoadAndAMatterOfTiming() {
        assertThat(clues(Plans.named("relay-held-through-lamp"), "relay"))
                .extracting(Clue::pattern)
                .contains(Pattern.THROUGH_ANOTHER_LOAD, Pattern.TIMING);
    }
}
