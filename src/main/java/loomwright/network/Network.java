package loomwright.network;

import static loomwright.message.Arg.arg;

import java.util.List;
import loomwright.answer.InputError;
import loomwright.answer.InputErrors;

/**
 * What the solver solves.
 *
 * @param nodes names of the nodes, for messages only; at least one
 * @param elements what lies between them, both ends different; several may have one id if they are ways through one thing
 * @param reference index of the node that has 0 V
 */
public record Network(List<String> nodes, List<Element> elements, int reference) {
    public Network {
        nodes = List.copyOf(nodes);
        elements = List.copyOf(elements);
        int count = nodes.size();
        InputErrors faults = new InputErrors();
        faults.check(count > 0, InputError.Code.OUT_OF_RANGE, "/nodes", count, AcceptedElement.ANY_NODE);
        if (!isNode(reference, count)) {
            checkNode(faults, "/reference", reference, count);
        }
        for (int i = 0; i < elements.size(); i++) {
            Element element = elements.get(i);
            if (!isNode(element.from(), count) || !isNode(element.to(), count) || element.from() == element.to()) {
                checkElement(faults, "/elements/" + i, element, count);
            }
        }
        faults.reject();
    }

    private static void checkElement(InputErrors faults, String pointer, Element element, int count) {
        checkNode(faults, pointer + "/from", element.from(), count);
        checkNode(faults, pointer + "/to", element.to(), count);
        faults.check(
                element.from() != element.to(),
                InputError.Code.CONTRADICTION,
                pointer,
                element.id(),
                AcceptedElement.TWO_NODES);
    }

    private static void checkNode(InputErrors faults, String pointer, int node, int count) {
        faults.check(
                isNode(node, count),
                InputError.Code.UNKNOWN_REFERENCE,
                pointer,
                node,
                AcceptedElement.NODE_INDEX,
                arg("highest", count - 1));
    }

    private static boolean isNode(int node, int count) {
        return node >= 0 && node < count;
    }
}
