package loomwright.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.Set;
import loomwright.answer.InputError;
import loomwright.answer.OutOfTime;
import loomwright.answer.Progress;
import loomwright.answer.RejectedInput;
import loomwright.circuit.Condition;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import loomwright.network.NetworkLimits;
import loomwright.operation.Contacts;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.Test;

/** What counts as a reading, and what is refused. */
class D01_ReadingsTest {
    private static MeterReading volts(String from, Condition condition, Map<String, String> switches) {
        return new MeterReading(
                from, "earth", null, condition, switches, Contacts.EITHER, false, 12.0, null, null, null);
    }

    private static void rejects(ThrowingCallable call, InputError.Code code, String pointer) {
        assertThatThrownBy(call)
                .isInstanceOfSatisfying(
                        RejectedInput.class,
                        r -> assertThat(r.faults()).anySatisfy(f -> {
                            assertThat(f.code()).isEqualTo(code);
                            assertThat(f.pointer()).isEqualTo(pointer);
                        }));
    }

    private static DiagnosisReport ask(MeterReading... readings) {
        return Bedside.diagnose(Bedside.TWO_LOADS, List.of(readings));
    }

    @Test
    void aReadingIsOneOfVoltsOhmsAndOpen() {
        rejects(
                () -> new MeterReading(
                        "F1.a", "earth", null, Condition.RUN, Map.of(), Contacts.EITHER, false, 1.0, 1.0, null, null),
                InputError.Code.CONTRADICTION,
                "");
        rejects(
                () -> new MeterReading(
                        "F1.a", "earth", null, Condition.RUN, Map.of(), Contacts.EITHER, false, null, null, null, null),
                InputError.Code.CONTRADICTION,
                "");
    }

    @Test
    void aPointIsATerminalOrEarth() {
        rejects(() -> volts("F1", Condition.RUN, Map.of()), InputError.Code.MALFORMED, "/red");
        rejects(
                () -> ask(volts("F9.a", Condition.RUN, Map.of())),
                InputError.Code.UNKNOWN_REFERENCE,
                "/readings/0/red");
    }

    @Test
    void onlyAFreeSwitchCanBeSetAndOnlyToAPositionItHas() {
        rejects(
                () -> ask(volts("F1.a", Condition.RUN, Map.of("F1", "lit"))),
                InputError.Code.UNKNOWN_REFERENCE,
                "/readings/0/switches/F1");
        rejects(
                () -> Bedside.diagnose(
                        Plans.example("otter-6v-positive-earth"),
                        List.of(volts("head.a", Condition.RUN, Map.of("lights", "dim")))),
                InputError.Code.UNKNOWN_REFERENCE,
                "/readings/0/switches/lights");
    }

    /** A part looked at is a reading; what nobody can see of it is refused. */
    @Test
    void aSignIsOneOfAConsumer() {
        rejects(
                () -> ask(new MeterReading(
                        null,
                        "earth",
                        "F1",
                        Condition.RUN,
                        Map.of(),
                        Contacts.EITHER,
                        false,
                        null,
                        null,
                        null,
                        Sign.DEAD)),
                InputError.Code.UNKNOWN_REFERENCE,
                "/readings/0/part");
        DiagnosisReport report = ask(new MeterReading(
                null, "earth", "heater", Condition.RUN, Map.of(), Contacts.EITHER, false, null, null, null, Sign.DEAD));
        assertThat(report.conclusion().verdict()).isEqualTo(DiagnosisReport.Verdict.SINGLE_FAULT);
        assertThat(report.conclusion().certainty()).isEqualTo(DiagnosisReport.Certainty.UNDECIDED);
        assertThat(report.nextReadings()).isNotEmpty();
    }

    private static MeterReading seen(String part, Sign sign) {
        return new MeterReading(
                null, "earth", part, Condition.RUN, Map.of(), Contacts.EITHER, false, null, null, null, sign);
    }

    /** The feed is right: what is weak has a bad earth, or is at fault itself. */
    @Test
    void aComplaintIsNotAnsweredWithASoundVehicle() {
        MeterReading fed = Bedside.reading(Bedside.volts("heater.a", Condition.RUN), 12.53);
        DiagnosisReport report = ask(seen("heater", Sign.WEAK), fed);
        assertThat(report.conclusion().verdict()).isEqualTo(DiagnosisReport.Verdict.SINGLE_FAULT);
        assertThat(report.explanations().get(0).candidates())
                .allSatisfy(c -> assertThat(c.faults().get(0).ids()).containsAnyOf("heater", "W4"));
        assertThat(report.conclusion().certainty()).isNotEqualTo(DiagnosisReport.Certainty.CONFIRMED);
        assertThat(report.explanations())
                .allSatisfy(each -> assertThat(each.faultCount()).isPositive());
        assertThat(report.nextReadings()).isNotEmpty();
        assertThat(report.doubts()).isEmpty();
    }

    @Test
    void whatWorksAsItShouldIsNoComplaint() {
        DiagnosisReport report = ask(seen("heater", Sign.WORKS), seen("pump", Sign.WORKS));
        assertThat(report.conclusion().verdict()).isEqualTo(DiagnosisReport.Verdict.PLAN_CONSISTENT);
    }

    /** One diode after the other comes to conduct; ten steps are not enough for twenty of them. */
    @Test
    void whatWasReadAtRestCountsThoughNothingIsSolvedWithTheKeyOn() {
        StringBuilder parts = new StringBuilder("{'kind':'battery','id':'battery'},{'kind':'earth','id':'body'},"
                + "{'kind':'switch','id':'key','terminals':['30','15'],"
                + "'positions':[{'name':'out','joins':[]},{'name':'on','joins':[['30','15']]}],"
                + "'positionByCondition':{'off':'out','accessory':'out','run':'on','crank':'on','running':'on'}}");
        StringBuilder wires = new StringBuilder(Bedside.wire("W1", "battery.minus", "body.31", 0.001) + ","
                + Bedside.wire("W2", "battery.plus", "key.30", 0.01));
        String before = "key.15";
        for (int i = 0; i < 20; i++) {
            parts.append(",{'kind':'diode','id':'D" + i + "','forwardV':0.1}");
            parts.append(",{'kind':'load','id':'L" + i + "','resistanceOhm':20,'meantLive':['run']}");
            wires.append("," + Bedside.wire("A" + i, before, "D" + i + ".anode", 0.02));
            wires.append("," + Bedside.wire("F" + i, "D" + i + ".cathode", "L" + i + ".a", 0.02));
            wires.append("," + Bedside.wire("B" + i, "L" + i + ".b", "body.31", 0.01));
            before = "D" + i + ".cathode";
        }
        Plan plan = Plans.of(parts.toString(), wires.toString());
        Bench impatient =
                new Bench(plan, DiagnosisLimits.defaults(), new NetworkLimits(20_000, 60_000, 10), Progress.UNWATCHED);
        Measurement on = Bedside.volts("battery.plus", Condition.RUN);
        Measurement off = Bedside.volts("battery.plus", Condition.OFF);
        assertThat(impatient.measure(List.of(), Set.of(), List.of(on))).isEmpty();
        assertThat(impatient.measure(List.of(), Set.of(), List.of(off))).hasValueSatisfying(measured -> {
            assertThat(measured.figures().at(0)).isCloseTo(12.6, within(0.01));
            assertThat(measured.opening()).isEmpty();
        });
    }

    @Test
    void workThatTakesTooLongIsGivenUp() {
        DiagnosisQuestion question = DiagnosisQuestion.of(
                Plans.example("sandpiper-as-built"), List.of(volts("coil.15", Condition.CRANK, Map.of())));
        assertThatThrownBy(() -> DiagnosisAnswer.of(
                        question, new DiagnosisLimits(40_000, 800, 1), NetworkLimits.defaults(), Progress.UNWATCHED))
                .isInstanceOf(OutOfTime.class);
    }
}
