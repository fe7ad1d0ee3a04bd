package loomwright.ignition.primary;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import loomwright.answer.InputError;
import loomwright.answer.RejectedInput;
import loomwright.ignition.primary.Firing.Arrangement;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

/** How often a coil is asked for a spark, and how long it is charged for it. */
class DwellTest {
    private static final Firing FOUR = new Firing(4, 4, Arrangement.DISTRIBUTOR);
    private static final double NEVER = Double.POSITIVE_INFINITY;

    private static PrimaryCircuit circuit(double limitA) {
        return new PrimaryCircuit(13, 0.75, 0.005, limitA, 3333);
    }

    @Test
    @DisplayName(
            "4 cylinders, 50 degrees, 3000 rpm: 5.556 ms of 10.000 ms, duty 55.56 % (follows from the definitions)")
    void dwellOfADistributor() {
        Dwell dwell = Dwell.ofAngle(FOUR, 50, 3000);
        assertThat(dwell.dwellS()).isCloseTo(0.005556, within(5e-7));
        assertThat(dwell.cycleS()).isCloseTo(0.010, within(1e-15));
        assertThat(dwell.dutyFraction()).isCloseTo(0.5556, within(5e-5));
    }

    @Test
    @DisplayName("breaker on the crankshaft: degrees x 1000 / (6 rpm) ms (follows from the definitions)")
    void dwellOfABreakerOnTheCrankshaft() {
        Firing twoStroke = new Firing(1, 2, Arrangement.DISTRIBUTOR);
        Firing wasted = new Firing(2, 4, Arrangement.WASTED_SPARK);
        assertThat(Dwell.ofAngle(twoStroke, 120, 4000).dwellS()).isCloseTo(120.0 / (6 * 4000), within(1e-15));
        assertThat(Dwell.ofAngle(wasted, 120, 4000).dwellS()).isCloseTo(120.0 / (6 * 4000), within(1e-15));
        assertThat(wasted.cycleS(4000)).isCloseTo(60.0 / 4000, within(1e-15));
    }

    @Property(seed = "20260303")
    void sparksPerSecondOfADistributorAreCylindersTimesSpeedOver120(
            @ForAll @IntRange(min = 1, max = 16) int cylinders,
            @ForAll @DoubleRange(min = 20, max = 20_000) double rpm) {
        Firing firing = new Firing(cylinders, 4, Arrangement.DISTRIBUTOR);
        assertThat(1 / firing.cycleS(rpm)).isCloseTo(cylinders * rpm / 120, within(1e-9 * rpm));
        double degrees = firing.cycleDegrees() * 0.6;
        assertThat(Dwell.ofAngle(firing, degrees, rpm).dutyFraction())
                .isCloseTo(degrees * cylinders / 360, within(1e-12));
    }

    @Test
    void coilsAndSecondGapsFollowFromTheArrangement() {
        assertThat(FOUR.coils()).isEqualTo(1);
        assertThat(new Firing(4, 4, Arrangement.WASTED_SPARK).coils()).isEqualTo(2);
        assertThat(new Firing(4, 4, Arrangement.WASTED_SPARK).hasSecondGap()).isTrue();
        assertThat(new Firing(1, 4, Arrangement.WASTED_SPARK).hasSecondGap()).isFalse();
        assertThat(new Firing(3, 2, Arrangement.COIL_PER_CYLINDER).coils()).isEqualTo(3);
    }

    @Test
    void anArrangementThatCannotBeIsRejected() {
        RejectedInput twoStroke =
                catchThrowableOfType(RejectedInput.class, () -> new Firing(2, 2, Arrangement.WASTED_SPARK));
        assertThat(twoStroke.faults()).extracting(InputError::pointer).containsExactly("/arrangement");
        RejectedInput odd = catchThrowableOfType(RejectedInput.class, () -> new Firing(3, 4, Arrangement.WASTED_SPARK));
        assertThat(odd.faults()).extracting(InputError::pointer).containsExactly("/cylinders");
    }

    @Test
    void aConstantTimeIsCappedByItsShareOfTheCycle() {
        DwellLaw law = new DwellLaw.ConstantTime(0.004, 0.8);
        assertThat(law.at(FOUR, 1000, circuit(NEVER)).dwellS()).isEqualTo(0.004);
        assertThat(law.at(FOUR, 10_000, circuit(NEVER)).dwellS()).isCloseTo(0.8 * 0.003, within(1e-15));
    }

    @Property(seed = "20260304")
    void aCurrentControlledModuleStopsJustAtItsLimitOrAtItsShareOfTheCycle(
            @ForAll @DoubleRange(min = 50, max = 15_000) double rpm,
            @ForAll @DoubleRange(min = 2, max = 25) double limitA) {
        PrimaryCircuit circuit = circuit(limitA);
        Dwell dwell = new DwellLaw.CurrentControlled(0.8).at(FOUR, rpm, circuit);
        PrimaryCurrent current = PrimaryCurrent.steady(circuit, dwell);
        assertThat(dwell.dutyFraction()).isLessThanOrEqualTo(0.8 * (1 + 1e-12));
        assertThat(current.heldS()).isZero();
        if (dwell.dutyFraction() < 0.8 * (1 - 1e-12)) {
            assertThat(current.peakA()).isCloseTo(limitA, within(1e-9 * limitA));
        } else {
            assertThat(current.peakA()).isLessThanOrEqualTo(limitA * (1 + 1e-12));
        }
    }
}
