package loomwright.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Stream;
import loomwright.circuit.Condition;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import loomwright.diagnosis.DiagnosisReport.Doubt;
import loomwright.diagnosis.DiagnosisReport.DoubtKind;
import loomwright.diagnosis.DiagnosisReport.Verdict;
import loomwright.operation.Probe;
import loomwright.operation.Quantity;
import org.junit.jupiter.api.Test;

/** A slip of whoever measured is asked about before anything is accused. */
class D09_DoubtsTest {
    private static final List<Measurement> POINTS = Stream.of(
                    "battery.plus", "F1.a", "F1.b", "heater.a", "F2.a", "F2.b", "pump.a")
            .map(p -> Bedside.volts(p, Condition.RUN))
            .toList();

    private static DiagnosisReport withFactor(int which, double factor) {
        List<MeterReading> readings = new ArrayList<>(Bedside.exact(Bedside.TWO_LOADS, List.of(), POINTS));
        double shown = Objects.requireNonNull(readings.get(which).voltageV());
        readings.set(which, Bedside.reading(POINTS.get(which), factor * shown));
        return Bedside.diagnose(Bedside.TWO_LOADS, readings);
    }

    private static void asks(DiagnosisReport report, DoubtKind kind, int which) {
        assertThat(report.conclusion().verdict()).isEqualTo(Verdict.CHECK_READINGS);
        assertThat(report.doubts()).hasSize(1);
        Doubt doubt = report.doubts().get(0);
        assertThat(doubt.kind()).isEqualTo(kind);
        assertThat(doubt.readings()).containsExactly(which);
        assertThat(Objects.requireNonNull(doubt.corrected()).voltageV()).isCloseTo(12.5, within(0.2));
    }

    @Test
    void leadsTheOtherWayRoundAreAskedAbout() {
        asks(withFactor(2, -1), DoubtKind.LEADS_REVERSED, 2);
    }

    @Test
    void aRangeReadWronglyIsAskedAbout() {
        asks(withFactor(4, 0.001), DoubtKind.FACTOR_THOUSAND, 4);
    }

    @Test
    void nothingIsAskedWhereTheReadingsCanBeTakenAsTheyAre() {
        assertThat(withFactor(0, 1).doubts()).isEmpty();
    }

    /** The lamp has its volts though its switch is drawn off: more likely it stood at on than it is bridged. */
    @Test
    void aSwitchThatStoodElsewhereIsAskedAbout() {
        Plan plan = Plans.of(
                "{'kind':'battery','id':'battery'},{'kind':'earth','id':'body'},"
                        + "{'kind':'switch','id':'lights','terminals':['30','56'],"
                        + "'positions':[{'name':'off','joins':[]},{'name':'on','joins':[['30','56']]}]},"
                        + "{'kind':'load','id':'lamp','resistanceOhm':6,'meantLive':['run']}",
                Bedside.wire("W1", "battery.minus", "body.31", 0.001)
                        + "," + Bedside.wire("W2", "battery.plus", "lights.30", 0.01)
                        + "," + Bedside.wire("W3", "lights.56", "lamp.a", 0.03)
                        + "," + Bedside.wire("W4", "lamp.b", "body.31", 0.01));
        List<Measurement> on = Stream.of("battery.plus", "lights.56", "lamp.a")
                .map(p -> new Measurement(
                        Probe.toEarth(p), Quantity.VOLTS, Measurement.stepOf(Condition.RUN), Map.of("lights", "on")))
                .toList();
        List<MeterReading> told = Bedside.exact(plan, List.of(), on).stream()
                .map(r -> Bedside.reading(
                        Bedside.volts(String.valueOf(r.red()), Condition.RUN), Objects.requireNonNull(r.voltageV())))
                .toList();
        DiagnosisReport report = Bedside.diagnose(plan, told);
        assertThat(report.conclusion().verdict()).isEqualTo(Verdict.CHECK_READINGS);
        assertThat(report.doubts()).extracting(Doubt::kind).containsExactly(DoubtKind.SWITCH_ELSEWHERE);
        assertThat(report.doubts().get(0).switches()).containsExactly(Map.entry("lights", "on"));
    }
}
