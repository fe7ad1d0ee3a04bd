package loomwright.network;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;

/** Feature 13: whatever is connected with whatever, the solution obeys every law, or it is said why there is none. */
class F13RandomNonlinearNetworkTest {
    /** Of all kinds: ideal loops, one-way elements against each other. */
    private static Element element(Random random, String id, int from, int to) {
        double limitA = random.nextInt(4) == 0 ? 0.1 + 5 * random.nextDouble() : Double.POSITIVE_INFINITY;
        double slopeOhm = random.nextBoolean() ? 0 : 0.01;
        return switch (random.nextInt(10)) {
            case 0 -> new UnidirectionalElement(id, from, to, 0.7, slopeOhm, limitA);
            case 1 -> new UnidirectionalElement(id, from, to, 0, slopeOhm, limitA);
            case 2 -> new UnidirectionalElement(id, from, to, -14.2, slopeOhm, limitA);
            case 3 -> new VoltageSource(id, from, to, 12, random.nextInt(3) == 0 ? 0 : 0.02);
            case 4 -> new Lamp(id, from, to, 12, 21, 1 / 14.0);
            case 5 ->
                random.nextInt(3) == 0
                        ? new CurrentSource(id, from, to, random.nextGaussian())
                        : new PowerLoad(id, from, to, 10 + 50 * random.nextDouble(), 8);
            case 6 -> new Resistor(id, from, to, 0);
            default -> new Resistor(id, from, to, Math.pow(10, -3 + 5 * random.nextDouble()));
        };
    }

    @Property(seed = "131", tries = 2000)
    void isSolvedAndObeysAllLawsOrSaysWhyNot(@ForAll @IntRange(max = 1_000_000) int seed) {
        Network network = RandomNetwork.of(seed, F13RandomNonlinearNetworkTest::element);
        Solution solution = new NetworkSolver(NetworkLimits.defaults()).solve(network);
        Checker.check(network, solution);
        assertThat(solution.findings())
                .allSatisfy(finding -> assertThat(finding.text()).isNotBlank());
    }
}
