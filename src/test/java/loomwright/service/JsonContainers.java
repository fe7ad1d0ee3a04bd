package loomwright.service;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;

/** The objects and lists of a JSON document, the outermost first. */
final class JsonContainers {
    private JsonContainers() {}

    static List<JsonNode> in(JsonNode root) {
        List<JsonNode> containers = new ArrayList<>();
        collect(root, containers);
        return containers;
    }

    private static void collect(JsonNode node, List<JsonNode> containers) {
        if (node.isContainerNode()) {
            containers.add(node);
            node.forEach(child -> collect(child, containers));
        }
    }
}
