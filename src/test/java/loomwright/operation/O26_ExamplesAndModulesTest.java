package loomwright.operation;

import static loomwright.operation.O04_RelayTest.wires;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Feature 26: the examples are charged, unlike batteries are held by their own resistance, and a module works either way. */
class O26_ExamplesAndModulesTest {
    @ParameterizedTest
    @ValueSource(strings = {"sandpiper-as-built", "sandpiper-bypass-relay", "sandpiper-electronic-module"})
    void withTheEngineRunningTheBatteryIsCharged(String example) {
        assertThat(Solved.of(Plans.example(example)).currentA(Step.RUNNING, "battery.minus", "battery.plus"))
                .isNegative();
    }

    /** Half of a 12 V battery beside a whole one: hundreds of amperes while cranking too. */
    @Test
    void unlikeBatteriesSideBySideAreHeldByTheirOwnResistanceWhileCranking() {
        Plan plan = Plans.of(
                "{'kind':'battery','id':'B'},{'kind':'earth','id':'E'},"
                        + "{'kind':'battery','id':'B2','nominalVoltageV':6}",
                "{'id':'W1','from':'B.minus','to':'E.31','resistanceOhm':0.000001},"
                        + "{'id':'W2','from':'B.minus','to':'B2.minus','resistanceOhm':0.000001},"
                        + "{'id':'W3','from':'B.plus','to':'B2.plus','resistanceOhm':0.000001}");
        assertThat(Solved.of(plan).currentA(Step.CRANK, "B.minus", "B.plus")).isBetween(10.0, 5000.0);
    }

    /** A module's 31 is earthed in either vehicle, as the machine's pole is: the coil works in both. */
    @Test
    void aModuleWorksWithEitherPoleEarthed() {
        String parts = "{'kind':'battery','id':'B'},{'kind':'earth','id':'E'},"
                + "{'kind':'coil','id':'C','primaryResistanceOhm':3,'meantLive':['crank','running']},"
                + "{'kind':'module','id':'M'}";
        String negative = wires("B.minus E.31", "B.plus C.15", "C.1 M.1", "B.plus M.15", "M.31 E.31");
        String positive = wires("B.plus E.31", "B.minus C.15", "C.1 M.1", "B.minus M.15", "M.31 E.31");
        double was = Solved.of(Plans.of(12, "negative", parts, negative)).currentA(Step.RUNNING, "C");
        double is = Solved.of(Plans.of(12, "positive", parts, positive)).currentA(Step.RUNNING, "C");
        assertThat(was).isGreaterThan(3);
        assertThat(is).isCloseTo(-was, within(1e-9));
    }
}
