package loomwright.network;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;

/** Feature 3: floating parts have voltages of their own, ideal loops and currents without return are named. */
class F03IslandsAndIdealLoopsTest {
    @Test
    void aFloatingPartIsSolvedToItsOwnFirstNode() {
        Circuit.Reading r = new Circuit()
                .source("s", "0", "a", 12, 1)
                .resistor("load", "a", "0", 5)
                .source("cell", "p", "q", 1.5, 0.5)
                .resistor("lamp", "q", "p", 2.5)
                .solve();
        assertThat(r.floating("p")).isTrue();
        assertThat(r.volts("p")).isZero();
        assertThat(r.volts("q")).isCloseTo(1.25, within(1e-14));
        assertThat(r.amps("load")).isCloseTo(2, within(1e-14));
        NetworkFinding finding = r.finding(NetworkFinding.Kind.FLOATING);
        assertThat(finding.nodes()).containsExactly("p", "q");
        assertThat(finding.elementIds()).containsExactly("cell", "lamp");
    }

    @Test
    void anOpenEndHasTheVoltageOfItsFeedAndNoCurrent() {
        Circuit.Reading r = new Circuit()
                .source("s", "0", "a", 12.3, 0.01)
                .resistor("wire1", "a", "b", 0.003)
                .resistor("wire2", "b", "c", 1e6)
                .solve();
        assertThat(r.volts("c")).isEqualTo(12.3);
        assertThat(r.amps("s")).isZero();
        assertThat(r.floating("c")).isFalse();
    }

    @Test
    void twoIdealSourcesThatDisagreeAreNamed() {
        Circuit.Reading r = new Circuit()
                .source("six", "0", "a", 6, 0)
                .resistor("joint", "a", "b", 0)
                .source("twelve", "0", "b", 12, 0)
                .resistor("load", "a", "0", 1)
                .solve();
        assertThat(r.solution().solved()).isFalse();
        NetworkFinding finding = r.finding(NetworkFinding.Kind.CONFLICTING_SOURCES);
        assertThat(finding.elementIds()).containsExactlyInAnyOrder("six", "joint", "twelve");
        assertThat(finding.nodes()).containsExactlyInAnyOrder("0", "a", "b");
        assertThatThrownBy(() -> r.volts("a")).isInstanceOf(IllegalStateException.class);
    }

    @Test
    void aDeadShortOfAnIdealSourceIsNamed() {
        Circuit.Reading r = new Circuit()
                .source("s", "0", "a", 12, 0)
                .resistor("short", "a", "0", 0)
                .solve();
        assertThat(r.finding(NetworkFinding.Kind.CONFLICTING_SOURCES).elementIds())
                .containsExactlyInAnyOrder("s", "short");
    }

    @Test
    void aLoopOfJointsHasVoltagesButNoDeterminedCurrents() {
        Circuit.Reading r = new Circuit()
                .source("s", "0", "a", 12, 0)
                .resistor("j1", "a", "b", 0)
                .resistor("j2", "a", "b", 0)
                .resistor("load", "b", "0", 6)
                .solve();
        assertThat(r.volts("b")).isEqualTo(12);
        assertThat(r.determined("j1")).isFalse();
        assertThat(r.determined("j2")).isFalse();
        assertThat(r.amps("j1") + r.amps("j2")).isCloseTo(2, within(1e-14));
        assertThat(r.determined("s")).isTrue();
        assertThat(r.amps("s")).isCloseTo(2, within(1e-14));
        assertThat(r.finding(NetworkFinding.Kind.UNDETERMINED_CURRENT).elementIds())
                .containsExactlyInAnyOrder("j1", "j2");
    }

    @Test
    void aCurrentDrivenIntoNothingIsNamed() {
        Circuit.Reading r = new Circuit()
                .current("i", "0", "a", 2)
                .resistor("r", "a", "b", 5)
                .solve();
        assertThat(r.solution().solved()).isFalse();
        NetworkFinding finding = r.finding(NetworkFinding.Kind.CURRENT_WITHOUT_RETURN);
        assertThat(finding.elementIds()).containsExactly("i");
        assertThat(finding.nodes()).containsExactly("a", "b");
    }

    @Test
    void twoCurrentSourcesMayFeedAFloatingPartIfTheyAgree() {
        Circuit.Reading r = new Circuit()
                .current("in", "0", "a", 2)
                .resistor("r", "a", "b", 5)
                .current("out", "b", "0", 2)
                .solve();
        assertThat(r.amps("r")).isCloseTo(2, within(1e-14));
        assertThat(r.floating("a")).isTrue();
    }

    @Test
    void currentsHoldAtNodesWithResistancesSpreadOverNineDecades() {
        Circuit.Reading r = new Circuit()
                .source("s", "0", "a", 12, 1e-4)
                .resistor("r1", "a", "b", 1e-4)
                .resistor("r2", "b", "c", 1e-4)
                .resistor("r3", "c", "d", 1e5)
                .resistor("r4", "b", "0", 1e5)
                .resistor("r5", "d", "0", 1e-4)
                .solve();
        assertThat(r.amps("s")).isCloseTo(2.4e-4, within(1e-9));
        assertThat(r.solution().kirchhoffResidual()).isLessThan(1e-12);
    }

    /** Its currents, thousands of them, leave rounding that is no current out of it. */
    @Test
    void aFloatingBatteryMayHaveThousandsOfLoads() {
        Random random = new Random(5);
        Circuit circuit = new Circuit().source("battery", "minus", "plus", 12, 0);
        double[] ohm = new double[3000];
        for (int k = 0; k < ohm.length; k++) {
            double wireOhm = 1 + random.nextDouble();
            ohm[k] = wireOhm + 10 * (1 + random.nextDouble());
            circuit.resistor("wire" + k, "plus", "at" + k, wireOhm);
        }
        random = new Random(5);
        for (int k = 0; k < ohm.length; k++) {
            random.nextDouble();
            circuit.resistor("load" + k, "at" + k, "minus", 10 * (1 + random.nextDouble()));
        }
        Circuit.Reading r = circuit.solve();
        for (int k = 0; k < ohm.length; k++) {
            assertThat(r.amps("wire" + k)).isCloseTo(12 / ohm[k], within(1e-9));
        }
    }
}
