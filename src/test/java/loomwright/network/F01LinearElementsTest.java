package loomwright.network;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** Feature 1: resistors, sources of voltage and of current, one or two at a time. */
class F01LinearElementsTest {
    @Test
    void aSourceWithInternalResistanceAndALoad() {
        Circuit.Reading r = new Circuit()
                .source("battery", "0", "a", 12, 0.1)
                .resistor("load", "a", "0", 10)
                .solve();
        assertThat(r.amps("load")).isCloseTo(12 / 10.1, within(1e-14));
        assertThat(r.amps("battery")).as("delivering is positive").isCloseTo(12 / 10.1, within(1e-14));
        assertThat(r.volts("a")).isCloseTo(120 / 10.1, within(1e-13));
        assertThat(r.watts("battery")).as("delivered power is negative").isNegative();
    }

    @Test
    void anIdealSourceHasTheCurrentOfItsLoads() {
        Circuit.Reading r = new Circuit()
                .source("battery", "0", "a", 12, 0)
                .resistor("r1", "a", "b", 1)
                .resistor("r2", "b", "0", 5)
                .resistor("r3", "a", "0", 12)
                .solve();
        assertThat(r.amps("battery")).isCloseTo(3, within(1e-14));
        assertThat(r.volts("b")).isCloseTo(10, within(1e-13));
    }

    @Test
    void aJointWithoutResistanceCarriesTheCurrentAndDropsNothing() {
        Circuit.Reading r = new Circuit()
                .source("battery", "0", "a", 12, 0)
                .resistor("switch", "a", "b", 0)
                .resistor("load", "b", "0", 4)
                .solve();
        assertThat(r.amps("switch")).isCloseTo(3, within(1e-14));
        assertThat(r.volts("b")).isEqualTo(12);
    }

    @Test
    void aCurrentSourceDrivesItsCurrentThroughALoad() {
        Circuit.Reading r = new Circuit()
                .current("i", "0", "a", 2)
                .resistor("load", "a", "0", 7)
                .solve();
        assertThat(r.volts("a")).isCloseTo(14, within(1e-13));
        assertThat(r.watts("i")).isCloseTo(-28, within(1e-12));
    }

    @Test
    void aNetworkWithoutElementsOrCurrentsIsSolved() {
        assertThat(new Circuit().solve().volts("0")).isZero();
        assertThat(new Circuit().resistor("r", "0", "a", 5).solve().volts("a")).isZero();
    }
}
