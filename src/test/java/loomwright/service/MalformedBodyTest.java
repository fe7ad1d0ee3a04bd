package loomwright.service;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.junit.jupiter.params.provider.Arguments.arguments;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.Collections;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import loomwright.service.input.Contract.Operation;
import loomwright.service.problem.ProblemType;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Bodies that are no JSON, or JSON nobody can calculate with: each a 4xx of its own type, for every operation. */
class MalformedBodyTest {
    static Stream<Arguments> bodies() {
        return Stream.of(
                        sort("empty", "", ProblemType.MALFORMED_JSON),
                        sort("blank", " \n\t", ProblemType.MALFORMED_JSON),
                        sort("breaks off", "{\"a\":", ProblemType.MALFORMED_JSON),
                        sort("no JSON", "hello", ProblemType.MALFORMED_JSON),
                        sort("comment", "/* x */ {}", ProblemType.MALFORMED_JSON),
                        sort("single quotes", "{'a':1}", ProblemType.MALFORMED_JSON),
                        sort("trailing comma", "{\"a\":1,}", ProblemType.MALFORMED_JSON),
                        sort("leading zero", "{\"a\":01}", ProblemType.MALFORMED_JSON),
                        sort("control character", "{\"a\":\"\u0001\"}", ProblemType.MALFORMED_JSON),
                        sort("zero byte", "{\"a\":\"\u0000\"}", ProblemType.BAD_ENCODING),
                        sort("NaN", "{\"a\":NaN}", ProblemType.NOT_A_NUMBER),
                        sort("infinity", "{\"a\":-Infinity}", ProblemType.NOT_A_NUMBER),
                        sort("1e400", "{\"a\":1e400}", ProblemType.NUMBER_TOO_LARGE),
                        sort("-1e999999999", "{\"a\":[-1e999999999]}", ProblemType.NUMBER_TOO_LARGE),
                        sort("duplicate key", "{\"a\":1,\"a\":2}", ProblemType.DUPLICATE_KEY),
                        sort("inner duplicate key", "{\"b\":[{\"a\":1,\"a\":2}]}", ProblemType.DUPLICATE_KEY),
                        sort("trailing text", "{} x", ProblemType.TRAILING_TEXT),
                        sort("two values", "{}{}", ProblemType.TRAILING_TEXT),
                        sort("trailing bracket", "{}]", ProblemType.TRAILING_TEXT),
                        sort("null", "null", ProblemType.INVALID_INPUT),
                        sort("number", "1", ProblemType.INVALID_INPUT),
                        sort("text", "\"a\"", ProblemType.INVALID_INPUT),
                        sort("list", "[]", ProblemType.INVALID_INPUT),
                        sort("list of an object", "[{}]", ProblemType.INVALID_INPUT),
                        sort("lone surrogate", "{\"a\":\"\\ud800\"}", ProblemType.BAD_ENCODING),
                        sort("lone surrogate as name", "{\"\\udc00\":1}", ProblemType.BAD_ENCODING),
                        sort("too deep", "[".repeat(33) + "]".repeat(33), ProblemType.TOO_DEEP),
                        sort("far too deep", "{\"a\":".repeat(100_000), ProblemType.TOO_DEEP),
                        sort("long text", "{\"a\":\"" + "x".repeat(20_001) + "\"}", ProblemType.TOO_LONG),
                        sort("long name", "{\"" + "x".repeat(50_001) + "\":1}", ProblemType.TOO_LONG),
                        sort("long number", "{\"a\":1" + "0".repeat(41) + "}", ProblemType.TOO_LONG),
                        sort("many values", "[" + "1,".repeat(1_000_001) + "1]", ProblemType.TOO_LONG),
                        sort("UTF-16", "{}", StandardCharsets.UTF_16LE, ProblemType.BAD_ENCODING),
                        sort("Latin-1", "{\"a\":\"\u00e9\"}", StandardCharsets.ISO_8859_1, ProblemType.BAD_ENCODING),
                        sort("overlong", "\u00c0\u00af", StandardCharsets.ISO_8859_1, ProblemType.BAD_ENCODING))
                .flatMap(sort -> operations()
                        .map(operation -> arguments(
                                sort.get()[0] + " for " + operation.id(), operation, sort.get()[1], sort.get()[2])));
    }

    private static Arguments sort(String name, String body, ProblemType type) {
        return sort(name, body, StandardCharsets.UTF_8, type);
    }

    private static Arguments sort(String name, String body, Charset charset, ProblemType type) {
        return arguments(name, body.getBytes(charset), type);
    }

    private static Stream<Operation> operations() {
        return LiveService.CONTRACT.operations().stream().filter(operation -> operation.body() != null);
    }

    /** Each is wrong in as many ways as there are kinds of part; to weigh them all against each other took minutes. */
    @ParameterizedTest
    @ValueSource(strings = {"1", "{}", "{\"kind\":\"no-such\"}"})
    void ofThousandsOfWrongItemsTheFirstHundredFaultsAreTold(String item) {
        String parts = String.join(",", Collections.nCopies(20_000, item));
        LiveService.ask()
                .contentType("application/json")
                .body(
                        "{\"schema\":\"loomwright/plan/1\",\"name\":\"x\",\"system\":{\"nominalVoltageV\":12},\"wires\":[],\"parts\":["
                                + parts + "]}")
                .post("/v1/plans/solution")
                .then()
                .statusCode(400)
                .body("detail", containsString("There are more than 100 faults"))
                .body("errors.size()", equalTo(100));
    }

    @Test
    void terminalsAndColoursAreAskedForInWordsNotByTheirPattern() {
        LiveService.ask()
                .contentType("application/json")
                .body("{\"schema\":\"loomwright/plan/1\",\"name\":\"x\",\"system\":{\"nominalVoltageV\":12},\"parts\":["
                        + "{\"kind\":\"battery\",\"id\":\"battery\"}],\"wires\":[{\"id\":\"W1\",\"from\":\"battery.plus\","
                        + "\"to\":\"earth\",\"resistanceOhm\":0.01,\"colour\":\"brown\"}]}")
                .post("/v1/plans/solution")
                .then()
                .statusCode(400)
                .body("errors.accepted", hasItem("a terminal written as part.terminal, such as battery.plus"))
                .body("errors.accepted", hasItem(containsString("BN brown")));
    }

    @Test
    void theOneWrongItemAtTheEndOfALongListIsFound() {
        String good = "{\"kind\":\"resistor\",\"id\":\"R%d\",\"between\":[\"a\",\"b\"],\"resistanceOhm\":1}";
        String elements = IntStream.range(0, 5_000).mapToObj(good::formatted).collect(Collectors.joining(","));
        LiveService.ask()
                .contentType("application/json")
                .body("{\"reference\":\"a\",\"elements\":[" + elements + ",{\"kind\":\"resistor\"}]}")
                .post("/v1/networks/solution")
                .then()
                .statusCode(400)
                .body("errors.pointer", hasItem("/elements/5000/id"));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("bodies")
    void isRefusedWithItsOwnType(String name, Operation operation, byte[] body, ProblemType type) {
        LiveService.ask()
                .contentType("application/json")
                .body(body)
                .post(operation.path())
                .then()
                .statusCode(type.status())
                .body("type", equalTo(type.uri()))
                .body("title", equalTo(type.title()));
        LiveService.ask().get("/health").then().statusCode(200);
    }

    @ParameterizedTest
    @MethodSource("operations")
    void aBodyMayHoldAnyTextThatIsText(Operation operation) {
        LiveService.ask()
                .contentType("application/json; charset=\"UTF-8\"")
                .body("{\"\u00fc\uD83D\uDE97\\ud83d\\ude97\":1}".getBytes(StandardCharsets.UTF_8))
                .post(operation.path())
                .then()
                .statusCode(400)
                .body("errors.code", org.hamcrest.Matchers.hasItem("unknown-name"));
    }

    @ParameterizedTest
    @MethodSource("operations")
    void aByteOrderMarkIsPassedOver(Operation operation) {
        String without = LiveService.ask()
                .contentType("application/json")
                .body("{\"no-such\":1}")
                .post(operation.path())
                .path("detail");
        LiveService.ask()
                .contentType("application/json")
                .body("\uFEFF{\"no-such\":1}".getBytes(StandardCharsets.UTF_8))
                .post(operation.path())
                .then()
                .statusCode(400)
                .body("detail", equalTo(without));
    }

    @Test
    void thereAreOperationsWithABody() {
        assertThat(operations()).isNotEmpty();
    }
}
