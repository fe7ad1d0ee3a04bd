package loomwright.backfeed;

import static org.assertj.core.api.Assertions.assertThat;

import loomwright.answer.Severity;
import loomwright.backfeed.BackfeedReport.PathStep;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import loomwright.message.Argument.Quantity;
import loomwright.operation.FeedStrength;
import loomwright.operation.Step;
import org.junit.jupiter.api.Test;

/**
 * A charge warning lamp that keeps an ignition alive after the key is turned off: D+ of the turning alternator feeds back
 * through the lamp into the coil of the ignition relay.
 */
class B02_WarningLampTest {
    @Test
    void theIgnitionRelayStaysInAndTheEngineRunsOn() {
        var found = Searched.of(Plans.named("ignition-relay-and-charge-lamp"));
        var relay = found.at("ignition-relay", Step.OFF_ENGINE_TURNING);
        assertThat(relay.level().pulledIn()).isTrue();
        // It came in when the key was turned on.
        assertThat(found.feed("ignition-relay").verdict().code()).isEqualTo(BackfeedText.STAYS_IN);
        assertThat(found.feed("ignition-relay").verdict().arguments())
                .containsEntry("operateV", new Quantity(8, "V"))
                .containsEntry("releaseV", new Quantity(1.5, "V"));
        assertThat(relay.paths().get(0).steps())
                .extracting(PathStep::id)
                .contains("alternator", "charge-lamp", "ignition-relay");
        var coil = found.at("coil", Step.OFF_ENGINE_TURNING);
        assertThat(coil.level().activity()).isEqualTo(FeedStrength.OPERATES);
        assertThat(found.feed("coil").severity()).isEqualTo(Severity.DANGER);
    }

    @Test
    void withTheEngineStoppedItIsOver() {
        var found = Searched.of(Plans.named("ignition-relay-and-charge-lamp"));
        assertThat(found.feed("coil").occurrences())
                .extracting(BackfeedReport.Occurrence::step)
                .doesNotContain(Step.OFF, Step.OFF_AGAIN);
    }

    @Test
    void aDiodeTowardsTheLampEndsIt() {
        var found = Searched.of(Plans.named("ignition-relay-and-charge-lamp"));
        assertThat(found.feed("coil").remedies())
                .extracting(BackfeedReport.Remedy::kind)
                .contains(BackfeedReport.Remedy.Kind.DIODE);
    }

    @Test
    void aCoilThatIsFedDirectlyGetsOnlyATrickleThroughTheLamp() {
        Plan plan = Plans.example("sandpiper-as-built");
        assertThat(Searched.of(plan).feed("coil").severity()).isEqualTo(Severity.NOTE);
    }
}
