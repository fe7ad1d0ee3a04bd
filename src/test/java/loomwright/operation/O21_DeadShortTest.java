package loomwright.operation;

import static loomwright.operation.O04_RelayTest.wires;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Set;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Feature 21: a dead short is found whenever it is there, whichever pole is earthed, with all that lies on its way. */
class O21_DeadShortTest {
    @ParameterizedTest
    @EnumSource(Step.class)
    void aShortBehindTheKeyIsFoundWhereverTheKeyMakesIt(Step step) {
        for (Plan plan : List.of(shorted(step, "plus", "minus"), shorted(step, "minus", "plus"))) {
            Solved solved = Solved.of(plan);
            for (Step each : Step.values()) {
                boolean there = each.condition() == step.condition();
                assertThat(StepFindings.of(solved.in(each)))
                        .as("%s, %s", each, plan.system().earthPolarity())
                        .extracting(StepFinding::kind)
                        .filteredOn(StepFinding.Kind.DEAD_SHORT::equals)
                        .hasSize(there ? 1 : 0);
            }
        }
    }

    @ParameterizedTest
    @CsvSource({"plus, minus, OFF", "minus, plus, OFF", "plus, minus, CRANK", "minus, plus, CRANK"})
    void itNamesEveryPartAndWireOnTheWay(String live, String earthed, Step step) {
        Plan plan = shorted(step, live, earthed);
        assertThat(StepFindings.of(Solved.of(plan).in(step)))
                .filteredOn(f -> f.kind() == StepFinding.Kind.DEAD_SHORT)
                .singleElement()
                .satisfies(f -> assertThat(Set.copyOf(f.ids())).contains("key", "W1", "W2", "W3"));
    }

    /** Half a thousandth of an ohm between the poles, whatever the battery is taken to have inside. */
    @ParameterizedTest
    @ValueSource(strings = {"OFF", "ACCESSORY", "RUN", "CRANK", "RUNNING", "OFF_ENGINE_TURNING", "OFF_AGAIN"})
    void aWireFromPoleToPoleIsAShortInEveryStep(Step step) {
        for (String earth : List.of("negative", "positive")) {
            Plan plan = Plans.of(
                    12,
                    earth,
                    "{'kind':'battery','id':'B'},{'kind':'earth','id':'E'}",
                    "{'id':'W1','from':'B.minus','to':'E.31','resistanceOhm':0.0002},"
                            + "{'id':'W2','from':'B.plus','to':'E.31','resistanceOhm':0.0003}");
            assertThat(StepFindings.of(Solved.of(plan).in(step)))
                    .as(earth)
                    .filteredOn(f -> f.kind() == StepFinding.Kind.DEAD_SHORT)
                    .singleElement()
                    .satisfies(f -> assertThat(f.ids()).contains("W1", "W2"));
        }
    }

    private static Plan shorted(Step step, String live, String earthed) {
        String key = step.condition().name().toLowerCase(java.util.Locale.ROOT);
        StringBuilder positions = new StringBuilder();
        for (String condition : List.of("off", "accessory", "run", "crank", "running")) {
            positions
                    .append(positions.isEmpty() ? "" : ",")
                    .append("'" + condition + "':'" + (condition.equals(key) ? "on" : "off") + "'");
        }
        return Plans.of(
                12,
                live.equals("plus") ? "negative" : "positive",
                "{'kind':'battery','id':'B'},{'kind':'earth','id':'E'},"
                        + "{'kind':'switch','id':'key','contactResistanceOhm':0.0002,'terminals':['30','15'],"
                        + "'positions':[{'name':'off','joins':[]},{'name':'on','joins':[['30','15']]}],"
                        + "'positionByCondition':{" + positions + "}}",
                wires("B." + earthed + " E.31", "B." + live + " key.30", "key.15 E.31")
                        .replace("0.02", "0.0002"));
    }
}
