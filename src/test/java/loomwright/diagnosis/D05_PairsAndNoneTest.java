package loomwright.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import loomwright.circuit.Condition;
import loomwright.circuit.fault.BadJoint;
import loomwright.circuit.fault.BlownFuse;
import loomwright.circuit.fault.SingleFault;
import loomwright.diagnosis.DiagnosisReport.Explanation;
import loomwright.diagnosis.DiagnosisReport.Suspect;
import loomwright.diagnosis.DiagnosisReport.SuspectFault;
import loomwright.diagnosis.DiagnosisReport.Verdict;
import org.junit.jupiter.api.Test;

/** Two faults at once, readings that nothing explains, and a reading that is simply wrong. */
class D05_PairsAndNoneTest {
    private static final List<Measurement> POINTS = Stream.of(
                    "battery.plus", "F1.a", "F1.b", "heater.a", "heater.b", "F2.a", "F2.b", "pump.a", "pump.b")
            .map(p -> Bedside.volts(p, Condition.RUN))
            .toList();

    @Test
    void twoFaultsInTwoBranchesAreFoundWhereNoSingleOneExplains() {
        DiagnosisReport report = Bedside.diagnose(
                Bedside.TWO_LOADS,
                Bedside.exact(Bedside.TWO_LOADS, List.of(new BlownFuse("F1"), new BadJoint("W6", 0.8)), POINTS));
        assertThat(report.conclusion().verdict()).isEqualTo(Verdict.FAULT_PAIR);
        Suspect first = report.explanations().get(0).candidates().get(0);
        assertThat(first.faults()).extracting(f -> f.ids().get(0)).containsExactlyInAnyOrder("F1", "W6");
        assertThat(ohms(first)).isCloseTo(0.8, within(0.04));
    }

    /** The current of one passes the other, so that neither size is right without the other fault. */
    @Test
    void twoBadJointsInOneBranchAreSizedTogether() {
        DiagnosisReport report = Bedside.diagnose(
                Bedside.TWO_LOADS,
                Bedside.exact(Bedside.TWO_LOADS, List.of(new BadJoint("W3", 1.5), new BadJoint("W4", 3)), POINTS));
        assertThat(report.conclusion().verdict()).isEqualTo(Verdict.FAULT_PAIR);
        Suspect first = report.explanations().get(0).candidates().get(0);
        assertThat(first.faults())
                .allSatisfy(
                        f -> assertThat(f.resistanceOhm()).isCloseTo(f.ids().contains("W3") ? 1.5 : 3, within(0.15)));
    }

    private static double ohms(Suspect suspect) {
        return suspect.faults().stream()
                .map(SuspectFault::resistanceOhm)
                .filter(ohm -> ohm != null)
                .findFirst()
                .orElseThrow();
    }

    @Test
    void noPairIsTriedWhereOneFaultIsEnough() {
        DiagnosisReport report = Bedside.diagnose(
                Bedside.TWO_LOADS, Bedside.exact(Bedside.TWO_LOADS, List.of(new BlownFuse("F1")), POINTS));
        assertThat(report.tried().pairs()).isZero();
        assertThat(report.explanations()).allMatch(e -> e.faultCount() <= 1);
    }

    /** More volts at the pump than the battery has: no fault of the set does that. */
    @Test
    void readingsThatNothingExplainsAreSaidToBeSo() {
        List<MeterReading> readings = new ArrayList<>(Bedside.exact(Bedside.TWO_LOADS, List.of(), POINTS));
        readings.set(7, Bedside.reading(POINTS.get(7), 20));
        readings.set(3, Bedside.reading(POINTS.get(3), -5));
        DiagnosisReport report = Bedside.diagnose(Bedside.TWO_LOADS, readings);
        assertThat(report.conclusion().verdict()).isEqualTo(Verdict.UNEXPLAINED);
        assertThat(report.conclusion().summary().get(0).code()).isEqualTo(DiagnosisText.UNEXPLAINED);
        assertThat(report.explanations()).isNotEmpty().noneMatch(Explanation::explains);
    }

    @Test
    void aReadingThatAloneStandsAgainstAnExplanationIsToBeTakenAgain() {
        List<MeterReading> readings =
                new ArrayList<>(Bedside.exact(Bedside.TWO_LOADS, List.of(new BlownFuse("F1")), POINTS));
        readings.set(7, Bedside.reading(POINTS.get(7), 20));
        DiagnosisReport report = Bedside.diagnose(Bedside.TWO_LOADS, readings);
        assertThat(report.conclusion().verdict()).isEqualTo(Verdict.CHECK_READINGS);
        Explanation first = report.explanations().get(0);
        assertThat(Bedside.accuses(first.candidates().get(0), SingleFault.Kind.FUSE_BLOWN, "F1"))
                .isTrue();
        assertThat(first.notExplained()).containsExactly(7);
        assertThat(report.doubts())
                .singleElement()
                .satisfies(d -> assertThat(d.readings()).containsExactly(7));
    }
}
