package loomwright.operation;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import loomwright.circuit.Part;

/** The figures of a step in a state. */
public final class OracleFigures {
    private final List<OracleElement> elements;
    private final double[] volts;
    private final double[] amps;
    private final int[] island;
    private final Map<String, Integer> nodes;

    OracleFigures(
            List<OracleElement> elements, double[] volts, double[] amps, int[] island, Map<String, Integer> nodes) {
        this.elements = elements;
        this.volts = volts;
        this.amps = amps;
        this.island = island;
        this.nodes = nodes;
    }

    /** Whether a terminal has a voltage to the chassis by the laws alone. */
    public boolean tied(String terminal) {
        return joined(terminal, OracleElement.CHASSIS);
    }

    /** Whether two terminals have a voltage against each other by the laws alone. */
    public boolean joined(String terminal, String other) {
        return island[OracleElement.node(nodes, terminal)] == island[OracleElement.node(nodes, other)];
    }

    public double voltageV(String terminal) {
        return volts[OracleElement.node(nodes, terminal)];
    }

    public double acrossV(Part part, String terminal, String other) {
        return voltageV(part.id() + "." + terminal) - voltageV(part.id() + "." + other);
    }

    /** Currents by owner and terminals, those of one owner between the same two added up. */
    public Map<String, Double> currentsA() {
        Map<String, Double> sum = new LinkedHashMap<>();
        for (int i = 0; i < elements.size(); i++) {
            OracleElement e = elements.get(i);
            sum.merge(
                    OracleElement.key(e.owner(), e.from(), e.to()),
                    OracleElement.sign(e.from(), e.to()) * amps[i],
                    Double::sum);
        }
        return sum;
    }

    public double largestV() {
        return Arrays.stream(volts).map(Math::abs).max().orElse(0);
    }

    public double largestA() {
        return Arrays.stream(amps).map(Math::abs).max().orElse(0);
    }
}
