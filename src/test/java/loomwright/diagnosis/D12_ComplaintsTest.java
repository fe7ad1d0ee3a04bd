package loomwright.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import loomwright.circuit.Condition;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import loomwright.circuit.fault.SingleFault.Kind;
import loomwright.diagnosis.DiagnosisReport.Certainty;
import loomwright.diagnosis.DiagnosisReport.Explanation;
import loomwright.operation.Contacts;
import org.junit.jupiter.api.Test;

/** A complaint says something of the parts that it does not name as well. */
class D12_ComplaintsTest {
    private static final Plan SANDPIPER = Plans.example("sandpiper-as-built");

    private static MeterReading sign(String part, Sign sign) {
        return new MeterReading(
                null,
                "earth",
                part,
                Condition.RUN,
                Map.of("lights", "head"),
                Contacts.EITHER,
                false,
                null,
                null,
                null,
                sign);
    }

    private static Explanation first(MeterReading... readings) {
        return Bedside.diagnose(SANDPIPER, List.of(readings)).explanations().get(0);
    }

    /** What makes one headlamp of two weak is in its own feed or return: a flat battery makes both weak, and all other lamps. */
    @Test
    void oneWeakHeadlampIsNoFlatBattery() {
        Explanation first = first(sign("head-left", Sign.WEAK));
        assertThat(first.candidates().get(0).faults())
                .singleElement()
                .satisfies(fault -> assertThat(fault.kind()).isNotIn(Kind.BATTERY_DISCHARGED, Kind.BATTERY_WORN));
    }

    @Test
    void aSharedCauseIsLikelierTheMoreOfItsPartsAreNamed() {
        assertThat(flat(sign("head-left", Sign.WEAK), sign("head-right", Sign.WEAK)))
                .isGreaterThan(2 * flat(sign("head-left", Sign.WEAK)));
        assertThat(flat(sign("head-left", Sign.WEAK), sign("head-right", Sign.WORKS)))
                .isLessThan(0.5 * flat(sign("head-left", Sign.WEAK)));
    }

    /** Lights off, all as the plan has it, and somebody says that a headlamp glows. */
    @Test
    void aVehicleIsNotConfirmedSoundAgainstAComplaint() {
        List<Measurement> points = Stream.of(
                        "battery.plus", "stud.1", "key.15", "ballast.a", "coil.15", "F1.b", "F2.b", "blower.33")
                .map(point -> Bedside.volts(point, Condition.RUN))
                .toList();
        List<MeterReading> right = Bedside.exact(SANDPIPER, List.of(), points);
        assertThat(Bedside.diagnose(SANDPIPER, right).conclusion().certainty()).isEqualTo(Certainty.CONFIRMED);
        List<MeterReading> both = new ArrayList<>(right);
        both.add(new MeterReading(
                null,
                "earth",
                "head-left",
                Condition.RUN,
                Map.of(),
                Contacts.EITHER,
                false,
                null,
                null,
                null,
                Sign.GLOWS));
        assertThat(Bedside.diagnose(SANDPIPER, both).conclusion().certainty()).isNotEqualTo(Certainty.CONFIRMED);
    }

    private static double flat(MeterReading... readings) {
        return Bedside.diagnose(SANDPIPER, List.of(readings)).explanations().stream()
                .flatMap(e -> e.candidates().stream())
                .filter(c -> c.faults().stream()
                        .anyMatch(f -> f.kind() == Kind.BATTERY_DISCHARGED || f.kind() == Kind.BATTERY_WORN))
                .mapToDouble(DiagnosisReport.Suspect::probability)
                .sum();
    }
}
