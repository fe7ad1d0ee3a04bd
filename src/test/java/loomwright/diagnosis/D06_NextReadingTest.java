package loomwright.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import loomwright.circuit.Condition;
import loomwright.circuit.fault.BadJoint;
import loomwright.circuit.fault.BlownFuse;
import loomwright.circuit.fault.SingleFault;
import loomwright.diagnosis.DiagnosisReport.NextReading;
import loomwright.operation.Probe;
import org.junit.jupiter.api.Test;

/** What to measure next. */
class D06_NextReadingTest {
    private static final List<Measurement> FEW = Stream.of("battery.plus", "heater.a", "pump.a")
            .map(p -> Bedside.volts(p, Condition.RUN))
            .toList();

    private static DiagnosisReport withMore(SingleFault fault, List<Measurement> points) {
        return Bedside.diagnose(Bedside.TWO_LOADS, Bedside.exact(Bedside.TWO_LOADS, List.of(fault), points));
    }

    @Test
    void theReadingThatIsAdvisedMakesTheTieSmaller() {
        DiagnosisReport before = withMore(new BadJoint("W2", 2), FEW);
        NextReading next = before.nextReadings().get(0);
        List<Measurement> more = new ArrayList<>(FEW);
        more.add(new Measurement(
                Probe.of(next.from(), next.to()), next.quantity(), next.condition(), Map.copyOf(next.switches())));
        DiagnosisReport after = withMore(new BadJoint("W2", 2), more);
        assertThat(after.explanations().get(0).candidates().size())
                .isLessThan(before.explanations().get(0).candidates().size());
        assertThat(after.explanations().get(0).candidates())
                .anySatisfy(c -> assertThat(c.faults().get(0).ids()).containsExactly("W2"));
    }

    @Test
    void itSaysWhatEachLeadingCandidateWouldShow() {
        DiagnosisReport report = withMore(new BlownFuse("F1"), FEW);
        NextReading next = report.nextReadings().get(0);
        assertThat(next.expected()).hasSizeGreaterThan(1);
        assertThat(next.expected().stream().map(e -> e.shown()).distinct().count())
                .isGreaterThan(1);
        assertThat(next.gainBits()).isPositive();
    }

    /** Two candidates as likely as each other that a reading tells apart: one bit. */
    @Test
    void tellingTwoEqualsApartIsWorthOneBit() {
        List<MeterReading> readings = Bedside.exact(Bedside.TWO_LOADS, List.of(), FEW);
        DiagnosisQuestion question = new DiagnosisQuestion(Bedside.TWO_LOADS, readings, MeterAccuracy.USUAL);
        Bench bench = Bedside.bench(Bedside.TWO_LOADS);
        Trials trials = new Trials(bench, new Likelihood(question));
        List<FaultCandidate> two = Stream.of("F1", "F2")
                .map(f -> trials.of(List.of(new BlownFuse(f)), Set.of()).orElseThrow())
                .toList();
        List<NextReadings.Chosen> chosen = new NextReadings(bench, question).of(two, List.of(0.3, 0.3));
        assertThat(chosen)
                .singleElement()
                .satisfies(c -> assertThat(c.gainBits()).isCloseTo(1, within(1e-9)));
    }

    @Test
    void nothingIsAdvisedThatWasMeasuredAlready() {
        DiagnosisReport report = withMore(new BlownFuse("F1"), FEW);
        assertThat(report.nextReadings())
                .isNotEmpty()
                .noneMatch(n -> n.to().equals("earth")
                        && n.condition() == Condition.RUN
                        && List.of("battery.plus", "heater.a", "pump.a").contains(n.from()));
    }
}
