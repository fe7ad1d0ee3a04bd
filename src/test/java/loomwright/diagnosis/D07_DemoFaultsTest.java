package loomwright.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import loomwright.circuit.Joint;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import loomwright.circuit.Switch;
import loomwright.circuit.TerminalRef;
import loomwright.circuit.Wire;
import loomwright.circuit.fault.BadJoint;
import loomwright.circuit.fault.SingleFault;
import loomwright.circuit.fault.SingleFaults;
import loomwright.operation.Probe;
import loomwright.operation.Quantity;
import loomwright.operation.Step;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Faults of the demo plans are put in and measured with a plain meter, every wired point to earth, with the key on, the
 * lights lit, and while cranking; each figure is off evenly within the meter's accuracy, the supply within 2 per cent, joints have
 * 0.2 to 10 ohm. The fault is to be in the first three explanations. A fault that moves no reading by 0.1 V cannot be told from a
 * sound plan and is left out.
 */
class D07_DemoFaultsTest {
    private static final double SHOWS_V = 0.1;

    /** With a fixed seed each; every so many-th fault, so that all plans together make some hundred runs. */
    @ParameterizedTest
    @CsvSource({
        "otter-6v-positive-earth, 4, 1",
        "sandpiper-as-built, 11, 2",
        "sandpiper-bypass-relay, 13, 3",
        "sandpiper-electronic-module, 12, 4",
        "sandpiper-unguarded-bypass, 13, 5"
    })
    void aFaultPutInIsAmongTheFirstThree(String name, int stride, long seed) {
        Plan plan = Plans.example(name);
        List<Measurement> points = points(plan);
        Bench bench = Bedside.bench(plan);
        Random random = new Random(seed);
        PredictedFigures sound =
                bench.measure(List.of(), Set.of(), points).orElseThrow().figures();
        List<SingleFault> faults = SingleFaults.list(plan);
        int runs = 0;
        List<String> missed = new ArrayList<>();
        for (int f = (int) seed % stride; f < faults.size(); f += stride) {
            SingleFault fault = sized(faults.get(f), random);
            PredictedFigures real = real(bench, fault, points, random);
            if (real != null && shows(real, sound)) {
                runs++;
                List<MeterReading> readings = Bedside.noisy(real, points, 0.98 + 0.04 * random.nextDouble(), random);
                DiagnosisQuestion question = DiagnosisQuestion.of(plan, readings);
                if (rank(new Diagnosis(question, DiagnosisLimits.defaults(), bench), fault) > 3) {
                    missed.add(fault.toString());
                }
            }
        }
        assertThat(runs).isGreaterThanOrEqualTo(12);
        assertThat(missed).as("missed of " + runs).isEmpty();
    }

    private static List<Measurement> points(Plan plan) {
        Map<String, String> lit = new TreeMap<>();
        for (Switch s : plan.listParts(Switch.class)) {
            if (s.free()) {
                lit.put(s.id(), s.positions().get(s.positions().size() - 1).name());
            }
        }
        Set<TerminalRef> terminals = new LinkedHashSet<>();
        Set<String> splices = new HashSet<>();
        for (Wire wire : plan.wires()) {
            for (TerminalRef terminal : List.of(wire.from(), wire.to())) {
                if (!(plan.findPart(terminal.part()).orElseThrow() instanceof Joint) || splices.add(terminal.part())) {
                    terminals.add(terminal);
                }
            }
        }
        List<Measurement> points = new ArrayList<>();
        for (TerminalRef terminal : terminals) {
            Probe probe = Probe.toEarth(terminal.toString());
            points.add(new Measurement(probe, Quantity.VOLTS, Step.RUN, lit));
            points.add(new Measurement(probe, Quantity.VOLTS, Step.CRANK, Map.of()));
        }
        return points;
    }

    private static SingleFault sized(SingleFault fault, Random random) {
        return fault instanceof BadJoint joint ? joint.withSize(0.2 * Math.pow(50, random.nextDouble())) : fault;
    }

    /**
     * Measured before the fuses blow that it opens, or after, as it happens; after, if they open before a reading could be taken.
     * Null where a wire melts before.
     */
    private static @Nullable PredictedFigures real(
            Bench bench, SingleFault fault, List<Measurement> points, Random random) {
        Set<String> blown = new LinkedHashSet<>();
        Bench.Measured measured =
                bench.measure(List.of(fault), Set.copyOf(blown), points).orElseThrow();
        boolean early = random.nextBoolean();
        while (early
                ? !measured.openingBeforeAReading().isEmpty()
                : !measured.opening().isEmpty()) {
            blown.addAll(measured.opening());
            measured = bench.measure(List.of(fault), Set.copyOf(blown), points).orElseThrow();
        }
        return measured.melts() ? null : measured.figures();
    }

    private static boolean shows(PredictedFigures real, PredictedFigures sound) {
        for (int i = 0; i < sound.count(); i++) {
            if (Math.abs(real.at(i) - sound.at(i)) >= SHOWS_V) {
                return true;
            }
        }
        return false;
    }

    /** Of the explanation that names the fault; a large number if none does. */
    private static int rank(Diagnosis diagnosis, SingleFault fault) {
        for (int g = 0; g < diagnosis.groups().size(); g++) {
            if (diagnosis.groups().get(g).stream()
                    .anyMatch(c ->
                            c.faults().size() == 1 && Bedside.same(c.faults().get(0), fault))) {
                return g + 1;
            }
        }
        return Integer.MAX_VALUE;
    }
}
