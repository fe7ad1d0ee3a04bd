package loomwright.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import loomwright.circuit.Condition;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import loomwright.circuit.fault.BadJoint;
import loomwright.diagnosis.DiagnosisReport.Suspect;
import loomwright.diagnosis.DiagnosisReport.Verdict;
import loomwright.operation.Probe;
import loomwright.operation.Quantity;
import loomwright.operation.Step;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

/** How bad a fault is: the ohms of a bad joint. */
class D03_FaultSizeTest {
    private static final List<Measurement> POINTS = Stream.of("battery.plus", "F1.b", "heater.a", "heater.b")
            .map(p -> Bedside.volts(p, Condition.RUN))
            .toList();

    private static Suspect first(DiagnosisReport report) {
        assertThat(report.conclusion().verdict()).isEqualTo(Verdict.SINGLE_FAULT);
        return report.explanations().get(0).candidates().get(0);
    }

    /** By hand: 9.4 V over 6.01 ohm are 1.564 A; 12.53 - 9.4 V over as much are 2.00 ohm, of which the wire has 0.03. */
    @Test
    void theVoltsLostOverTheCurrentAreItsOhms() {
        double[] shown = {12.57, 12.53, 9.4, 0.016};
        List<MeterReading> readings = IntStream.range(0, 4)
                .mapToObj(i -> Bedside.reading(POINTS.get(i), shown[i]))
                .toList();
        Suspect suspect = first(Bedside.diagnose(Bedside.TWO_LOADS, readings));
        assertThat(suspect.faults().get(0).ids()).containsExactly("W3");
        assertThat(suspect.faults().get(0).resistanceOhm()).isCloseTo(1.97, within(0.04));
    }

    @Property(seed = "43", tries = 25)
    void theSizePutInComesBack(@ForAll @DoubleRange(min = 0.2, max = 20) double ohm) {
        List<MeterReading> readings = Bedside.exact(Bedside.TWO_LOADS, List.of(new BadJoint("W3", ohm)), POINTS);
        Suspect suspect = first(Bedside.diagnose(Bedside.TWO_LOADS, readings));
        assertThat(suspect.faults().get(0).ids()).containsExactly("W3");
        assertThat(suspect.faults().get(0).resistanceOhm()).isCloseTo(ohm, within(0.05 * ohm));
    }

    /** A lamp is anything but linear: the line between two sizes is only where the climb begins. */
    @Test
    void theSizeComesBackBeforeALampToo() {
        Plan plan = Plans.example("otter-6v-positive-earth");
        List<Measurement> points = Stream.of("battery.minus", "feed.3", "lights.56", "head.a", "head.b")
                .map(p -> new Measurement(Probe.toEarth(p), Quantity.VOLTS, Step.RUN, Map.of("lights", "lit")))
                .toList();
        Suspect suspect = first(Bedside.diagnose(plan, Bedside.exact(plan, List.of(new BadJoint("W9", 0.7)), points)));
        assertThat(suspect.faults().get(0).ids()).containsExactly("W9");
        assertThat(suspect.faults().get(0).resistanceOhm()).isCloseTo(0.7, within(0.035));
    }
}
