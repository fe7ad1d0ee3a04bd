package loomwright.backfeed;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import loomwright.answer.Progress;
import loomwright.backfeed.BackfeedReport.Remedy;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import loomwright.network.NetworkLimits;
import loomwright.operation.FeedStrength;
import loomwright.operation.Step;
import org.junit.jupiter.api.Test;

/**
 * Two lamps share an earth that is lost: the one that is switched on lights the other, whose switched-off circuit has a
 * third lamp to earth elsewhere.
 *
 * <pre>
 *  S1 --- lamp1 ---+--- (earth lost)
 *  S2 --+- lamp2 --+
 *       +- lamp3 --- earth
 * </pre>
 */
class B03_LostEarthTest {
    private final Plan lost = Plans.named("lost-common-earth");

    @Test
    void oneLampLightsThroughTheOther() {
        var occurrence = Searched.of(lost).at("lamp2", Step.OFF);
        assertThat(occurrence.switches()).isEqualTo(Map.of("S1", "on", "S2", "off"));
        assertThat(occurrence.level().activity()).isIn(FeedStrength.GLOWS, FeedStrength.OPERATES);
        assertThat(occurrence.paths().get(0).steps())
                .extracting(BackfeedReport.PathStep::id)
                .containsSubsequence("S1", "lamp1", "lamp2", "lamp3");
    }

    @Test
    void whatCutsTheLampOffThatLostItsEarthIsNoRemedy() {
        assertThat(Searched.of(lost).feed("lamp2").remedies())
                .isNotEmpty()
                .allSatisfy(r -> assertThat(r.restoredLoads()).contains("lamp1"));
    }

    @Test
    void anEarthOfItsOwnPutsItRight() {
        assertThat(Searched.of(lost).feed("lamp2").remedies())
                .extracting(Remedy::kind, Remedy::at)
                .contains(org.assertj.core.groups.Tuple.tuple(Remedy.Kind.SEPARATE_EARTH, "splice"));
    }

    @Test
    void loadsWhoseReturnsMeetGetOneEarthAtTheirSplice() {
        assertThat(Searched.of(lost).feed("lamp2").remedies())
                .singleElement()
                .satisfies(remedy -> assertThat(remedy.change().code()).isEqualTo(BackfeedText.EARTH_SPLICE));
    }

    @Test
    void withTheEarthThereNothingIsFedUnasked() {
        assertThat(Searched.of(Plans.named("common-earth")).report().unintendedFeeds())
                .isEmpty();
    }

    @Test
    void earthsAreTriedBeforeTheManyWires() {
        BackfeedReport report = new BackfeedSearch(
                        new BackfeedLimits(262_144, 64, 6, 3, 20_000), NetworkLimits.defaults())
                .find(lost, Progress.UNWATCHED);
        assertThat(new Searched(report).feed("lamp2").remedies())
                .extracting(Remedy::kind)
                .contains(Remedy.Kind.SEPARATE_EARTH);
    }
}
