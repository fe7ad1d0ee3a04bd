package loomwright.network;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;

/** Feature 2: the solver agrees with published worked examples. */
class F02WorkedExamplesTest {
    @ParameterizedTest(name = "{0}: {1} ({2})")
    @CsvFileSource(resources = "/network/worked-examples.csv", delimiter = '|', maxCharsPerColumn = 1000)
    void agrees(String number, String source, String status, String elements, String expected) {
        assertThat(status).isIn("read", "memory", "recomputed");
        assertThat(number + source).isNotBlank();
        Circuit circuit = new Circuit();
        for (String element : elements.split(";", -1)) {
            add(circuit, element.strip().split(" +", -1));
        }
        Circuit.Reading reading = circuit.solve();
        for (String figure : expected.split(";", -1)) {
            String[] f = figure.strip().split(" +", -1);
            double found = switch (f[0]) {
                case "V" -> reading.volts(f[1]);
                case "I" -> reading.amps(f[1]);
                case "W" -> reading.watts(f[1]);
                default -> throw new IllegalArgumentException(figure);
            };
            assertThat(found).as(figure).isCloseTo(Double.parseDouble(f[2]), within(Double.parseDouble(f[3])));
        }
    }

    private static void add(Circuit circuit, String[] e) {
        double value = Double.parseDouble(e[4]);
        switch (e[0]) {
            case "V" -> circuit.source(e[1], e[2], e[3], value, Double.parseDouble(e[5]));
            case "R" -> circuit.resistor(e[1], e[2], e[3], value);
            case "I" -> circuit.current(e[1], e[2], e[3], value);
            case "L" ->
                circuit.add(new Lamp(
                        e[1],
                        circuit.node(e[2]),
                        circuit.node(e[3]),
                        value,
                        Double.parseDouble(e[5]),
                        Double.parseDouble(e[6])));
            default -> throw new IllegalArgumentException(e[0]);
        }
    }
}
