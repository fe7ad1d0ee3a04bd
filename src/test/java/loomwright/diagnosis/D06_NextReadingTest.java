package loomwright.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import loomwright.circuit.Capacitor;
import loomwright.circuit.Coil;
import loomwright.circuit.Condition;
import loomwright.circuit.ContactBreaker;
import loomwright.circuit.ForEachExample;
import loomwright.circuit.IgnitionModule;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import loomwright.circuit.Wire;
import loomwright.circuit.fault.BadJoint;
import loomwright.circuit.fault.BlownFuse;
import loomwright.circuit.fault.SingleFault;
import loomwright.circuit.fault.WireEnd;
import loomwright.circuit.fault.WireOff;
import loomwright.diagnosis.DiagnosisReport.NextReading;
import loomwright.operation.Probe;
import loomwright.operation.Quantity;
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
                Probe.of(next.red(), next.black()),
                next.quantity(),
                Measurement.stepOf(next.setting().condition()),
                Map.copyOf(next.setting().switches())));
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
        assertThat(next.outcomes()).hasSizeGreaterThan(1);
        assertThat(next.outcomes()).allSatisfy(o -> assertThat(o.ranks()).isNotEmpty());
        assertThat(next.instruction()).isNotEmpty();
        assertThat(next.worth().gainBits()).isPositive();
    }

    /** Two candidates as likely as each other that a reading tells apart: one bit. */
    @Test
    void tellingTwoEqualsApartIsWorthOneBit() {
        List<MeterReading> readings = Bedside.exact(Bedside.TWO_LOADS, List.of(), FEW);
        DiagnosisQuestion question = DiagnosisQuestion.of(Bedside.TWO_LOADS, readings);
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
                .noneMatch(n -> n.black().equals("earth")
                        && n.setting().condition() == Condition.RUN
                        && List.of("battery.plus", "heater.a", "pump.a").contains(n.red()));
    }

    /** Faults of the ignition, measured while the starter turns the engine: what parts them is to be measured elsewhere. */
    @ForEachExample
    void noMeterIsSentToTheCoilWhileTheEngineTurns(String name) {
        Plan plan = Plans.example(name);
        Set<String> ignition = plan.parts().stream()
                .filter(p -> p instanceof Coil
                        || p instanceof ContactBreaker
                        || p instanceof IgnitionModule
                        || p instanceof Capacitor)
                .map(Part::id)
                .collect(Collectors.toSet());
        List<Measurement> posts = List.of(Bedside.volts("battery.plus", Condition.CRANK));
        Set<String> feeds = new HashSet<>();
        for (Wire wire : plan.wires()) {
            if (ignition.contains(wire.from().part())
                    || ignition.contains(wire.to().part())) {
                SingleFault off = new WireOff(wire.id(), WireEnd.TO, wire.to());
                for (NextReading next : Bedside.diagnose(plan, Bedside.exact(plan, List.of(off), posts))
                        .nextReadings()) {
                    if (next.setting().condition().engineTurns() && next.quantity() == Quantity.VOLTS) {
                        feeds.add(next.red());
                        feeds.add(next.black());
                    }
                }
            }
        }
        assertThat(ignition).isNotEmpty();
        assertThat(feeds).noneMatch(point -> ignition.contains(point.replaceFirst("[.].*", "")));
    }

    /** The far end of a wire on the coil is as dangerous as the coil; the battery and bare metal are not. */
    @Test
    void theFarEndsOfTheCoilsWiresAreLeftAloneToo() {
        Plan plan = Plans.example("sandpiper-as-built");
        PrimarySide primarySide = new PrimarySide(plan);
        Wire wire = plan.wires().stream()
                .filter(w -> w.from().part().equals("coil") || w.to().part().equals("coil"))
                .findFirst()
                .orElseThrow();
        for (String end : List.of(wire.from().toString(), wire.to().toString())) {
            assertThat(primarySide.isTouchedBy(Bedside.volts(end, Condition.RUNNING)))
                    .as(end)
                    .isTrue();
            assertThat(primarySide.isTouchedBy(Bedside.volts(end, Condition.RUN)))
                    .as(end + " with the engine stopped")
                    .isFalse();
        }
        assertThat(primarySide.isTouchedBy(Bedside.volts("battery.plus", Condition.RUNNING)))
                .isFalse();
    }
}
