package loomwright.review.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Map;
import loomwright.answer.Fault;
import loomwright.answer.OutOfTime;
import loomwright.answer.Progress;
import loomwright.answer.RejectedInput;
import loomwright.circuit.Condition;
import loomwright.circuit.Plans;
import loomwright.network.NetworkLimits;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.Test;

/** What counts as a reading, and what is refused. */
class D01_ReadingsTest {
    private static Reading volts(String from, Condition condition, Map<String, String> switches) {
        return new Reading(from, "earth", condition, switches, 12.0, null, null, MeterAccuracy.USUAL);
    }

    private static void rejects(ThrowingCallable call, Fault.Code code, String pointer) {
        assertThatThrownBy(call)
                .isInstanceOfSatisfying(
                        RejectedInput.class,
                        r -> assertThat(r.faults()).anySatisfy(f -> {
                            assertThat(f.code()).isEqualTo(code);
                            assertThat(f.pointer()).isEqualTo(pointer);
                        }));
    }

    private static DiagnosisReport ask(Reading reading) {
        return Bedside.diagnose(Bedside.TWO_LOADS, List.of(reading));
    }

    @Test
    void aReadingIsOneOfVoltsOhmsAndOpen() {
        rejects(
                () -> new Reading("F1.a", "earth", Condition.RUN, Map.of(), 1.0, 1.0, null, MeterAccuracy.USUAL),
                Fault.Code.CONTRADICTION,
                "");
        rejects(
                () -> new Reading("F1.a", "earth", Condition.RUN, Map.of(), null, null, null, MeterAccuracy.USUAL),
                Fault.Code.CONTRADICTION,
                "");
    }

    @Test
    void aPointIsATerminalOrEarth() {
        rejects(() -> volts("F1", Condition.RUN, Map.of()), Fault.Code.MALFORMED, "/from");
        rejects(() -> ask(volts("F9.a", Condition.RUN, Map.of())), Fault.Code.UNKNOWN_REFERENCE, "/readings/0/from");
    }

    @Test
    void onlyAFreeSwitchCanBeSetAndOnlyToAPositionItHas() {
        rejects(
                () -> ask(volts("F1.a", Condition.RUN, Map.of("F1", "lit"))),
                Fault.Code.UNKNOWN_REFERENCE,
                "/readings/0/switches/F1");
        rejects(
                () -> Bedside.diagnose(
                        Plans.example("otter-6v-positive-earth"),
                        List.of(volts("head.a", Condition.RUN, Map.of("lights", "dim")))),
                Fault.Code.UNKNOWN_REFERENCE,
                "/readings/0/switches/lights");
    }

    @Test
    void tooMuchToSolveIsRefusedWithTheCount() {
        DiagnosisQuestion question = new DiagnosisQuestion(
                Bedside.TWO_LOADS, List.of(volts("F1.a", Condition.RUN, Map.of())), MeterAccuracy.USUAL);
        rejects(
                () -> DiagnosisAnswer.of(
                        question, new DiagnosisLimits(10, 10, 1000), NetworkLimits.defaults(), Progress.UNWATCHED),
                Fault.Code.OVER_LIMIT,
                "/plan/parts");
    }

    @Test
    void workThatTakesTooLongIsGivenUp() {
        DiagnosisQuestion question = new DiagnosisQuestion(
                Plans.example("sandpiper-as-built"),
                List.of(volts("coil.15", Condition.CRANK, Map.of())),
                MeterAccuracy.USUAL);
        assertThatThrownBy(() -> DiagnosisAnswer.of(
                        question, new DiagnosisLimits(40_000, 800, 1), NetworkLimits.defaults(), Progress.UNWATCHED))
                .isInstanceOf(OutOfTime.class);
    }
}
