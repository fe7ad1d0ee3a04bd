package loomwright.backfeed;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.BitSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import loomwright.circuit.Consumer;
import loomwright.circuit.ContactBreaker;
import loomwright.circuit.ForEachExample;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import loomwright.circuit.RandomVehicle;
import loomwright.circuit.Stabiliser;
import loomwright.network.NetworkLimits;
import loomwright.operation.FeedStrength;
import loomwright.operation.PlanSolver;
import loomwright.operation.SettingScan;
import loomwright.operation.SolvedStep;
import loomwright.operation.Step;
import loomwright.operation.SwitchSettings;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What the scan decides of a setting is what {@link PlanSolver} reports of the plan so set. */
class B18_DecisionsAsReportedTest {
    private static final double ALIKE_V = 1e-5;

    private final PlanSolver solver = new PlanSolver(NetworkLimits.defaults());

    @Property(seed = "20261125", tries = 40)
    void onPlansMadeAtRandom(
            @ForAll long seed, @ForAll @IntRange(min = 1, max = 10) int switches, @ForAll @IntRange(max = 5) int ties) {
        // A few figures lie too close to a limit; the quick way is worth nothing if it leaves most to the other.
        assertThat(compare(RandomHarness.of(seed, switches, ties), new Random(seed), 12))
                .isLessThanOrEqualTo(24);
    }

    /** With every kind of part. */
    @Property(seed = "1511", tries = 20)
    void onVehiclesMadeAtRandom(
            @ForAll @IntRange(max = 1_000_000) int seed, @ForAll @IntRange(min = 10, max = 25) int parts) {
        assertThat(compare(
                        RandomVehicle.of(
                                seed,
                                RandomVehicle.Shape.of(parts).withSwitches(2).withCrossTies(2)),
                        new Random(seed),
                        4))
                .isLessThanOrEqualTo(4);
    }

    /** What a stabiliser has to give does not depend on how the engine happens to have stopped. */
    @Test
    void withAStabiliserAndOpenPoints() {
        Plan plan = RandomVehicle.of(
                200_647, RandomVehicle.Shape.of(24).withSwitches(1).withCrossTies(3));
        assertThat(plan.listParts(Stabiliser.class)).isNotEmpty();
        assertThat(plan.listParts(ContactBreaker.class)).isNotEmpty();
        assertThat(compare(plan, new Random(1), 64)).isZero();
    }

    @ForEachExample
    void onTheExamples(String name) {
        assertThat(compare(Plans.example(name), new Random(1), 64)).isZero();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "common-earth",
                "lost-common-earth",
                "ignition-relay-and-charge-lamp",
                "relay-held-through-lamp",
                "two-feeds-one-switch"
            })
    void onPlansWithKnownBackfeeds(String name) {
        assertThat(compare(Plans.named(name), new Random(1), 64)).isZero();
    }

    /** A hundredth of a millionth to either side of where a relay pulls in the scan must not trust itself. */
    @ParameterizedTest
    @ValueSource(doubles = {-1e-8, 1e-8})
    void whatIsTooCloseToALimitIsTakenAgainAsItIsReported(double off) {
        Plan usual = relayThatPullsInAt(8);
        SolvedStep run = solver.solve(usual, Step.RUN).get(Step.RUN.place());
        Plan close = relayThatPullsInAt(
                run.effectiveV(usual.listParts(Consumer.class).get(0)) * (1 + off));
        assertThat(compare(close, new Random(1), 1)).isPositive();
        SolvedStep decided = solver.solve(close, Step.RUN).get(Step.RUN.place());
        assertThat(decided.active()).isEqualTo(off < 0 ? Set.of("relay") : Set.of());
    }

    private static Plan relayThatPullsInAt(double volts) {
        return Plans.of(
                "{'kind':'battery','id':'battery'},{'kind':'earth','id':'earth'},"
                        + "{'kind':'relay','id':'relay','coilResistanceOhm':85,'dropOutV':1,'meantLive':[],'pullInV':"
                        + volts + "}",
                "{'id':'W1','from':'battery.plus','to':'relay.86','resistanceOhm':0.01},"
                        + "{'id':'W2','from':'relay.85','to':'earth.31','resistanceOhm':0.01},"
                        + "{'id':'W3','from':'battery.minus','to':'earth.31','resistanceOhm':0.01}");
    }

    /** Compares some settings and returns how many steps of them the scan did not decide. */
    private int compare(Plan plan, Random random, int most) {
        SwitchSettings settings = SwitchSettings.of(plan);
        SettingScan scan = new SettingScan(settings, NetworkLimits.defaults());
        List<Consumer> consumers = scan.consumers();
        int count = settings.count().intValueExact();
        for (int i = 0; i < Math.min(most, count); i++) {
            int[] setting = settings.drawn();
            settings.read(count <= most ? i : random.nextInt(count), setting);
            BitSet active = new BitSet();
            for (SolvedStep solved : solver.solve(settings.planAt(setting))) {
                Step step = solved.step();
                active = scan.settle(setting, step, active);
                assertThat(scan.ids(active)).as("%s", step).isEqualTo(solved.active());
                assertThat(scan.oscillating()).isEqualTo(solved.oscillating());
                for (int c = 0; c < consumers.size() && solved.solved(); c++) {
                    String where = step + " " + consumers.get(c).id();
                    assertThat(scan.activity(c)).as(where).isEqualTo(solved.activity(consumers.get(c)));
                    // What is dead may float.
                    if (solved.activity(consumers.get(c)) != FeedStrength.DEAD) {
                        assertThat(scan.effectiveV(c))
                                .as(where)
                                .isCloseTo(solved.effectiveV(consumers.get(c)), within(ALIKE_V));
                    }
                }
            }
        }
        return scan.undecided();
    }
}
