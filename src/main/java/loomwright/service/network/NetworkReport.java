package loomwright.service.network;

import static loomwright.message.Arg.arg;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import loomwright.answer.Answer;
import loomwright.answer.Basis;
import loomwright.answer.Caution;
import loomwright.message.Message;
import loomwright.network.Lamp;
import loomwright.network.NetworkFinding;
import loomwright.network.Solution;
import loomwright.service.form.Table;
import org.jspecify.annotations.Nullable;

/**
 * A solved network by names.
 *
 * @param solved whether there are figures; if not, a finding says why and the lists of figures are empty
 * @param nodes voltages, the reference first
 * @param elements voltages, currents and powers, in the order of the input
 * @param kirchhoffResidual largest sum of the currents at a node as a fraction of the largest current
 * @param powerResidual sum of all powers as a fraction of the sum of their amounts
 * @param equivalent what the only source sees; absent if there are others, or anything but resistances
 * @param iterations steps of the nonlinear solution
 * @param findings what the reader should know about the network
 */
public record NetworkReport(
        boolean solved,
        List<NodeReading> nodes,
        List<ElementReading> elements,
        @Nullable Double kirchhoffResidual,
        @Nullable Double powerResidual,
        @Nullable Equivalent equivalent,
        int iterations,
        List<NetworkFinding> findings) {

    /** Voltage of a node to the reference, or to the first node of its own island if it is floating. */
    public record NodeReading(String node, double voltageV, boolean floating) {}

    /**
     * What an element does.
     *
     * @param voltageV voltage of the first node against the second; absent where they have no common reference
     * @param currentA positive from the first node through the element to the second
     * @param powerW power taken up; negative if delivered
     * @param currentDetermined false where a loop of ideal joints lets the current divide in any way
     */
    public record ElementReading(
            String id, @Nullable Double voltageV, double currentA, double powerW, boolean currentDetermined) {}

    static Answer<NetworkReport> of(
            NetworkQuestion question,
            List<String> nodes,
            int[] place,
            Solution solution,
            @Nullable Equivalent equivalent) {
        NetworkReport report = solution.solved()
                ? new NetworkReport(
                        true,
                        nodeReadings(nodes, solution),
                        elementReadings(question, nodes, place, solution),
                        solution.kirchhoffResidual(),
                        solution.powerResidual(),
                        equivalent,
                        solution.iterations(),
                        solution.findings())
                : new NetworkReport(
                        false, List.of(), List.of(), null, null, null, solution.iterations(), solution.findings());
        return new Answer<>(report, working(question, nodes, report), basis(question), List.of(Caution.LOCAL_CODES));
    }

    /** Nodes and elements in one table. */
    public Table table() {
        List<List<@Nullable Object>> rows = new ArrayList<>();
        for (NodeReading node : nodes) {
            rows.add(Arrays.asList("node", node.node(), node.voltageV(), null, null));
        }
        for (ElementReading element : elements) {
            rows.add(Arrays.asList("element", element.id(), element.voltageV(), element.currentA(), element.powerW()));
        }
        return new Table(List.of("what", "name", "voltageV", "currentA", "powerW"), rows);
    }

    private static List<NodeReading> nodeReadings(List<String> nodes, Solution solution) {
        List<NodeReading> readings = new ArrayList<>(nodes.size());
        for (int i = 0; i < nodes.size(); i++) {
            readings.add(new NodeReading(nodes.get(i), solution.voltageV(i), solution.floating(i)));
        }
        return readings;
    }

    private static List<ElementReading> elementReadings(
            NetworkQuestion question, List<String> nodes, int[] place, Solution solution) {
        Map<String, Integer> index = new HashMap<>();
        for (int i = 0; i < nodes.size(); i++) {
            index.put(nodes.get(i), i);
        }
        List<ElementReading> readings = new ArrayList<>(place.length);
        for (int i = 0; i < place.length; i++) {
            ElementQuestion element = question.elements().get(i);
            int first = Objects.requireNonNull(index.get(element.between().get(0)));
            int second = Objects.requireNonNull(index.get(element.between().get(1)));
            int at = place[i];
            double currentA = at < 0 ? 0 : element.turned() ? -solution.currentA(at) : solution.currentA(at);
            readings.add(new ElementReading(
                    element.id(),
                    voltageV(solution, first, second),
                    currentA,
                    at < 0 ? 0 : solution.powerW(at),
                    at < 0 || solution.currentDetermined(at)));
        }
        return readings;
    }

    /** Voltage between two nodes; none where an element that does not conduct is all that joins their islands. */
    private static @Nullable Double voltageV(Solution solution, int first, int second) {
        return solution.island(first) == solution.island(second)
                ? solution.voltageV(first) - solution.voltageV(second)
                : null;
    }

    private static List<Message> working(NetworkQuestion question, List<String> nodes, NetworkReport report) {
        List<Message> steps = new ArrayList<>();
        steps.add(NetworkText.SET_UP.with(
                arg("nodes", nodes.size()),
                arg("elements", question.elements().size()),
                arg("reference", question.reference())));
        if (report.solved()) {
            steps.add(NetworkText.EQUATIONS.with());
            steps.add(NetworkText.CHECKED.with());
        }
        Equivalent equivalent = report.equivalent();
        if (equivalent != null) {
            steps.addAll(equivalent.working());
        }
        report.findings().forEach(finding -> steps.add(finding.message()));
        return steps;
    }

    private static List<Basis> basis(NetworkQuestion question) {
        List<Basis> basis = new ArrayList<>();
        basis.add(Basis.computed("node voltages and currents", "Kirchhoff's laws and Ohm's law"));
        if (question.elements().stream().anyMatch(ElementQuestion.OfLamp.class::isInstance)) {
            basis.add(Basis.commonPractice("current of a filament lamp as voltage to the power " + Lamp.EXPONENT));
        }
        return basis;
    }
}
