package loomwright.operation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.stream.Stream;
import loomwright.circuit.Alternator;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import loomwright.circuit.TerminalRef;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The same vehicle with the other pole earthed shows the same volts and amps with the other sign. */
class O12_EarthPolarityTest {
    @ParameterizedTest
    @ValueSource(
            strings = {
                "sandpiper-as-built",
                "sandpiper-unguarded-bypass",
                "sandpiper-bypass-relay",
                "otter-6v-positive-earth"
            })
    void signsAreMirroredAndNothingElse(String name) {
        Plan plan = Plans.example(name);
        Solved was = Solved.of(plan);
        Solved is = Solved.of(Mirror.of(plan));
        for (Step step : Step.values()) {
            for (var wire : plan.wires()) {
                if (Stream.of(wire.from(), wire.to()).noneMatch(O12_EarthPolarityTest::isPole)) {
                    assertThat(is.in(step).acrossV(wire.from(), wire.to()))
                            .as(step + " " + wire.id())
                            .isCloseTo(-was.in(step).acrossV(wire.from(), wire.to()), within(1e-9));
                }
            }
            plan.parts()
                    .forEach(p -> assertThat(is.in(step).isActive(p))
                            .isEqualTo(was.in(step).isActive(p)));
        }
    }

    /** Of battery and alternator, which are turned round. */
    private static boolean isPole(TerminalRef end) {
        return end.part().equals("battery")
                || end.terminal().equals(Alternator.OUTPUT)
                || end.terminal().equals(Alternator.RETURN);
    }
}
