package loomwright.network;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Feature 17: a source whose regulator measures at another place. */
class F17SensedSourceTest {
    private static final int OUTPUT = 1;
    private static final int BATTERY = 2;
    private static final int SENSE = 3;
    private static final int BEHIND = 4;

    /** Machine, its main wire, battery with a load, and the sense wire to it; figures are ohms, amperes and volts. */
    private static List<Element> car(double mainOhm, double limitA, double loadOhm, double senseOhm) {
        List<Element> elements = new ArrayList<>(List.of(
                new SensedSource("machine", 0, OUTPUT, 14.2, 0.02, limitA, OUTPUT, SENSE, 4),
                new Resistor("main", OUTPUT, BATTERY, mainOhm),
                new TwoSlopeSource("battery", 0, BATTERY, 12.5, 0.01, 0.2),
                new Resistor("load", BATTERY, 0, loadOhm),
                new UnidirectionalElement("diode", BATTERY, BEHIND, 0.7, 0.01, Double.POSITIVE_INFINITY),
                new Lamp("lamp", BEHIND, 0, 12, 21, 0.1),
                new Resistor("regulator", SENSE, 0, 1e4)));
        if (senseOhm < Double.POSITIVE_INFINITY) {
            elements.add(new Resistor("sense", BATTERY, SENSE, senseOhm));
        }
        return elements;
    }

    private static Network network(List<Element> elements) {
        return new Network(List.of("0", "output", "battery", "sense", "behind"), elements, 0);
    }

    private static Solution solve(List<Element> elements) {
        return new NetworkSolver(NetworkLimits.defaults()).solve(network(elements));
    }

    /** By hand: 14.2 V less 0.02 ohm times I at the battery, of 12.5 V behind 0.2 ohm; the regulator takes 1.4 mA. */
    @ParameterizedTest
    @ValueSource(doubles = {1e-3, 0.05, 0.5})
    void holdsTheVoltsWhereItMeasuresWhateverTheMainWireLoses(double mainOhm) {
        List<Element> alone = car(mainOhm, 60, 1e9, 1e-3);
        alone.removeIf(element -> element instanceof Lamp || element instanceof UnidirectionalElement);
        Solution solved = solve(alone);
        double amperes = 1.7 / 0.22;
        assertThat(solved.currentA(0)).isCloseTo(amperes, within(2e-3));
        assertThat(solved.voltageV(BATTERY)).isCloseTo(12.5 + 0.2 * amperes, within(1e-3));
        assertThat(solved.voltageV(OUTPUT) - solved.voltageV(BATTERY)).isCloseTo(mainOhm * amperes, within(1e-3));
        assertThat(solved.kirchhoffResidual()).isLessThan(1e-9);
    }

    @Test
    void aMachineAtItsLimitGivesThatAndNoMore() {
        assertThat(solve(car(0.02, 8, 0.5, 0.01)).currentA(0)).isCloseTo(8, within(1e-12));
    }

    /** Nothing is measured: 14.2 V and 4 V more, through its own resistance. */
    @Test
    void withoutItsSenseWireItGivesAllItCan() {
        Solution solved = solve(car(0.05, 100, 1, Double.POSITIVE_INFINITY));
        assertThat(solved.voltageV(OUTPUT) + 0.02 * solved.currentA(0)).isCloseTo(18.2, within(1e-9));
        assertThat(solved.voltageV(BATTERY)).isGreaterThan(15.5);
    }

    @Property(tries = 60)
    void aScanSaysTheSame(
            @ForAll @DoubleRange(min = 0.01, max = 1) double mainOhm,
            @ForAll @DoubleRange(min = 1, max = 60) double limitA,
            @ForAll @DoubleRange(min = 0.2, max = 10) double loadOhm,
            @ForAll @DoubleRange(min = 0.01, max = 2000) double senseOhm) {
        List<Element> elements = car(mainOhm, limitA, loadOhm, senseOhm);
        Solution solved = solve(elements);
        boolean[] always = new boolean[elements.size()];
        Arrays.fill(always, true);
        NetworkScan scan = new NetworkScan(5, 0, elements, always, false);
        scan.clear();
        assertThat(scan.solve()).isTrue();
        for (int node = 1; node < 5; node++) {
            assertThat(scan.acrossV(node, 0)).isCloseTo(solved.voltageV(node), within(1e-7));
        }
        assertThat(scan.currentA(0)).isCloseTo(solved.currentA(0), within(1e-6));
    }

    /** Against the difference of two solutions. */
    @ParameterizedTest
    @ValueSource(doubles = {0.01, 100, 1e9})
    void theResponseIsWhatASmallCurrentDoes(double senseOhm) {
        List<Element> elements = car(0.05, 60, 1, senseOhm);
        Linearisation linear = Linearisation.of(network(elements), solve(elements));
        double smallA = 1e-4;
        for (int node = 1; node < 5; node++) {
            List<Element> more = new ArrayList<>(elements);
            more.add(new CurrentSource("more", 0, node, smallA));
            List<Element> less = new ArrayList<>(elements);
            less.add(new CurrentSource("less", 0, node, -smallA));
            for (int read = 1; read < 5; read++) {
                double differenceV = (solve(more).voltageV(read) - solve(less).voltageV(read)) / (2 * smallA);
                assertThat(linear.response(read, 0)[node])
                        .as("node %d read at %d", node, read)
                        .isCloseTo(differenceV, within(1e-4 + 1e-4 * Math.abs(differenceV)));
            }
        }
    }
}
