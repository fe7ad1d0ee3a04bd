package loomwright.network;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import loomwright.answer.Fault;
import loomwright.answer.Faults;

/**
 * What the solver solves.
 *
 * @param nodes names of the nodes, for messages only; at least one
 * @param elements what lies between them, ids unique, both ends different
 * @param reference index of the node that has 0 V
 */
public record Network(List<String> nodes, List<Element> elements, int reference) {
    public Network {
        nodes = List.copyOf(nodes);
        elements = List.copyOf(elements);
        int count = nodes.size();
        Faults faults = new Faults();
        faults.check(count > 0, Fault.Code.OUT_OF_RANGE, "/nodes", count, "at least one node");
        checkNode(faults, "/reference", reference, count);
        Set<String> ids = new HashSet<>(2 * elements.size());
        for (int i = 0; i < elements.size(); i++) {
            Element element = elements.get(i);
            String pointer = "/elements/" + i;
            checkNode(faults, pointer + "/from", element.from(), count);
            checkNode(faults, pointer + "/to", element.to(), count);
            faults.check(
                    element.from() != element.to(),
                    Fault.Code.CONTRADICTION,
                    pointer,
                    element.id(),
                    "an element between two different nodes");
            faults.check(
                    ids.add(element.id()),
                    Fault.Code.DUPLICATE,
                    pointer + "/id",
                    element.id(),
                    "an id that no other element has");
        }
        faults.reject();
    }

    private static void checkNode(Faults faults, String pointer, int node, int count) {
        if (node < 0 || node >= count) {
            faults.check(
                    false, Fault.Code.UNKNOWN_REFERENCE, pointer, node, "the index of a node, 0 to " + (count - 1));
        }
    }
}
