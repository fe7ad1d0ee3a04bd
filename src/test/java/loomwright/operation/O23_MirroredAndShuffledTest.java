package loomwright.operation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import loomwright.circuit.Consumer;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.RandomVehicle;
import loomwright.circuit.Shuffled;
import loomwright.network.NetworkLimits;
import loomwright.operation.PlanReadings.StepReadings;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.ShrinkingMode;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Feature 23: the pole that is earthed changes signs and nothing else, the order of the document changes nothing at all. */
class O23_MirroredAndShuffledTest {
    private static final double ALIKE = 1e-9;

    // Mirrored.

    @Property(seed = "23", tries = 80, shrinking = ShrinkingMode.OFF)
    void theOtherPoleEarthedGivesTheMirroredAnswer(
            @ForAll @IntRange(max = 1_000_000) int seed, @ForAll @IntRange(min = 5, max = 60) int parts) {
        compareMirrored(seed, RandomVehicle.Shape.of(parts));
    }

    @ParameterizedTest
    @CsvSource({"1, 240", "2, 240"})
    void largeVehiclesAreMirroredToo(int seed, int parts) {
        compareMirrored(seed, RandomVehicle.Shape.of(parts).withUsualSupply());
    }

    private static void compareMirrored(int seed, RandomVehicle.Shape shape) {
        Plan plan = RandomVehicle.withoutModules(RandomVehicle.of(seed, shape));
        Plan mirrored = Mirror.of(plan);
        Solved was = Solved.of(plan);
        Solved is = Solved.of(mirrored);
        for (Step step : Step.values()) {
            String where = "seed " + seed + ", " + shape + ", " + step;
            SolvedStep one = was.in(step);
            SolvedStep other = is.in(step);
            assertThat(other.oscillating()).as(where).isEqualTo(one.oscillating());
            assertThat(other.isRace()).as(where).isEqualTo(one.isRace());
            for (Part part : plan.parts()) {
                assertThat(other.isActive(part)).as("%s: %s", where, part.id()).isEqualTo(one.isActive(part));
            }
            double largestA = 1e-3;
            for (int i = 0; i < one.branches().size(); i++) {
                largestA = Math.max(largestA, Math.abs(one.currentA(i)));
            }
            for (int w = 0; w < plan.wires().size(); w++) {
                double amps = one.currentA(plan.wires().get(w));
                assertThat(other.currentA(mirrored.wires().get(w)))
                        .as("%s: amps of %s", where, plan.wires().get(w).id())
                        .isCloseTo(-amps, within(ALIKE * largestA));
            }
            for (Consumer consumer : plan.listParts(Consumer.class)) {
                assertThat(other.acrossV(consumer))
                        .as("%s: volts of %s", where, consumer.id())
                        .isCloseTo(-one.acrossV(consumer), within(1e-6));
                assertThat(other.activity(
                                (Consumer) mirrored.findPart(consumer.id()).orElseThrow()))
                        .as("%s: %s", where, consumer.id())
                        .isEqualTo(one.activity(consumer));
            }
        }
    }

    // Shuffled.

    @Property(seed = "231", tries = 60, shrinking = ShrinkingMode.OFF)
    void theOrderOfPartsAndWiresChangesNoDigit(
            @ForAll @IntRange(max = 1_000_000) int seed, @ForAll @IntRange(min = 5, max = 60) int parts)
            throws JsonProcessingException {
        compareShuffled(seed, RandomVehicle.Shape.of(parts));
    }

    @ParameterizedTest
    @CsvSource({"1, 240", "2, 240"})
    void neitherInALargeVehicle(int seed, int parts) throws JsonProcessingException {
        compareShuffled(seed, RandomVehicle.Shape.of(parts));
    }

    private static void compareShuffled(int seed, RandomVehicle.Shape shape) throws JsonProcessingException {
        Plan plan = RandomVehicle.of(seed, shape);
        Plan shuffled = Shuffled.of(plan, new Random(seed));
        Map<String, String> was = read(plan);
        Map<String, String> is = read(shuffled);
        assertThat(is.keySet()).as("seed %s, %s", seed, shape).isEqualTo(was.keySet());
        was.forEach((what, figures) -> assertThat(is.get(what))
                .as("seed %s, %s: %s", seed, shape, what)
                .isEqualTo(figures));
    }

    /** All that is read off a plan as text, by ids and not by the order of the plan. */
    private static Map<String, String> read(Plan plan) throws JsonProcessingException {
        JsonMapper json = JsonMapper.builder().build();
        Map<String, String> read = new TreeMap<>();
        PlanSolver solver = new PlanSolver(NetworkLimits.defaults());
        for (StepReadings step : Reader.read(plan, solver.solve(plan), solver).steps()) {
            String at = step.step() + " ";
            for (var part : step.parts()) {
                read.put(at + part.part(), json.writeValueAsString(part));
            }
            for (var wire : step.wires()) {
                read.put(at + wire.wire(), json.writeValueAsString(wire));
            }
            for (var connector : step.connectors()) {
                read.put(at + connector.connector(), json.writeValueAsString(connector));
            }
            for (var node : step.nodes()) {
                // A node bears the name of the terminal that comes first.
                for (String terminal : node.terminals()) {
                    read.put(at + terminal, node.voltageV() + " " + node.live() + " " + node.floating());
                }
            }
            read.put(at + "settled", String.valueOf(step.settled()));
        }
        return read;
    }
}
