package loomwright.network;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Feature 16: a current driven into a load of constant power has an answer where one fits its law. */
class F16CurrentIntoAPowerLoadTest {
    /**
     * 10 W from 5 V on is 10/25 S below: 1 A drives it to 2.5 V, where it takes 2.5 W. 1.25 A on 5 ohm beside it: V/5 +
     * 10/V = 1.25 has no root, V/5 + 0.4 V = 1.25 gives 25/12 V.
     */
    @ParameterizedTest
    @CsvSource({"1, 0, 2.5", "0.4, 0, 1", "1.25, 5, 2.0833333333"})
    void belowItsLeastVoltsItIsAResistance(double driveA, double besideOhm, double volts) {
        var drive = new CurrentSource("drive", 0, 1, driveA);
        var load = new PowerLoad("load", 1, 0, 10, 5);
        List<Element> elements =
                besideOhm == 0 ? List.of(drive, load) : List.of(drive, load, new Resistor("beside", 1, 0, besideOhm));
        Network network = new Network(List.of("0", "1"), elements, 0);
        Solution solution = new NetworkSolver(NetworkLimits.defaults()).solve(network);
        assertThat(solution.solved()).isTrue();
        assertThat(solution.voltageV(1)).isCloseTo(volts, within(1e-9));
        Checker.check(network, solution);
    }
}
