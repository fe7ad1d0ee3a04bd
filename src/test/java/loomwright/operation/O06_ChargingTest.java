package loomwright.operation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import loomwright.circuit.Plans;
import org.junit.jupiter.api.Test;

/** The alternator holds its voltage while the engine runs, and its warning lamp tells whether it does. */
class O06_ChargingTest {
    private final Solved solved = Solved.of(Plans.example("sandpiper-as-built"));

    @Test
    void theWarningLampIsLitThroughTheFieldWindingUntilItCharges() {
        assertThat(solved.activity(Step.RUN, "charge-lamp")).isEqualTo(Activity.OPERATES);
        assertThat(solved.currentA(Step.RUN, "charge-lamp")).isPositive();
        assertThat(Math.abs(solved.acrossV(Step.RUNNING, "charge-lamp"))).isLessThan(0.5);
    }

    @Test
    void theOutputStaysAtTheRegulatedVoltageLessItsSag() {
        double outputA = solved.currentA(Step.RUNNING, "alternator.B-", "alternator.B+");
        double acrossV =
                solved.voltageV(Step.RUNNING, "alternator.B+") - solved.voltageV(Step.RUNNING, "alternator.B-");
        assertThat(outputA).isBetween(0.0, 35.0);
        assertThat(acrossV).isCloseTo(14.2 - 0.02 * outputA, within(1e-9));
    }

    @Test
    void itTakesNoCurrentWhenItStands() {
        assertThat(solved.in(Step.OFF).branches())
                .noneMatch(b -> b.from().equals("alternator.B-") && b.to().equals("alternator.B+"));
    }

    @Test
    void justAfterTheKeyIsTurnedOffTheLampFeedsTheIgnitionFromDPlus() {
        assertThat(solved.currentA(Step.OFF_ENGINE_TURNING, "charge-lamp")).isNegative();
        assertThat(solved.activity(Step.OFF_ENGINE_TURNING, "coil")).isEqualTo(Activity.LEAKS);
        assertThat(solved.activity(Step.OFF_AGAIN, "coil")).isEqualTo(Activity.DEAD);
    }
}
