package loomwright.backfeed;

import static org.assertj.core.api.Assertions.assertThat;

import loomwright.backfeed.BackfeedReport.PathStep;
import loomwright.backfeed.BackfeedReport.Remedy;
import loomwright.circuit.Plans;
import loomwright.operation.FeedStrength;
import loomwright.operation.Step;
import org.junit.jupiter.api.Test;

/** A relay whose own tell-tale lamp holds it in: dead before the key was first turned, alive for good afterwards. */
class B04_HeldRelayTest {
    private final Searched found = Searched.of(Plans.named("relay-held-through-lamp"));

    @Test
    void beforeTheKeyIsTurnedItIsDead() {
        assertThat(found.feed("relay").occurrences())
                .filteredOn(one -> !one.remembered())
                .extracting(BackfeedReport.Occurrence::step)
                .doesNotContain(Step.OFF, Step.ACCESSORY);
    }

    @Test
    void afterwardsItHoldsItselfThroughTheLamp() {
        var off = found.at("relay", Step.OFF_AGAIN);
        assertThat(off.level().activity()).isEqualTo(FeedStrength.HOLDS);
        assertThat(off.level().pulledIn()).isTrue();
        assertThat(off.paths().get(0).steps())
                .extracting(PathStep::id)
                .containsSubsequence("relay", "tell-tale", "relay");
        assertThat(found.at("pump", Step.OFF_AGAIN).level().activity()).isEqualTo(FeedStrength.OPERATES);
    }

    /** The lamp's wire serves nothing: a diode in it would never conduct. */
    @Test
    void theLampsWireIsTakenOutRatherThanGivenADiode() {
        assertThat(found.feed("relay").remedies().get(0).kind()).isEqualTo(Remedy.Kind.REMOVE);
        assertThat(found.remedy("pump", Remedy.Kind.REMOVE, "W9").costV()).isZero();
        assertThat(found.feed("relay").remedies()).extracting(Remedy::kind).doesNotContain(Remedy.Kind.DIODE);
    }

    @Test
    void turnedBackToAccessoryItStaysInToo() {
        assertThat(found.feed("relay").occurrences())
                .anySatisfy(one -> assertThat(one.remembered()).isTrue());
    }
}
