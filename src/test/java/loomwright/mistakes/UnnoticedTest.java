package loomwright.mistakes;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Stream;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import loomwright.circuit.RandomVehicle;
import loomwright.circuit.WholeCar;
import loomwright.circuit.fault.SingleFault;
import loomwright.circuit.fault.SingleFaults;
import loomwright.network.NetworkLimits;
import loomwright.operation.PlanSolver;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Steps that a quick look finds unchanged are not solved in full: what is told of a mistake is the same as if all were. */
class UnnoticedTest {
    /** A step is solved from where the one before ended, which may be told by other digits far behind those that are shown. */
    private static boolean isAlike(double one, double other) {
        return Math.abs(one - other) <= 1e-6 * (1 + Math.abs(other));
    }

    private static Stream<Plan> plans() {
        Stream<Plan> examples = Plans.exampleNames().stream().map(Plans::example);
        Stream<Plan> random = Stream.of(3L, 14L, 15L, 92L, 65L, 35L).map(seed -> RandomVehicle.of(seed, 40));
        return Stream.of(examples, random, Stream.of(WholeCar.of(40, 4, 1))).flatMap(all -> all);
    }

    @ParameterizedTest
    @MethodSource("plans")
    void whatIsToldOfAMistakeIsThatOfFullSolutions(Plan plan) {
        PlanSolver solver = new PlanSolver(NetworkLimits.defaults());
        AtomicInteger takenOver = new AtomicInteger();
        SoundLoads soundLoads = new SoundLoads();
        Unnoticed unnoticed = new Unnoticed(new Capacities(plan), soundLoads);
        Consequences quick = new Consequences(plan, solver, soundLoads, (scan, faulty, sound) -> {
            boolean sure = unnoticed.isSure(scan, faulty, sound);
            takenOver.addAndGet(sure ? 1 : 0);
            return sure;
        });
        Consequences full = new Consequences(plan, solver, soundLoads, (scan, faulty, sound) -> false);
        List<SingleFault> faults = Stream.of(SingleFaults.list(plan), SingleFaults.listContacts(plan))
                .flatMap(List::stream)
                .toList();
        for (SingleFault fault : faults) {
            assertThat(quick.of(fault, solver))
                    .usingRecursiveComparison()
                    .withEqualsForType(UnnoticedTest::isAlike, Double.class)
                    .as(fault.toString())
                    .isEqualTo(full.of(fault, solver));
        }
        if (quick.settings() > 1 && quick.withoutMistake().fusesBlown().isEmpty()) {
            assertThat(takenOver.get()).isPositive();
        }
    }
}
