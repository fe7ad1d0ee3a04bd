package loomwright.comparison;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import loomwright.circuit.Condition;
import loomwright.circuit.ForEachExample;
import loomwright.circuit.LiveAlternative;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import loomwright.circuit.Switch;
import loomwright.circuit.TerminalRef;
import loomwright.comparison.PlanComparison.PropertyChange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Properties of the plan document as they stand on paper. */
class C04_PropertyWordingTest {
    @Test
    void valuesAreSaidWithTheirUnits() {
        Map<String, PropertyValue> properties = new LinkedHashMap<>();
        properties.put("coilResistanceOhm", new PropertyValue(85.0));
        properties.put("capacitanceUf", new PropertyValue(0.22));
        properties.put("size", new PropertyValue("2.5 mm2"));
        properties.put("elementsOhm", new PropertyValue(List.of(0.9, 0.6)));
        properties.put("directed", new PropertyValue(true));
        assertThat(PropertyWording.list(properties))
                .isEqualTo(
                        "coil resistance 85 Ω; capacitance 0.22 µF; size 2.5 mm²; elements 0.9, 0.6 Ω; feeds one way only yes");
    }

    @Test
    void whatHasNoValueIsNone() {
        assertThat(PropertyWording.change(new PropertyChange("resistanceOhm", new PropertyValue(0.002), null)))
                .isEqualTo("resistance 0.002 Ω → none");
    }

    private static Stream<Arguments> values() {
        return Stream.of(
                Arguments.of(
                        "positions",
                        List.of(
                                new Switch.Position("out", List.of()),
                                new Switch.Position("a, b], c", List.of(List.of("30", "58"), List.of("1", "2")))),
                        "positions out (open), a, b], c (30 with 58, 1 with 2)"),
                Arguments.of(
                        "meantLiveWhen",
                        List.of(
                                LiveAlternative.of(Map.of("fan", List.of("on", "fast"))),
                                new LiveAlternative(List.of(Condition.RUN), Map.of("heat", List.of("hot")))),
                        "works with fan: on, fast, or heat: hot (run)"),
                Arguments.of(
                        "positionByCondition",
                        new Switch.PositionByCondition("off", "acc", "on", "start", "on"),
                        "position in each condition accessory: acc; crank: start; off: off; run: on; running: on"),
                Arguments.of(
                        "contactFaults",
                        List.of(
                                new Switch.ContactFault(Switch.ContactState.WORN, List.of("30", "58"), 0.4),
                                new Switch.ContactFault(Switch.ContactState.OPEN, List.of("30", "56"), null)),
                        "faulty contacts 30–58 worn 0.4 Ω, 30–56 open"),
                Arguments.of("label", "Lamp [left-hand]", "label Lamp [left-hand]"),
                Arguments.of("from", TerminalRef.parse("horn-button.31"), "from horn-button.31"));
    }

    /** What a person named is left as it is, whatever signs it has. */
    @ParameterizedTest
    @MethodSource("values")
    void listsAreSaidWithoutBracketsOfOurs(String name, Object value, String said) {
        assertThat(PropertyWording.list(Map.of(name, new PropertyValue(value)))).isEqualTo(said);
    }

    @ForEachExample
    void nothingOfTheDocumentsSpellingIsLeft(String example) {
        Plan plan = Plans.example(example);
        for (Part part : plan.parts()) {
            String said = PropertyWording.list(PropertyValue.listOf((Record) part));
            assertThat(said).doesNotContain("[", "{", "=", "_").doesNotContain(" true", " false");
        }
    }
}
