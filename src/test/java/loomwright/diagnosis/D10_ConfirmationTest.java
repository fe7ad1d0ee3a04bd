package loomwright.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import loomwright.circuit.Condition;
import loomwright.circuit.fault.BadJoint;
import loomwright.circuit.fault.SingleFault;
import loomwright.diagnosis.DiagnosisReport.Certainty;
import loomwright.diagnosis.DiagnosisReport.Explanation;
import loomwright.diagnosis.DiagnosisReport.NextPurpose;
import loomwright.diagnosis.DiagnosisReport.NextReading;
import loomwright.diagnosis.DiagnosisReport.ProcedureStep;
import loomwright.operation.Contacts;
import loomwright.operation.Probe;
import org.junit.jupiter.api.Test;

/** Nothing is accused for certain before somebody has measured across it; readings can be planned in advance. */
class D10_ConfirmationTest {
    private static final double MOST_UNCONFIRMED = 0.89;
    private static final int MOST_STEPS = 6;
    /** Nothing is measured at the end of the wire that is on the body. */
    private static final List<MeterReading> READINGS =
            readings(Stream.of("battery.plus", "F1.b", "heater.a", "heater.b", "pump.a", "pump.b")
                    .map(p -> Bedside.volts(p, Condition.RUN))
                    .toList());

    private static List<MeterReading> readings(List<Measurement> measurements) {
        List<SingleFault> fault = List.of(new BadJoint("W4", 2));
        return Bedside.exact(Bedside.TWO_LOADS, fault, measurements);
    }

    private static DiagnosisReport ask(List<MeterReading> readings, String... outOfReach) {
        return Bedside.diagnose(new DiagnosisQuestion(Bedside.TWO_LOADS, readings, 1.0, List.of(outOfReach), true));
    }

    private static Measurement measurement(NextReading next) {
        return new Measurement(
                Probe.of(next.red(), next.black()),
                next.quantity(),
                Measurement.stepOf(next.setting().condition()),
                next.setting().switches(),
                next.setting().contacts(),
                null);
    }

    @Test
    void theReadingAcrossThePartConfirms() {
        DiagnosisReport before = ask(READINGS);
        Explanation first = before.explanations().get(0);
        assertThat(first.candidates().get(0).faults().get(0).ids()).containsExactly("W4");
        assertThat(first.probability()).isLessThanOrEqualTo(MOST_UNCONFIRMED);
        assertThat(before.conclusion().certainty()).isEqualTo(Certainty.TO_CONFIRM);
        NextReading across = before.nextReadings().get(0);
        assertThat(across.purpose()).isEqualTo(NextPurpose.CONFIRM);
        assertThat(List.of(across.red(), across.black())).containsExactlyInAnyOrder("heater.b", "body.31");

        List<MeterReading> more = new ArrayList<>(READINGS);
        more.addAll(readings(List.of(measurement(across))));
        DiagnosisReport after = ask(more);
        assertThat(after.conclusion().certainty()).isEqualTo(Certainty.CONFIRMED);
        assertThat(after.explanations()
                        .get(0)
                        .candidates()
                        .get(0)
                        .faults()
                        .get(0)
                        .ids())
                .containsExactly("W4");
        assertThat(after.explanations().get(0).probability()).isGreaterThan(0.9);
    }

    @Test
    void whereNobodyGetsToItStaysUnconfirmedAndNobodyIsSentThere() {
        DiagnosisReport report = ask(READINGS, "body");
        assertThat(report.conclusion().certainty()).isEqualTo(Certainty.NOT_CONFIRMABLE);
        assertThat(report.explanations().get(0).probability()).isLessThanOrEqualTo(MOST_UNCONFIRMED);
        assertThat(report.nextReadings())
                .allSatisfy(n -> assertThat(List.of(n.red(), n.black())).doesNotContain("body.31"));
    }

    @Test
    void aProcedureAsksForNoMoreThanSixReadingsOneAfterTheOther() {
        MeterReading dead = new MeterReading(
                null, "earth", "heater", Condition.RUN, Map.of(), Contacts.EITHER, false, null, null, null, Sign.DEAD);
        Map<Integer, ProcedureStep> steps =
                ask(List.of(dead)).procedure().stream().collect(Collectors.toMap(ProcedureStep::number, step -> step));
        assertThat(steps).containsKey(1);
        assertThat(longest(steps, 1)).isBetween(2, MOST_STEPS);
    }

    private static int longest(Map<Integer, ProcedureStep> steps, int from) {
        ProcedureStep step = Objects.requireNonNull(steps.get(from));
        int most = 0;
        for (DiagnosisReport.Outcome outcome : step.reading().outcomes()) {
            Integer next = outcome.next();
            if (next != null) {
                assertThat(next).isGreaterThan(from);
                most = Math.max(most, longest(steps, next));
            }
        }
        return 1 + most;
    }
}
