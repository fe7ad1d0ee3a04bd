package loomwright.service.network;

import static loomwright.message.Arg.arg;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import loomwright.answer.Accepted;
import loomwright.answer.Answer;
import loomwright.answer.InputError;
import loomwright.answer.InputErrors;
import loomwright.answer.Progress;
import loomwright.answer.RejectedInput;
import loomwright.network.Element;
import loomwright.network.Network;
import loomwright.network.NetworkLimits;
import loomwright.network.NetworkSolver;
import loomwright.network.Solution;
import org.jspecify.annotations.Nullable;

/**
 * A network to be solved.
 *
 * @param reference the node that has 0 V
 * @param elements what lies between the nodes
 */
public record NetworkQuestion(String reference, List<ElementQuestion> elements) {
    /** By the contract. */
    public static final int MOST_ELEMENTS = NetworkLimits.defaults().maxElements();

    public NetworkQuestion {
        new InputErrors()
                .required("/reference", reference)
                .required("/elements", elements)
                .reject();
        elements = List.copyOf(elements);
        int length = reference.codePointCount(0, reference.length());
        new InputErrors()
                .check(
                        length >= 1 && length <= ElementQuestion.LONGEST_NAME,
                        InputError.Code.OUT_OF_RANGE,
                        "/reference",
                        reference,
                        Accepted.CHARACTERS,
                        arg("min", 1),
                        arg("max", ElementQuestion.LONGEST_NAME))
                .check(
                        !elements.isEmpty() && elements.size() <= MOST_ELEMENTS,
                        InputError.Code.OUT_OF_RANGE,
                        "/elements",
                        elements.size(),
                        Accepted.ENTRIES,
                        arg("min", 1),
                        arg("max", MOST_ELEMENTS))
                .reject();
    }

    /**
     * Solves the network.
     *
     * @param progress what it throws ends the solution
     * @throws RejectedInput with every element that cannot be calculated with
     */
    public Answer<NetworkReport> answer(NetworkLimits limits, Progress progress) {
        Map<String, Integer> nodes = nodes();
        List<Element> solvable = new ArrayList<>(elements.size());
        int[] place = new int[elements.size()];
        InputErrors faults = new InputErrors();
        checkIds(faults);
        // In the order of their ids, so that no digit depends on that of the question.
        IntStream.range(0, place.length)
                .boxed()
                .sorted(Comparator.comparing(i -> elements.get(i).id()))
                .forEach(i -> {
                    Element element = element(i, nodes, faults);
                    place[i] = element == null ? -1 : solvable.size();
                    if (element != null) {
                        solvable.add(element);
                    }
                });
        faults.check(
                elements.stream().anyMatch(element -> element.between().contains(reference)),
                InputError.Code.UNKNOWN_REFERENCE,
                "/reference",
                reference,
                AcceptedNetwork.NODE);
        faults.reject();
        Network network = new Network(List.copyOf(nodes.keySet()), solvable, 0);
        Solution solution = new NetworkSolver(limits, (done, of) -> progress.at(0, 1)).solve(network);
        return NetworkReport.of(
                this, List.copyOf(nodes.keySet()), place, solution, solution.solved() ? Equivalent.of(network) : null);
    }

    /** Node names to indices: the reference first, then in the order of their names. */
    private Map<String, Integer> nodes() {
        Map<String, Integer> nodes = new LinkedHashMap<>();
        nodes.put(reference, 0);
        elements.stream()
                .flatMap(element -> element.between().stream())
                .sorted()
                .forEach(name -> nodes.putIfAbsent(name, nodes.size()));
        return nodes;
    }

    private void checkIds(InputErrors faults) {
        Map<String, Integer> first = new LinkedHashMap<>();
        for (int i = 0; i < elements.size(); i++) {
            String id = elements.get(i).id();
            faults.check(
                    first.putIfAbsent(id, i) == null,
                    InputError.Code.DUPLICATE,
                    "/elements/" + i + "/id",
                    id,
                    AcceptedNetwork.UNUSED_ELEMENT);
        }
    }

    private @Nullable Element element(int index, Map<String, Integer> nodes, InputErrors faults) {
        ElementQuestion question = elements.get(index);
        String pointer = "/elements/" + index;
        String first = question.between().get(0);
        String second = question.between().get(1);
        if (first.equals(second)) {
            faults.check(
                    false, InputError.Code.CONTRADICTION, pointer + "/between/1", second, AcceptedNetwork.OTHER_NODE);
            return null;
        }
        try {
            return question.between(index(nodes, first), index(nodes, second));
        } catch (RejectedInput rejected) {
            rejected.faults().forEach(fault -> faults.add(fault.under(pointer)));
            return null;
        }
    }

    private static int index(Map<String, Integer> nodes, String name) {
        Integer index = nodes.get(name);
        if (index == null) {
            throw new IllegalStateException("node without index: " + name);
        }
        return index;
    }
}
