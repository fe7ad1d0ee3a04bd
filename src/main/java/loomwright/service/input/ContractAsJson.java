package loomwright.service.input;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * Writes the contract as JSON for a distribution, where {@link Contract} finds it beside the text: JSON is read in a
 * fraction of the time that YAML takes, which is much of a start.
 */
public final class ContractAsJson {
    private ContractAsJson() {}

    /** {@code args[0]} names the file. */
    public static void main(String[] args) throws IOException {
        Files.write(Path.of(args[0]), bytes(Contract.load().document()));
    }

    /**
     * The document as JSON.
     *
     * @throws IllegalStateException if what is read back would differ
     */
    static byte[] bytes(JsonNode document) throws IOException {
        JsonMapper mapper = new JsonMapper();
        byte[] json = mapper.writeValueAsBytes(document);
        if (!mapper.readTree(json).equals(document)) {
            throw new IllegalStateException("the contract cannot be told in JSON without a change");
        }
        return json;
    }
}
