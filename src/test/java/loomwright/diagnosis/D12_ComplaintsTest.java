package loomwright.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import loomwright.circuit.Condition;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import loomwright.circuit.fault.SingleFault.Kind;
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

    private static double flat(MeterReading... readings) {
        return Bedside.diagnose(SANDPIPER, List.of(readings)).explanations().stream()
                .flatMap(e -> e.candidates().stream())
                .filter(c -> c.faults().stream()
                        .anyMatch(f -> f.kind() == Kind.BATTERY_DISCHARGED || f.kind() == Kind.BATTERY_WORN))
                .mapToDouble(DiagnosisReport.Suspect::probability)
                .sum();
    }
}
