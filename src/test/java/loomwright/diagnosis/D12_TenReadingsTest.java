package loomwright.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import loomwright.answer.Progress;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import loomwright.circuit.fault.SingleFault;
import loomwright.circuit.fault.SingleFaults;
import loomwright.diagnosis.DiagnosisReport.Certainty;
import loomwright.diagnosis.DiagnosisReport.Explanation;
import loomwright.diagnosis.DiagnosisReport.NextReading;
import loomwright.diagnosis.DiagnosisReport.SuspectFault;
import loomwright.network.NetworkLimits;
import loomwright.operation.Probe;
import loomwright.operation.Quantity;
import loomwright.operation.UsualIntent;
import loomwright.readings.ReadingsAnswer;
import loomwright.readings.ReadingsQuestion;
import loomwright.readings.ReadingsSheet.Reading;
import loomwright.readings.ReadingsSheet.Shows;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Of a fault of a demo plan that moves any reading of its sheet out of its bounds: whoever has come to the first such reading and goes on
 * as the service says has the fault among the first three explanations after ten readings at most. Fuses that it opens are blown.
 */
class D12_TenReadingsTest {
    private static final int MOST_READINGS = 10;
    private static final int MOST_FUSES = 4;
    private static final double FLOATING_V = 0.05;

    @ParameterizedTest
    @CsvSource({
        "otter-6v-positive-earth, 12, 3",
        "sandpiper-as-built, 29, 5",
        "sandpiper-bypass-relay, 31, 7",
        "sandpiper-electronic-module, 31, 11",
        "sandpiper-unguarded-bypass, 31, 13"
    })
    void tenReadingsFindIt(String name, int stride, int start) {
        Plan plan = UsualIntent.complete(Plans.example(name));
        List<Reading> sheet = ReadingsAnswer.of(ReadingsQuestion.of(plan), NetworkLimits.defaults(), Progress.UNWATCHED)
                .result()
                .readings();
        List<SingleFault> faults = SingleFaults.listWithinParts(plan);
        Bench bench = Bedside.bench(plan);
        List<String> missed = new ArrayList<>();
        int shown = 0;
        for (int f = start; f < faults.size(); f += stride) {
            SingleFault fault = faults.get(f);
            Set<String> blown = blown(bench, fault, sheet);
            Optional<Reading> first =
                    sheet.stream().filter(r -> isOut(bench, fault, blown, r)).findFirst();
            if (first.isPresent()) {
                shown++;
                if (!isFound(plan, bench, fault, blown, of(first.get()))) {
                    missed.add(fault.toString());
                }
            }
        }
        assertThat(shown).isGreaterThan(4);
        assertThat(missed).as("missed of " + shown).isEmpty();
    }

    private static Measurement of(Reading r) {
        return new Measurement(
                Probe.of(r.red(), r.black()),
                r.quantity(),
                Measurement.stepOf(r.condition()),
                r.switches(),
                r.contacts(),
                null);
    }

    private static Set<String> blown(Bench bench, SingleFault fault, List<Reading> sheet) {
        Set<String> blown = new LinkedHashSet<>();
        List<Measurement> all = sheet.stream().map(D12_TenReadingsTest::of).toList();
        for (int i = 0; i < MOST_FUSES; i++) {
            Set<String> opening = bench.measure(List.of(fault), Set.copyOf(blown), all)
                    .map(Bench.Measured::opening)
                    .orElse(Set.of());
            if (!blown.addAll(opening)) {
                break;
            }
        }
        return Set.copyOf(blown);
    }

    private static Optional<Double> shown(Bench bench, SingleFault fault, Set<String> blown, Measurement m) {
        return bench.measure(List.of(fault), blown, List.of(m))
                .filter(measured -> !measured.melts())
                .map(measured -> {
                    PredictedFigures figures = measured.figures();
                    return m.step().engineTurning() ? (figures.at(0) + figures.open(0)) / 2 : figures.at(0);
                });
    }

    private static boolean isOut(Bench bench, SingleFault fault, Set<String> blown, Reading r) {
        Optional<Double> shown = shown(bench, fault, blown, of(r));
        if (shown.isEmpty()) {
            return false;
        }
        double figure = shown.get();
        Double lowest = r.lowest();
        Double highest = r.highest();
        if (r.shows() == Shows.FIGURE && lowest != null && highest != null) {
            return figure < lowest || figure > highest;
        }
        return r.quantity() == Quantity.OHMS ? figure < Bench.OPEN_OHM : Math.abs(figure) > FLOATING_V;
    }

    private static boolean isFound(Plan plan, Bench bench, SingleFault fault, Set<String> blown, Measurement first) {
        List<MeterReading> readings = new ArrayList<>();
        Measurement next = first;
        while (true) {
            readings.add(Bedside.reading(next, shown(bench, fault, blown, next).orElseThrow()));
            DiagnosisReport report = Bedside.diagnose(plan, readings);
            boolean done = report.certainty() == Certainty.CONFIRMED
                    || report.nextReadings().isEmpty();
            if (done || readings.size() == MOST_READINGS) {
                return report.explanations().stream().limit(3).anyMatch(e -> names(e, fault, blown));
            }
            NextReading advised = report.nextReadings().get(0);
            next = new Measurement(
                    Probe.of(advised.red(), advised.black()),
                    advised.quantity(),
                    Measurement.stepOf(advised.condition()),
                    advised.switches(),
                    advised.contacts(),
                    null);
        }
    }

    /** The fault, and beside it nothing but fuses that it has blown. */
    private static boolean names(Explanation explanation, SingleFault fault, Set<String> blown) {
        return explanation.candidates().stream()
                .anyMatch(c -> c.faults().stream().anyMatch(f -> isSame(f, fault))
                        && c.faults().stream()
                                .allMatch(f -> isSame(f, fault)
                                        || (f.kind() == SingleFault.Kind.FUSE_BLOWN && blown.containsAll(f.ids()))));
    }

    private static boolean isSame(SuspectFault suspect, SingleFault fault) {
        return suspect.kind() == fault.kind() && suspect.ids().equals(fault.ids());
    }
}
