package loomwright.drawing.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import java.lang.reflect.RecordComponent;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import loomwright.circuit.Connector;
import loomwright.circuit.Part;
import loomwright.circuit.Switch;
import loomwright.circuit.TerminalRef;
import loomwright.circuit.Wire;
import loomwright.comparison.PlanComparison.PropertyChange;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** Properties of the plan document as they stand on paper. */
class PropertyWordsTest {
    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
                    coilResistanceOhm 85, pullInV 8, ratingA 30 | coil resistance 85 Ω; pull in 8 V; rating 30 A
                    ratedV 12, ratedW 21                        | rated 12 V; rated 21 W
                    capacitanceUf 0.22                          | capacitance 0.22 µF
                    turnsRatio 90, use with-ballast             | turns ratio 90; use with ballast
                    supplyA 0.15, conductsWhenStopped false     | supply 0.15 A; conducts when stopped no
                    size 14 AWG, lengthM 0.2                    | size 14 AWG; length 0.2 m
                    size 2.5 mm2                                | size 2.5 mm²
                    """)
    void dataAreSaidInWordsWithUnits(String data, String said) {
        assertThat(PropertyWords.data(data)).isEqualTo(said);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
                    elementsOhm [0.9, 0.6]                                              | elements 0.9, 0.6 Ω
                    terminals [1, 2], form blade, widthMm 6.3                           | terminals 1, 2; form blade; width 6.3 mm
                    positions [{name: out, joins: []}, {name: a, joins: [[30, 58, 56]]}]| positions out (open), a (30 with 58 with 56)
                    positions [{name: a, b, joins: [[1, 2], [3, 4]]}], ratingA 5        | positions a, b (1 with 2, 3 with 4); rating 5 A
                    """)
    void listsAreSaidWithoutBrackets(String data, String said) {
        assertThat(PropertyWords.data(data)).isEqualTo(said);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
                    lengthM       | 0.5                            | 0.3                   | length 0.5 m → 0.3 m
                    resistanceOhm | 0.002                          |                       | resistance 0.002 Ω → none
                    place         | cabin                          | engine-bay            | place cabin → engine bay
                    directed      | false                          | true                  | directed no → yes
                    meantLiveWhen | [{switches: {lights: [side, head], a: [b]}}] | [{switches: {lights: [lit]}}] | meant live when lights: side, head; a: b → lights: lit
                    meantLiveWhen | [] | [{switches: {fan: [on]}}, {conditions: [run, running], switches: {heat: [hot]}}] | meant live when none → fan: on, or heat: hot (run, running)
                    """)
    void aChangeIsSaidWithItsUnit(String name, @Nullable String before, @Nullable String after, String said) {
        assertThat(PropertyWords.change(new PropertyChange(name, before, after)))
                .isEqualTo(said);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
                    label | Lamp [left-hand] | true        | label Lamp [left-hand] → true
                    from  | horn-button.31   | dash-half.1 | from horn-button.31 → dash-half.1
                    """)
    void whatAPersonNamedIsLeftAsItIs(String name, String before, String after, String said) {
        assertThat(PropertyWords.change(new PropertyChange(name, before, after)))
                .isEqualTo(said);
    }

    /** Finds a property of a new kind of part whose values nobody has put into words. */
    @ParameterizedTest
    @MethodSource("properties")
    void everyPropertyOfPartsAndWiresHasItsWords(RecordComponent property) {
        Class<?> type = property.getType();
        if (type.isEnum()) {
            assertThat(changed(property, "a-b")).endsWith("a b");
        } else if (type == boolean.class || type == Boolean.class) {
            assertThat(changed(property, "false")).endsWith("no");
        } else if (type == List.class || type == Map.class || type == Switch.PositionByCondition.class) {
            assertThat(changed(property, "[{name: a, joins: [[1, 2]]}]")).doesNotContain("[", "{");
        } else {
            assertThat(type)
                    .isIn(String.class, Double.class, double.class, Integer.class, int.class, TerminalRef.class);
        }
    }

    private static String changed(RecordComponent property, String after) {
        return PropertyWords.change(new PropertyChange(property.getName(), null, after));
    }

    private static Stream<RecordComponent> properties() {
        return Stream.concat(records(Part.class), Stream.of(Wire.class, Connector.class))
                .flatMap(record -> Stream.of(record.getRecordComponents()));
    }

    private static Stream<Class<?>> records(Class<?> type) {
        return type.isSealed()
                ? Stream.of(type.getPermittedSubclasses()).flatMap(PropertyWordsTest::records)
                : Stream.of(type);
    }
}
