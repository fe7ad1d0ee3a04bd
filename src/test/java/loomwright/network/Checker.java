package loomwright.network;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;

/**
 * What must hold of every solved network, worked out from voltages and currents alone: Kirchhoff's current law at each
 * node, the law of each element between two nodes of one island, and power given = power taken.
 */
final class Checker {
    private Checker() {}

    static void check(Network network, Solution solution) {
        if (!solution.solved()) {
            assertThat(solution.findings()).anyMatch(NetworkFinding::preventsSolution);
            return;
        }
        assertThat(solution.findings()).noneMatch(NetworkFinding::preventsSolution);
        double scaleV = 1e-6;
        for (int node = 0; node < network.nodes().size(); node++) {
            scaleV = Math.max(scaleV, Math.abs(solution.voltageV(node)));
        }
        for (Element element : network.elements()) {
            if (element instanceof VoltageSource source) {
                scaleV = Math.max(scaleV, Math.abs(source.voltageV()));
            }
        }
        checkCurrents(network, solution, scaleV);
        for (int i = 0; i < network.elements().size(); i++) {
            checkLaw(network.elements().get(i), solution, i, scaleV);
        }
        assertThat(solution.voltageV(network.reference())).isZero();
        assertThat(solution.floating(network.reference())).isFalse();
    }

    private static void checkCurrents(Network network, Solution solution, double scaleV) {
        double[] net = new double[network.nodes().size()];
        double largestA = 0;
        double takenW = 0;
        double amountW = 0;
        for (int i = 0; i < network.elements().size(); i++) {
            Element element = network.elements().get(i);
            double a = solution.currentA(i);
            net[element.from()] -= a;
            net[element.to()] += a;
            largestA = Math.max(largestA, Math.abs(a));
            takenW += solution.powerW(i);
            amountW += Math.abs(solution.powerW(i));
        }
        double worst = Arrays.stream(net).map(Math::abs).max().orElse(0);
        assertThat(worst).as("Kirchhoff's current law").isLessThanOrEqualTo(1e-9 * largestA);
        assertThat(Math.abs(takenW))
                .as("power balance")
                .isLessThanOrEqualTo(1e-9 * Math.max(amountW, largestA * scaleV));
        assertThat(solution.kirchhoffResidual()).isLessThanOrEqualTo(1e-9);
        assertThat(solution.powerResidual()).isLessThanOrEqualTo(1e-9);
    }

    private static void checkLaw(Element element, Solution solution, int i, double scaleV) {
        double v = solution.voltageV(element.from()) - solution.voltageV(element.to());
        double a = solution.currentA(i);
        double toleranceV = 2e-9 * scaleV;
        if (element instanceof Resistor r) {
            assertThat(v).as(r.id()).isCloseTo(r.resistanceOhm() * a, within(toleranceV));
        } else if (element instanceof VoltageSource s) {
            assertThat(v).as(s.id()).isCloseTo(s.resistanceOhm() * a - s.voltageV(), within(toleranceV));
        } else if (element instanceof CurrentSource s) {
            assertThat(a).as(s.id()).isEqualTo(s.currentA());
        } else if (element instanceof PowerLoad p) {
            double law = Math.abs(v) >= p.minimumV() ? p.powerW() / v : v * p.powerW() / (p.minimumV() * p.minimumV());
            assertThat(a).as(p.id()).isCloseTo(law, within(1e-8 * (p.powerW() / p.minimumV())));
        } else if (element instanceof Lamp l) {
            double hot = l.ratedW() / l.ratedV() * Math.pow(Math.abs(v) / l.ratedV(), 0.55);
            double cold = Math.abs(v) * l.ratedW() / (l.coldFraction() * l.ratedV() * l.ratedV());
            assertThat(a)
                    .as(l.id())
                    .isCloseTo(Math.copySign(Math.min(hot, cold), v), within(1e-8 * l.ratedW() / l.ratedV()));
        } else if (element instanceof UnidirectionalElement o && sameIsland(o, solution)) {
            checkOneWay(o, v, a, solution.currentDetermined(i), toleranceV);
        }
    }

    private static boolean sameIsland(UnidirectionalElement o, Solution solution) {
        return !solution.floating(o.from()) && !solution.floating(o.to());
    }

    private static void checkOneWay(
            UnidirectionalElement o, double v, double a, boolean determined, double toleranceV) {
        double most = o.thresholdV() + o.slopeOhm() * a;
        if (determined) {
            assertThat(a).as(o.id() + " one way, within its limit").isBetween(-1e-8, o.limitA() * (1 + 1e-12) + 1e-8);
        }
        if (a < o.limitA() * (1 - 1e-9)) {
            assertThat(v)
                    .as(o.id() + " holds no more than its current asks for")
                    .isLessThanOrEqualTo(most + toleranceV);
        }
        if (a > 1e-8) {
            assertThat(v).as(o.id() + " holds what its current asks for").isGreaterThanOrEqualTo(most - toleranceV);
        }
    }
}
