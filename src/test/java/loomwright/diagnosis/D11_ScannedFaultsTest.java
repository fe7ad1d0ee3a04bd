package loomwright.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import loomwright.circuit.Condition;
import loomwright.circuit.Consumer;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import loomwright.circuit.RandomVehicle;
import loomwright.circuit.TerminalRef;
import loomwright.circuit.Wire;
import loomwright.circuit.fault.SingleFault;
import loomwright.circuit.fault.SingleFaults;
import loomwright.circuit.fault.SizedFault;
import loomwright.operation.Contacts;
import loomwright.operation.Point;
import loomwright.operation.Probe;
import loomwright.operation.Quantity;
import loomwright.operation.Step;
import loomwright.operation.UsualIntent;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** A fault that changes a few resistances is looked at by a change to the sound plan's solution: it shows what the full solution shows. */
class D11_ScannedFaultsTest {
    private static final double CLOSE_V = 2e-6;
    /** Which of the faults less likely than this are among the sixty that are looked at more closely is a matter of the last digit. */
    private static final double RANKED = 0.005;

    private static final double RANKED_ALIKE = 0.001;

    static Stream<Plan> plans() {
        return Stream.concat(
                        Plans.exampleNames().stream().map(Plans::example),
                        IntStream.range(0, 3).mapToObj(i -> RandomVehicle.of(101 + i, 12 + 3 * i)))
                .map(UsualIntent::complete);
    }

    /** Every fault, in three sizes: each terminal to earth and along each wire, in five steps, and each consumer looked at. */
    @ParameterizedTest
    @MethodSource("plans")
    void showsWhatTheFullSolutionShows(Plan plan) {
        List<Measurement> all = measurements(plan);
        Bench quick = Bedside.bench(plan);
        Bench full = Bedside.bench(plan, false);
        quick.measure(List.of(), Set.of(), all);
        full.measure(List.of(), Set.of(), all);
        int tried = 0;
        int scanned = 0;
        for (SingleFault fault : SingleFaults.listWithinParts(plan)) {
            for (SingleFault sized : sizes(fault)) {
                int before = quick.scanned();
                Bench.Measured shown =
                        quick.measure(List.of(sized), Set.of(), all).orElse(null);
                tried++;
                if (quick.scanned() > before && shown != null) {
                    scanned++;
                    Bench.Measured wanted =
                            full.measure(List.of(sized), Set.of(), all).orElseThrow();
                    assertThat(differences(all, shown, wanted)).as("%s", sized).isEmpty();
                    assertThat(shown.opening()).as("%s", sized).isEqualTo(wanted.opening());
                    assertThat(shown.openingBeforeAReading()).as("%s", sized).isEqualTo(wanted.openingBeforeAReading());
                    assertThat(shown.melts()).as("%s", sized).isEqualTo(wanted.melts());
                }
            }
        }
        assertThat(scanned).as("of " + tried).isGreaterThan(tried / 2);
    }

    /** No fault that the full solution ranks is dropped, and the ranking is the same. */
    @ParameterizedTest
    @MethodSource("plans")
    void theRankingIsThatOfFullSolutions(Plan plan) {
        Random random = new Random(plan.wires().size());
        List<SingleFault> faults = SingleFaults.listWithinParts(plan);
        for (int run = 0; run < 3; run++) {
            SingleFault fault = faults.get(random.nextInt(faults.size()));
            List<Measurement> points = new ArrayList<>();
            for (int i = 0; i < 4; i++) {
                Wire wire = plan.wires().get(random.nextInt(plan.wires().size()));
                points.add(new Measurement(
                        Probe.toEarth(wire.to().toString()), Quantity.VOLTS, i == 3 ? Step.CRANK : Step.RUN, Map.of()));
            }
            Bench full = Bedside.bench(plan, false);
            PredictedFigures figures =
                    full.measure(List.of(fault), Set.of(), points).orElseThrow().figures();
            DiagnosisQuestion question = DiagnosisQuestion.of(plan, Bedside.noisy(figures, points, 1, random));
            Diagnosis byFull = new Diagnosis(question, DiagnosisLimits.defaults(), full);
            Diagnosis byChange = new Diagnosis(question, DiagnosisLimits.defaults(), Bedside.bench(plan));
            Map<String, Double> wanted = ranking(byFull);
            Map<String, Double> found = ranking(byChange);
            Stream.concat(wanted.keySet().stream(), found.keySet().stream())
                    .filter(one -> Math.max(wanted.getOrDefault(one, 0.0), found.getOrDefault(one, 0.0)) >= RANKED)
                    .forEach(one -> assertThat(found.getOrDefault(one, 0.0))
                            .as("%s: %s", fault, one)
                            .isCloseTo(wanted.getOrDefault(one, 0.0), within(RANKED_ALIKE)));
        }
    }

    /** Each fault with its probability, whatever its size. */
    private static Map<String, Double> ranking(Diagnosis diagnosis) {
        Map<String, Double> ranking = new LinkedHashMap<>();
        diagnosis.groups().stream()
                .flatMap(List::stream)
                .forEach(c -> ranking.merge(
                        c.faults().stream()
                                .map(f -> f.kind() + " " + f.ids())
                                .sorted()
                                .toList()
                                .toString(),
                        diagnosis.probability(c),
                        Double::sum));
        return ranking;
    }

    private static List<String> differences(List<Measurement> all, Bench.Measured shown, Bench.Measured wanted) {
        return IntStream.range(0, all.size())
                .filter(i -> Math.abs(shown.figures().at(i) - wanted.figures().at(i)) > CLOSE_V
                        || Math.abs(shown.figures().open(i) - wanted.figures().open(i)) > CLOSE_V)
                .mapToObj(i -> all.get(i) + ": " + shown.figures().at(i) + " for "
                        + wanted.figures().at(i))
                .toList();
    }

    private static List<SingleFault> sizes(SingleFault fault) {
        return fault instanceof SizedFault sized
                ? List.of(
                        sized.withSize(sized.smallest()),
                        sized.withSize(Math.sqrt(sized.smallest() * sized.largest())),
                        sized.withSize(sized.largest()))
                : List.of(fault);
    }

    private static List<Measurement> measurements(Plan plan) {
        Set<TerminalRef> terminals = new LinkedHashSet<>();
        plan.wires().forEach(w -> terminals.addAll(List.of(w.from(), w.to())));
        List<Measurement> all = new ArrayList<>();
        for (Step step : List.of(Step.OFF, Step.RUN, Step.CRANK, Step.RUNNING, Step.OFF_AGAIN)) {
            terminals.forEach(
                    t -> all.add(new Measurement(Probe.toEarth(t.toString()), Quantity.VOLTS, step, Map.of())));
            plan.wires()
                    .forEach(w -> all.add(new Measurement(
                            Probe.of(w.from().toString(), w.to().toString()), Quantity.VOLTS, step, Map.of())));
        }
        for (Consumer consumer : plan.listParts(Consumer.class)) {
            Probe across = new Probe(
                    new Point(consumer.terminal(consumer.feedTerminal())),
                    new Point(consumer.terminal(consumer.returnTerminal())));
            all.add(new Measurement(
                    across,
                    Quantity.VOLTS,
                    Measurement.stepOf(Condition.RUN),
                    Map.of(),
                    Contacts.EITHER,
                    consumer.id()));
        }
        return all;
    }
}
