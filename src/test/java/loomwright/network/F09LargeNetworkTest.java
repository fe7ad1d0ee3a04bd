package loomwright.network;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Feature 9: ladders and grids of thousands of nodes come out right; how fast is measured elsewhere. */
class F09LargeNetworkTest {
    /**
     * A ladder of 1 ohm along and 1 ohm across, ended by its own characteristic resistance, has that resistance at its
     * start: x = 1 + x/(1 + x), so x = (1 + √5)/2.
     */
    @ParameterizedTest
    @ValueSource(ints = {10, 1000, 10_000})
    void aLadderEndedByItsCharacteristicResistanceHasIt(int rungs) {
        double characteristicOhm = (1 + Math.sqrt(5)) / 2;
        Circuit circuit = new Circuit().source("s", "0", "n0", 12, 0);
        for (int k = 0; k < rungs; k++) {
            circuit.resistor("along" + k, "n" + k, "n" + (k + 1), 1);
            circuit.resistor("across" + k, "n" + (k + 1), "0", 1);
        }
        circuit.resistor("end", "n" + rungs, "0", characteristicOhm);
        assertThat(circuit.solve().amps("s")).isCloseTo(12 / characteristicOhm, within(1e-11));
    }

    /** Without rungs across, the drop divides evenly. */
    @Test
    void aChainOfTenThousandDividesEvenly() {
        Circuit circuit = new Circuit().source("s", "0", "n0", 10_000, 0);
        for (int k = 0; k < 10_000; k++) {
            circuit.resistor("r" + k, "n" + k, k == 9_999 ? "0" : "n" + (k + 1), 1);
        }
        Circuit.Reading r = circuit.solve();
        assertThat(r.volts("n5000")).isCloseTo(5000, within(1e-7));
    }

    /**
     * Fed at one corner and taken off at the opposite one, a square grid of equal resistors is symmetric: the nodes of
     * the other diagonal all have half the voltage.
     */
    @ParameterizedTest
    @ValueSource(ints = {3, 32, 100})
    void aGridFedAtOppositeCornersIsSymmetric(int side) {
        Circuit circuit = new Circuit().source("s", "0", "0,0", 12, 0);
        for (int row = 0; row < side; row++) {
            for (int column = 0; column < side; column++) {
                if (column + 1 < side) {
                    circuit.resistor("e" + row + "," + column, name(row, column, side), name(row, column + 1, side), 1);
                }
                if (row + 1 < side) {
                    circuit.resistor("s" + row + "," + column, name(row, column, side), name(row + 1, column, side), 1);
                }
            }
        }
        Circuit.Reading r = circuit.solve();
        for (int row = 0; row < side; row++) {
            assertThat(r.volts(name(row, side - 1 - row, side))).isCloseTo(6, within(1e-9));
        }
        assertThat(r.amps("e0,0")).isCloseTo(r.amps("s") / 2, within(1e-9));
    }

    private static String name(int row, int column, int side) {
        return row == side - 1 && column == side - 1 ? "0" : row + "," + column;
    }
}
