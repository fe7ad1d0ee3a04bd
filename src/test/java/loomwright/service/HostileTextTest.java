package loomwright.service;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import loomwright.service.input.Contract;
import loomwright.service.input.Contract.Operation;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Texts that mean no good by what they say: those that make a reader slow, and those that another program would run. */
class HostileTextTest {
    private static final int LONG = 20_000;
    /** As the contract has it. */
    private static final int MOST_OF_AN_EXPRESSION = 4_000;

    /** Every place of the contract with a pattern, as pointers. */
    private static List<String> patterns() {
        List<String> found = new ArrayList<>();
        collect(LiveService.CONTRACT.document(), "", found);
        return found;
    }

    private static void collect(JsonNode node, String pointer, List<String> found) {
        if (node.path("pattern").isTextual()) {
            found.add(pointer);
        }
        node.forEachEntry((name, child) -> collect(child, pointer + "/" + Contract.escaped(name), found));
        for (int i = 0; node.isArray() && i < node.size(); i++) {
            collect(node.get(i), pointer + "/" + i, found);
        }
    }

    /** A pattern that goes back and forth would take longer than the sun has left. */
    @TestFactory
    @Timeout(60)
    Stream<DynamicTest> noPatternOfTheContractTakesLongOverLongTexts() {
        assertThat(patterns()).isNotEmpty();
        return patterns().stream()
                .map(pointer -> DynamicTest.dynamicTest(pointer, () -> {
                    Contract.Schema schema = LiveService.CONTRACT.schema(pointer);
                    String form = LiveService.CONTRACT
                            .document()
                            .at(pointer)
                            .path("pattern")
                            .asText();
                    for (String piece : List.of("A", "a-", "BK", "GNYE", "a.", ".", "1", "A_", " ")) {
                        String text = piece.repeat(LONG / piece.length()) + "!";
                        assertThat(schema.validate(JsonNodeFactory.instance.textNode(text)))
                                .isNotEmpty();
                        assertThat(Pattern.compile(form).matcher(text).find()).isFalse();
                    }
                }));
    }

    @ParameterizedTest
    @ValueSource(strings = {"(", "((1", "1+", "1||", "1e", "0.", "[", "-"})
    @Timeout(60)
    void noTextTakesLongToReadAsAnExpression(String piece) {
        String text = piece.repeat(MOST_OF_AN_EXPRESSION / piece.length());
        LiveService.ask()
                .contentType("application/json")
                .body("{\"network\":\"" + text + "\"}")
                .post("/v1/resistance")
                .then()
                .statusCode(422);
        LiveService.ask()
                .get("/v1/resistance?network="
                        + text.substring(0, 2_000).replace("|", "%7C").replace("[", "%5B"))
                .then()
                // A + in an address is a blank, which is read as one, so that a series of ones is left.
                .statusCode(piece.equals("1+") ? 200 : 422);
    }

    private static Stream<Operation> operations() {
        return LiveService.CONTRACT.operations().stream().filter(operation -> operation.body() != null);
    }

    @ParameterizedTest
    @MethodSource("operations")
    @Timeout(60)
    void manyNamesAreToldAHundredTimesAtMost(Operation operation) {
        String names =
                IntStream.range(0, 100_000).mapToObj(i -> "\"k" + i + "\":0").collect(Collectors.joining(","));
        List<String> codes = LiveService.ask()
                .contentType("application/json")
                .body("{" + names + "}")
                .post(operation.path())
                .then()
                .statusCode(400)
                .extract()
                .path("errors.code");
        assertThat(codes).hasSizeLessThanOrEqualTo(100);
    }

    @ParameterizedTest
    @ValueSource(strings = {"9", "0.", "1e", "-", "1e-"})
    void aNumberOfAMillionDigitsIsNotRead(String start) {
        for (String path : List.of("/v1/voltage-drop", "/v1/plans/review")) {
            LiveService.ask()
                    .contentType("application/json")
                    .body("{\"currentA\":" + start + "9".repeat(1_000_000) + "}")
                    .post(path)
                    .then()
                    .statusCode(400);
        }
    }

    /** Taken in turn, so that each stands in several places. */
    private static final List<String> NAMES = List.of(
            "=cmd|' /C calc'!A0\r\nX-Injected: 1\r\n</title><script>alert(1)</script>\" onload=\"alert(2)",
            "|--> ]]> \u202E[a](javascript:alert(3)) <script>alert(4)</script>");

    /** A small plan whose every free text is hostile. */
    private static byte[] plan() throws Exception {
        JsonMapper mapper = new JsonMapper();
        JsonNode plan = mapper.readTree(
                LiveService.ask().get("/v1/examples/sandpiper-unguarded-bypass").asByteArray());
        rename(plan, new AtomicInteger());
        return mapper.writeValueAsString(plan).getBytes(StandardCharsets.UTF_8);
    }

    private static void rename(JsonNode node, AtomicInteger count) {
        if (node instanceof com.fasterxml.jackson.databind.node.ObjectNode object) {
            for (String name : List.of("name", "label")) {
                if (object.path(name).isTextual() && object.path(name).asText().contains(" ")) {
                    object.put(name, NAMES.get(count.getAndIncrement() % NAMES.size()));
                }
            }
        }
        node.forEach(child -> rename(child, count));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "/v1/plans/solution",
                "/v1/plans/backfeed",
                "/v1/plans/review",
                "/v1/plans/mistakes",
                "/v1/plans/readings"
            })
    void noCellOfATableBeginsLikeAFormula(String path) throws Exception {
        String table = LiveService.ask()
                .contentType("application/json")
                .accept("text/csv")
                .body(plan())
                .post(path)
                .then()
                .statusCode(200)
                .extract()
                .asString();
        assertThat(Pattern.compile("(^|[,\"\n])[=@\t]|(^|[,\n])\"?[+-](?![0-9.]+([eE][+-]?[0-9]+)?\"?[,\r])")
                        .matcher(table)
                        .find())
                .isFalse();
    }

    @ParameterizedTest
    @ValueSource(strings = {"/v1/plans/diagram", "/v1/plans/sheet"})
    void noTextBecomesMarkup(String path) throws Exception {
        byte[] plan = plan();
        String body = new String(plan, StandardCharsets.UTF_8);
        String page = LiveService.ask()
                .contentType("application/json")
                .body(path.endsWith("sheet") ? "{\"plan\":" + body + "}" : body)
                .post(path)
                .then()
                .statusCode(200)
                .header("X-Injected", org.hamcrest.Matchers.nullValue())
                .header("Content-Security-Policy", org.hamcrest.Matchers.containsString("default-src 'none'"))
                .extract()
                .asString();
        assertThat(page.replaceAll("\\s", " "))
                .doesNotContain("<script")
                .contains("&lt;script")
                .doesNotContainPattern("<[a-zA-Z][^<>]*\" onload=");
    }

    @Test
    void noTextBecomesMarkupOfAPost() throws Exception {
        for (String path : List.of("/v1/plans/review", "/v1/plans/mistakes", "/v1/plans/readings")) {
            String post = LiveService.ask()
                    .contentType("application/json")
                    .accept("text/markdown")
                    .body(plan())
                    .post(path)
                    .then()
                    .statusCode(200)
                    .extract()
                    .asString();
            assertThat(post)
                    .as(path)
                    .contains("javascript:alert(3)")
                    .doesNotContainPattern("(?<!\\\\)<script|(?<!\\\\)\\[a]\\(");
        }
    }
}
