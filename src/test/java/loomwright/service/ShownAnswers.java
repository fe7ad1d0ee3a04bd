package loomwright.service;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.node.TextNode;
import io.restassured.response.Response;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import loomwright.contract.ContractBundle;
import loomwright.service.ContractExamples.Shown;
import loomwright.service.input.Json;
import loomwright.service.problem.Problem;
import org.yaml.snakeyaml.DumperOptions;
import org.yaml.snakeyaml.Yaml;

/**
 * The answers that the contract shows: what the running service says to its example requests, with long lists cut. Run as
 * a program it writes them to {@code src/main/openapi/examples}, one file each, and bundles the contract.
 */
public final class ShownAnswers {
    /** What is kept of a list. */
    private static final int ENTRIES = 1;
    /** What is kept of a list of figures, and of the lines of a table. */
    private static final int FIGURES = 2;

    private static final Path FOLDER = ContractBundle.SOURCES.resolve("examples");
    private static final JsonMapper MAPPER = new JsonMapper();

    private ShownAnswers() {}

    /**
     * An answer as shown.
     *
     * @param value with long lists cut
     * @param isCut whether one was
     */
    public record Answer(JsonNode value, boolean isCut) {}

    /** Every response that the contract shows. */
    public static List<Shown> all() {
        return ContractExamples.all().stream()
                .flatMap(example -> example.shown().stream())
                .toList();
    }

    public static void main(String[] arguments) throws IOException {
        int status = 1;
        try {
            renew();
            status = 0;
        } catch (IOException | RuntimeException | AssertionError e) {
            System.err.println(e);
        }
        System.exit(status); // the service is still up
    }

    /** Asks for all answers before it touches the folder, so that a refused request leaves the old ones. */
    private static void renew() throws IOException {
        Map<String, String> texts = new LinkedHashMap<>();
        for (Shown shown : all()) {
            if (!texts.containsKey(shown.answer())) {
                texts.put(shown.answer(), text(shown.answer(), answer(shown)));
            }
        }
        try (Stream<Path> old = Files.list(FOLDER)) {
            for (Path file : old.toList()) {
                Files.delete(file);
            }
        }
        for (Map.Entry<String, String> text : texts.entrySet()) {
            Files.writeString(FOLDER.resolve(text.getKey() + ".yaml"), text.getValue());
        }
        ContractBundle.main(new String[0]);
    }

    /** What the service says now. */
    public static Answer answer(Shown shown) throws IOException {
        boolean problem = shown.mediaType().equals(Problem.MEDIA_TYPE);
        Response response = shown.example()
                .send(
                        problem
                                ? shown.example().request()
                                : shown.example().request().accept(shown.mediaType()));
        if (response.statusCode() != shown.status()) {
            throw new AssertionError("The contract shows " + shown.example() + " with " + shown.status()
                    + ", the service answers " + response.statusCode() + ": " + response.asString());
        }
        String text = new String(response.asByteArray(), StandardCharsets.UTF_8);
        Cutter cutter = new Cutter();
        if (shown.mediaType().equals(Json.LINES)) {
            StringBuilder lines = new StringBuilder();
            for (String line : text.lines().toList()) {
                lines.append(cutter.cut(MAPPER.readTree(line))).append('\n');
            }
            return new Answer(TextNode.valueOf(lines.toString()), cutter.hasCut);
        }
        if (shown.mediaType().endsWith("json")) {
            JsonNode value = cutter.cut(MAPPER.readTree(text));
            return new Answer(value, cutter.hasCut);
        }
        List<String> rows = text.lines().toList();
        return rows.size() <= FIGURES
                ? new Answer(TextNode.valueOf(text), false)
                : new Answer(
                        TextNode.valueOf(rows.stream().limit(FIGURES).collect(Collectors.joining("\r\n", "", "\r\n"))),
                        true);
    }

    /** Cuts lists, and gives every occurrence of a problem the same name. */
    private static final class Cutter {
        private boolean hasCut;

        /** Working, sources and cautions are much alike in all answers: one of each will do. */
        private JsonNode cut(JsonNode answer) {
            answer.forEachEntry((name, one) -> cut(one, name.equals("result") ? ENTRIES : 1));
            return cut(answer, ENTRIES);
        }

        /** A list within a list keeps less. */
        private JsonNode cut(JsonNode value, int entries) {
            if (value instanceof ArrayNode list) {
                int most = list.path(0).isNumber() ? FIGURES : entries;
                hasCut |= list.size() > most;
                while (list.size() > most) {
                    list.remove(list.size() - 1);
                }
                list.forEach(one -> cut(one, 1));
            } else if (value instanceof ObjectNode object) {
                object.forEach(one -> cut(one, entries));
                JsonNode instance = object.path("instance");
                if (instance.isTextual()) {
                    object.put(
                            "instance",
                            instance.asText().replaceFirst("request:[0-9a-f]+", "request:5f0c3a9d1e7b2468"));
                }
            }
            return value;
        }
    }

    private static String text(String name, Answer answer) {
        DumperOptions options = new DumperOptions();
        options.setDefaultFlowStyle(DumperOptions.FlowStyle.AUTO);
        options.setSplitLines(false);
        options.setAllowUnicode(true);
        Map<String, Object> example = new LinkedHashMap<>();
        if (answer.isCut()) {
            example.put("summary", "The start of each long list.");
        }
        example.put("value", plain(answer.value()));
        return new Yaml(options).dump(Map.of(name, example));
    }

    private static Object plain(JsonNode value) {
        if (value.isObject()) {
            Map<String, Object> object = new LinkedHashMap<>();
            value.forEachEntry((name, one) -> object.put(name, plain(one)));
            return object;
        }
        if (value.isArray()) {
            List<Object> list = new ArrayList<>();
            value.forEach(one -> list.add(plain(one)));
            return list;
        }
        if (value.isNumber()) {
            return value.numberValue();
        }
        return value.isBoolean() ? (Object) value.asBoolean() : value.asText();
    }
}
