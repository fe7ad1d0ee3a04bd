package loomwright.backfeed;

import static org.assertj.core.api.Assertions.assertThat;

import loomwright.circuit.Plans;
import loomwright.operation.FeedStrength;
import loomwright.operation.Step;
import org.junit.jupiter.api.Test;

/** A switch that joins two feeds: with it on, the permanent feed makes the whole ignition circuit live, key off. */
class B05_TwoFeedsTest {
    private final Searched found = Searched.of(Plans.named("two-feeds-one-switch"));

    @Test
    void withTheSwitchOnTheIgnitionIsLiveWithTheKeyOff() {
        var off = found.at("pump", Step.OFF);
        assertThat(off.level().activity()).isEqualTo(FeedStrength.OPERATES);
        assertThat(off.switches()).containsEntry("fan-switch", "both");
    }

    @Test
    void theWireOfTheIgnitionFeedCarriesCurrentBackwards() {
        assertThat(found.report().reversedWires())
                .extracting(BackfeedReport.ReversedWire::wire)
                .contains("W5");
    }

    @Test
    void theSmallestSwitchSettingIsShown() {
        assertThat(found.at("pump", Step.OFF).switches()).isEqualTo(java.util.Map.of("fan-switch", "both"));
    }
}
