package loomwright.service.page;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.StreamSupport;
import loomwright.drawing.Markup;
import loomwright.service.http.FixedHeaders;
import loomwright.service.http.Reply;
import loomwright.service.http.Request;
import loomwright.service.input.Contract;
import org.jspecify.annotations.Nullable;

/** The contract as a page to read at {@code /docs}: operations by topic, then schemas, all folded, without scripts. */
public final class Reference {
    private static final Pattern SPAN = Pattern.compile("`([^`]+)`|\\*\\*([^*]+)\\*\\*");
    private static final String SCHEMAS = "#/components/schemas/";

    private final Contract contract;
    private volatile @Nullable String page;

    public Reference(Contract contract) {
        this.contract = contract;
    }

    /** The page; written at the first request, because reading the contract takes its time. */
    public Reply page(Request request) {
        request.checkAccepts("text/html");
        String ready = page;
        if (ready == null) {
            ready = written(contract.document());
            page = ready;
        }
        return Reply.of("text/html; charset=utf-8", ready.getBytes(StandardCharsets.UTF_8))
                .withHeaders(Map.of(FixedHeaders.CONTENT_SECURITY, FixedHeaders.ANSWER_CONTENT_SECURITY));
    }

    private static String written(JsonNode document) {
        Markup body = new Markup();
        body.open("body").open("main", "class", "reference");
        body.element("h1", "Loomwright: wiring calculations over HTTP");
        body.open("p").element("a", "Try the operations in the browser", "href", "/docs/try");
        body.text(" or fetch the contract: ").element("a", "openapi.yaml", "href", "/openapi.yaml");
        body.text(", ").element("a", "openapi.json", "href", "/openapi.json").close();
        markdown(body, document.at("/info/description").asText());
        body.open("nav", "aria-label", "Topics").open("ul");
        for (JsonNode tag : document.path("tags")) {
            String name = tag.path("name").asText();
            body.open("li").element("a", name, "href", "#" + name);
            body.text(": " + tag.path("description").asText()).close();
        }
        body.open("li").element("a", "schemas", "href", "#schemas").close();
        body.close().close();
        for (JsonNode tag : document.path("tags")) {
            operations(body, document, tag.path("name").asText());
        }
        body.element("h2", "Schemas", "id", "schemas");
        document.at("/components/schemas").properties().forEach(schema -> {
            body.open("details").element("summary", schema.getKey());
            // A link to what is inside opens it; one to the folded thing itself would not.
            body.open("div", "id", "schema-" + schema.getKey());
            schema(body, schema.getValue());
            body.close().close();
        });
        return "<!doctype html><html lang=\"en\"><head><meta charset=\"utf-8\">"
                + "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">"
                + "<meta name=\"color-scheme\" content=\"light dark\">"
                + "<link rel=\"icon\" href=\"data:,\"><link rel=\"stylesheet\" href=\"/page/page.css\">"
                + "<title>Loomwright: wiring calculations over HTTP</title></head>"
                + body.close().close()
                + "</html>";
    }

    private static void operations(Markup body, JsonNode document, String tag) {
        body.element("h2", capital(tag), "id", tag);
        document.path("paths")
                .properties()
                .forEach(path -> path.getValue().properties().forEach(method -> {
                    JsonNode operation = method.getValue();
                    if (operation.at("/tags/0").asText().equals(tag)) {
                        operation(body, document, method.getKey() + " " + path.getKey(), operation);
                    }
                }));
    }

    private static void operation(Markup body, JsonNode document, String address, JsonNode operation) {
        int gap = address.indexOf(' ');
        body.open("details").open("summary");
        body.element("code", address.substring(0, gap).toUpperCase(Locale.ROOT) + address.substring(gap));
        body.text(" " + operation.path("summary").asText()).close();
        body.open("div", "id", operation.path("operationId").asText());
        markdown(body, operation.path("description").asText());
        List<JsonNode> parameters = resolved(document, operation.path("parameters"));
        if (!parameters.isEmpty()) {
            table(
                    body,
                    "Parameters",
                    parameters.stream()
                            .map(parameter -> new Row(
                                    parameter.path("name").asText(),
                                    parameter.path("required").asBoolean(),
                                    parameter.path("schema"),
                                    parameter
                                            .path("description")
                                            .asText(target(document, parameter.path("schema"))
                                                    .path("description")
                                                    .asText())))
                            .toList());
        }
        contents(body, "Body", target(document, operation.path("requestBody")));
        operation
                .path("responses")
                .properties()
                .forEach(response ->
                        contents(body, "Answer " + response.getKey(), target(document, response.getValue())));
        body.close().close();
    }

    /** A body or an answer: what it is, and its schema for each media type. */
    private static void contents(Markup body, String title, JsonNode message) {
        if (message.isMissingNode()) {
            return;
        }
        body.open("p").element("strong", title + ": ");
        spans(body, message.path("description").asText());
        message.path("content").properties().forEach(content -> {
            body.text(" ").element("code", content.getKey());
            type(body, content.getValue().path("schema"));
            examples(body, content.getValue().path("examples"));
        });
        body.close();
    }

    /** Where to see one: inputs and answers that the service itself gives. */
    private static void examples(Markup body, JsonNode examples) {
        examples.properties().forEach(example -> {
            String address = example.getValue().path("externalValue").asText();
            if (address.startsWith("/")) {
                body.text(" (").element("a", "example: " + example.getKey().replace('-', ' '), "href", address);
                body.text(")");
            }
        });
    }

    private record Row(String name, boolean required, JsonNode schema, String description) {}

    private static void schema(Markup body, JsonNode schema) {
        markdown(body, schema.path("description").asText());
        List<String> required = StreamSupport.stream(schema.path("required").spliterator(), false)
                .map(JsonNode::asText)
                .toList();
        List<Row> rows = new ArrayList<>();
        schema.path("properties")
                .properties()
                .forEach(property -> rows.add(new Row(
                        property.getKey(),
                        required.contains(property.getKey()),
                        property.getValue(),
                        property.getValue().path("description").asText())));
        if (rows.isEmpty()) {
            body.open("p");
            type(body, schema);
            body.close();
        } else {
            table(body, "Properties", rows);
        }
    }

    private static void table(Markup body, String name, List<Row> rows) {
        body.open("div", "class", "wide", "tabindex", "0", "role", "region", "aria-label", name);
        body.open("table").open("thead").open("tr");
        for (String head : List.of("Name", "Needed", "Type", "What it is")) {
            body.element("th", head, "scope", "col");
        }
        body.close().close().open("tbody");
        for (Row row : rows) {
            body.open("tr")
                    .open("th", "scope", "row")
                    .element("code", row.name())
                    .close();
            body.element("td", row.required() ? "yes" : "").open("td");
            type(body, row.schema());
            body.close().open("td");
            spans(body, row.description());
            body.close().close();
        }
        body.close().close().close();
    }

    /** Type of a schema in short, with its limits; a named one leads to its place on the page. */
    private static void type(Markup body, JsonNode schema) {
        String reference = schema.path("$ref").asText();
        if (reference.startsWith(SCHEMAS)) {
            String name = reference.substring(SCHEMAS.length());
            body.text(" ").element("a", name, "href", "#schema-" + name);
            return;
        }
        for (String choice : List.of("oneOf", "anyOf", "allOf")) {
            if (schema.has(choice)) {
                body.text(" " + ("allOf".equals(choice) ? "all of" : "one of"));
                schema.path(choice).forEach(each -> type(body, each));
            }
        }
        if (schema.has("items")) {
            body.text(" list of");
            type(body, schema.path("items"));
            return;
        }
        if (schema.has("additionalProperties")
                && schema.path("additionalProperties").isObject()) {
            body.text(" object of");
            type(body, schema.path("additionalProperties"));
            return;
        }
        body.text(" " + words(schema));
    }

    private static String words(JsonNode schema) {
        List<String> words = new ArrayList<>();
        JsonNode type = schema.path("type");
        words.add(type.isArray() ? joined(type, " or ") : type.asText());
        if (schema.has("enum") || schema.has("x-extensible-enum")) {
            words.add(joined(schema.path(schema.has("enum") ? "enum" : "x-extensible-enum"), ", "));
        }
        limit(words, schema, "minimum", "from ");
        limit(words, schema, "exclusiveMinimum", "more than ");
        limit(words, schema, "maximum", "to ");
        limit(words, schema, "exclusiveMaximum", "less than ");
        limit(words, schema, "default", "unless said ");
        return words.stream().filter(word -> !word.isEmpty()).collect(Collectors.joining(" "));
    }

    private static void limit(List<String> words, JsonNode schema, String name, String before) {
        if (schema.has(name)) {
            words.add(before + schema.path(name).asText());
        }
    }

    private static String joined(JsonNode list, String between) {
        return StreamSupport.stream(list.spliterator(), false)
                .map(JsonNode::asText)
                .collect(Collectors.joining(between));
    }

    private static List<JsonNode> resolved(JsonNode document, JsonNode list) {
        return StreamSupport.stream(list.spliterator(), false)
                .map(each -> target(document, each))
                .toList();
    }

    /** What a reference leads to; anything else is itself. */
    private static JsonNode target(JsonNode document, JsonNode node) {
        return node.has("$ref") ? document.at(node.path("$ref").asText().substring(1)) : node;
    }

    /** The Markdown that the contract uses: paragraphs, lists, code and bold. */
    private static void markdown(Markup body, String text) {
        for (String block : text.strip().split("\n\\s*\n", -1)) {
            if (block.isBlank()) {
                continue;
            }
            if (block.startsWith("- ")) {
                body.open("ul");
                for (String item : block.substring(2).split("\n- ", -1)) {
                    body.open("li");
                    spans(body, item);
                    body.close();
                }
                body.close();
            } else {
                body.open("p");
                spans(body, block);
                body.close();
            }
        }
    }

    private static void spans(Markup body, String text) {
        String line = text.replaceAll("\\s+", " ").strip();
        Matcher span = SPAN.matcher(line);
        int done = 0;
        while (span.find()) {
            body.text(line.substring(done, span.start()));
            String code = span.group(1);
            String bold = span.group(2);
            if (code != null) {
                body.element("code", code);
            } else if (bold != null) {
                body.element("strong", bold);
            }
            done = span.end();
        }
        body.text(line.substring(done));
    }

    private static String capital(String word) {
        return word.substring(0, 1).toUpperCase(Locale.ROOT) + word.substring(1);
    }
}
