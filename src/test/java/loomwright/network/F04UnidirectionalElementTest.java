package loomwright.network;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** Feature 4: one-way elements, alone, in bridges, in series, at their limit. */
class F04UnidirectionalElementTest {
    @Test
    void conductsForwardsWithItsThresholdAndSlope() {
        Circuit.Reading r = new Circuit()
                .source("s", "0", "a", 12, 0)
                .oneWay("d", "a", "b", 0.7, 0.1)
                .resistor("load", "b", "0", 11.2)
                .solve();
        assertThat(r.amps("d")).isCloseTo(1, within(1e-13));
    }

    @Test
    void blocksBackwardsWithoutAnyLeak() {
        Circuit.Reading r = new Circuit()
                .source("s", "0", "a", -12, 0)
                .oneWay("d", "a", "b", 0.7, 0.1)
                .resistor("load", "b", "0", 11.2)
                .solve();
        assertThat(r.amps("d")).isZero();
        assertThat(r.volts("b")).isZero();
    }

    @Test
    void anIdealBridgeRectifiesEitherWay() {
        for (double voltage : new double[] {12, -12}) {
            Circuit.Reading r = new Circuit()
                    .source("s", "p", "q", voltage, 0.5)
                    .oneWay("d1", "p", "plus", 0.7, 0)
                    .oneWay("d2", "q", "plus", 0.7, 0)
                    .oneWay("d3", "0", "p", 0.7, 0)
                    .oneWay("d4", "0", "q", 0.7, 0)
                    .resistor("load", "plus", "0", 10.1)
                    .solve();
            assertThat(r.amps("load")).isCloseTo(1, within(1e-12));
            assertThat(r.amps("d1") + r.amps("d2")).isCloseTo(1, within(1e-12));
            assertThat(Math.min(r.amps("d1"), r.amps("d2"))).isZero();
        }
    }

    @Test
    void anIslandBetweenTwoBlockingElementsFloats() {
        Circuit.Reading r = new Circuit()
                .source("s", "0", "a", 12, 0)
                .oneWay("d1", "x", "a", 0.7, 0.1)
                .resistor("r", "x", "y", 5)
                .oneWay("d2", "0", "y", 0.7, 0.1)
                .solve();
        assertThat(r.floating("x")).isTrue();
        assertThat(r.floating("y")).isTrue();
        assertThat(r.finding(NetworkFinding.Kind.FLOATING).elementIds()).containsExactly("r");
    }

    @Test
    void theOpenEndOfAConductingElementHasAVoltage() {
        Circuit.Reading r = new Circuit()
                .source("s", "0", "a", 12, 0)
                .oneWay("d", "a", "x", 0.7, 0.1)
                .solve();
        assertThat(r.floating("x")).isFalse();
        assertThat(r.volts("x")).isCloseTo(11.3, within(1e-9));
    }

    @Test
    void aLimitedElementFeedsAnother() {
        Circuit.Reading r = new Circuit()
                .source("s", "0", "a", 12, 0)
                .limited("l", "a", "x", 0, 0, 2)
                .oneWay("d", "x", "y", 0.7, 0)
                .resistor("load", "y", "0", 1)
                .solve();
        assertThat(r.amps("load")).isCloseTo(2, within(1e-13));
        assertThat(r.volts("x")).isCloseTo(2.7, within(1e-12));
    }

    @Test
    void aRegulatedSourceBehindARectifierTakesOverFromTheBattery() {
        Circuit.Reading r = new Circuit()
                .source("battery", "0", "b", 12.6, 0.02)
                .limited("alternator", "0", "b", -14.2, 0.01, 30)
                .resistor("load", "b", "0", 1)
                .solve();
        assertThat(r.amps("battery")).as("charging").isNegative();
        assertThat(r.amps("alternator")).isCloseTo(30, within(1e-9));
    }

    @Test
    void anIdealElementOverAnIdealSourceOfMoreVoltsIsADeadShort() {
        Circuit.Reading r = new Circuit()
                .source("s", "0", "a", 12, 0)
                .oneWay("d", "a", "0", 0.7, 0)
                .solve();
        assertThat(r.solution().solved()).isFalse();
        assertThat(r.finding(NetworkFinding.Kind.CONFLICTING_SOURCES).elementIds())
                .containsExactlyInAnyOrder("s", "d");
    }

    @Test
    void anIdealElementOverAnIdealSourceOfFewerVoltsBlocks() {
        Circuit.Reading r = new Circuit()
                .source("s", "0", "a", 12, 0)
                .oneWay("d", "a", "0", 24, 0)
                .resistor("load", "a", "0", 12)
                .solve();
        assertThat(r.amps("d")).isZero();
        assertThat(r.amps("s")).isCloseTo(1, within(1e-13));
    }

    @Test
    void anIdealElementOverAnIdealJointCarriesNothing() {
        Circuit.Reading r = new Circuit()
                .source("s", "0", "a", 12, 1)
                .resistor("joint", "a", "b", 0)
                .oneWay("d", "a", "b", 0, 0)
                .resistor("load", "b", "0", 5)
                .solve();
        assertThat(r.amps("joint")).isCloseTo(2, within(1e-13));
        assertThat(r.determined("joint")).isTrue();
    }

    @Test
    void ofIdealElementsSideBySideTheOneOfLeastThresholdConducts() {
        Circuit.Reading r = new Circuit()
                .source("s", "0", "a", 12, 1)
                .oneWay("early", "a", "b", 0.5, 0)
                .oneWay("late", "a", "b", 0.50001, 0)
                .resistor("load", "b", "0", 4)
                .solve();
        assertThat(r.amps("early")).isCloseTo(11.5 / 5, within(1e-12));
        assertThat(r.amps("late")).isZero();
    }

    @Test
    void anIdealElementThatARegulatedSourceDrivesBeyondItsThresholdIsAtItsLimit() {
        // The source holds 0.66 V over the element, which has a threshold of 0.65 V and a limit of 1.5 A.
        Circuit.Reading r = new Circuit()
                .add(new UnidirectionalElement("regulated", 1, 0, -0.66, 0, Double.POSITIVE_INFINITY))
                .add(new UnidirectionalElement("limited", 0, 1, 0.65, 0, 1.5))
                .resistor("feed", "a", "0", 100)
                .solve();
        assertThat(r.amps("limited")).isCloseTo(1.5, within(1e-12));
    }

    @Test
    void aMicroampereDrivenThroughADiodeBesideAKiloampereIsNoRounding() {
        Circuit.Reading r = new Circuit()
                .source("battery", "0", "plus", 12, 0)
                .resistor("starter", "plus", "0", 0.012)
                .current("trickle", "0", "a", 1e-6)
                .oneWay("d", "a", "0", 0.7, 0.01)
                .solve();
        assertThat(r.amps("d")).isCloseTo(1e-6, within(1e-12));
        assertThat(r.volts("a")).isCloseTo(0.70000001, within(1e-9));
    }

    @Test
    void aNodeBetweenTwoElementsAtTheirLimitStandsWhereTheLeastLeakDrawsIt() {
        // Each holds 2 A from 0 V or more over it on; the node between may be anywhere from 0 to 6 V, and leaks to 0 V.
        Circuit.Reading r = new Circuit()
                .source("s", "0", "a", 12, 3)
                .limited("first", "a", "b", 2)
                .limited("second", "b", "0", 2)
                .solve();
        assertThat(r.amps("first")).isCloseTo(2, within(1e-12));
        assertThat(r.amps("second")).isCloseTo(2, within(1e-12));
        assertThat(r.volts("a")).isCloseTo(6, within(1e-9));
        assertThat(r.volts("b")).isCloseTo(0, within(1e-9));
    }

    @Test
    void aSourceOfMuchResistanceIntoLittleHoldsItsPowerBalance() {
        Circuit.Reading r = new Circuit()
                .source("s", "0", "a", 12.3, 1e6)
                .resistor("load", "a", "0", 0.01)
                .solve();
        assertThat(r.amps("load")).isCloseTo(12.3 / 1_000_000.01, within(1e-15));
    }
}
