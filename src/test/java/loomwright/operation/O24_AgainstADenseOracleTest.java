package loomwright.operation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import loomwright.circuit.EarthPolarity;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.RandomVehicle;
import loomwright.network.NetworkLimits;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.ShrinkingMode;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Feature 24: volts, amps and states of rest are those of a second, plain way to them ({@link DenseOracle}). */
class O24_AgainstADenseOracleTest {
    private static final double ALIKE = 1e-6;
    /** A part this near to its limit, as a share of it, may go either way. */
    private static final double DOUBT = 1e-6;

    private static final int MOST_STATES = 64;

    @Property(seed = "18", tries = 60, shrinking = ShrinkingMode.OFF)
    void smallVehicles(@ForAll @IntRange(max = 1_000_000) int seed, @ForAll @IntRange(min = 5, max = 25) int parts) {
        compare(seed, RandomVehicle.Shape.of(parts));
    }

    @Property(seed = "181", tries = 25, shrinking = ShrinkingMode.OFF)
    void vehiclesWithWiresWhereNoneShouldBe(
            @ForAll @IntRange(max = 1_000_000) int seed, @ForAll @IntRange(min = 15, max = 45) int parts) {
        compare(seed, RandomVehicle.Shape.of(parts).withCrossTies(6));
    }

    @Property(seed = "182", tries = 20, shrinking = ShrinkingMode.OFF)
    void vehiclesWithLeadsOff(
            @ForAll @IntRange(max = 1_000_000) int seed, @ForAll @IntRange(min = 15, max = 40) int parts) {
        compare(seed, RandomVehicle.Shape.of(parts).withLeadsOff());
    }

    @ParameterizedTest
    @CsvSource({"1, 60", "3, 90"})
    void largeVehicles(int seed, int parts) {
        compare(seed, RandomVehicle.Shape.of(parts));
    }

    private static void compare(int seed, RandomVehicle.Shape shape) {
        Plan plan = withoutModulesOfPositiveEarth(RandomVehicle.of(seed, shape));
        DenseOracle oracle = new DenseOracle(plan);
        Set<String> before = Set.of();
        for (SolvedStep solved : new PlanSolver(NetworkLimits.defaults()).solve(plan)) {
            String where = "seed " + seed + ", " + shape + ", " + solved.step();
            assertThat(solved.solved()).as(where).isTrue();
            Set<String> state = state(oracle, solved);
            compareFigures(plan, solved, oracle.solve(solved.step(), state), where);
            compareRest(oracle, solved, before, state, where);
            before = state;
        }
    }

    private static Set<String> state(DenseOracle oracle, SolvedStep solved) {
        Set<String> active = new TreeSet<>();
        for (Part part : oracle.stateful()) {
            if (solved.isActive(part)) {
                active.add(part.id());
            }
        }
        return active;
    }

    private static void compareRest(
            DenseOracle oracle, SolvedStep solved, Set<String> before, Set<String> state, String where) {
        DenseOracle.Rests rests = oracle.rests(solved.step(), before, MOST_STATES);
        if (!rests.complete() || rests.closest() < DOUBT) {
            return;
        }
        if (solved.oscillating()) {
            assertThat(rests.rests()).as("%s: oscillates", where).isEmpty();
            return;
        }
        assertThat(rests.rests()).as("%s: at rest", where).contains(state);
        if (!rests.raced()) {
            assertThat(solved.isRace()).as("%s: a race", where).isFalse();
        }
        if (solved.isRace()) {
            assertThat(rests.rests()).as("%s: the outcomes of a race", where).containsAll(solved.raceOutcomes());
        }
    }

    private static void compareFigures(Plan plan, SolvedStep solved, OracleFigures figures, String where) {
        double withinV = ALIKE * figures.largestV();
        double withinA = ALIKE * figures.largestA();
        for (Part part : plan.parts()) {
            for (String terminal : part.terminals()) {
                String name = part.id() + "." + terminal;
                if (figures.tied(name)) {
                    OptionalDouble volts = solved.voltageV(solved.node(part.terminal(terminal)));
                    assertThat(volts).as("%s: volts at %s", where, name).isPresent();
                    assertThat(volts.orElseThrow())
                            .as("%s: volts at %s", where, name)
                            .isCloseTo(figures.voltageV(name), within(withinV));
                }
            }
        }
        Map<String, Double> currentsA = new LinkedHashMap<>();
        for (int i = 0; i < solved.branches().size(); i++) {
            Branch b = solved.branches().get(i);
            currentsA.merge(
                    DenseOracle.key(b.id(), b.from(), b.to()),
                    DenseOracle.sign(b.from(), b.to()) * solved.currentA(i),
                    Double::sum);
        }
        figures.currentsA().forEach((branch, amps) -> {
            assertThat(currentsA.getOrDefault(branch, 0.0))
                    .as("%s: amps in %s", where, branch)
                    .isCloseTo(amps, within(withinA));
            currentsA.remove(branch);
        });
        currentsA.forEach((branch, amps) ->
                assertThat(amps).as("%s: amps in %s", where, branch).isCloseTo(0, within(withinA)));
    }

    /** Such a module does not conduct yet. */
    private static Plan withoutModulesOfPositiveEarth(Plan plan) {
        return plan.system().earthPolarity() == EarthPolarity.POSITIVE ? RandomVehicle.withoutModules(plan) : plan;
    }
}
