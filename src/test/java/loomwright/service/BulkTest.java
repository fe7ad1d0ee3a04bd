package loomwright.service;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.notNullValue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.restassured.response.Response;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Random;
import java.util.stream.Stream;
import loomwright.service.ContractExamples.Example;
import loomwright.service.input.Json;
import loomwright.service.input.RawQuery;
import loomwright.service.limits.CalculationLimits;
import loomwright.service.limits.ServiceLimits;
import loomwright.service.page.Examples;
import loomwright.service.problem.Problem;
import loomwright.service.stream.BulkOperations;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Each line of a bulk run is answered as its operation answers it alone, whatever is wrong with its neighbours. */
class BulkTest {
    private static final JsonMapper MAPPER = new JsonMapper();
    private static final BulkOperations OPERATIONS =
            BulkOperations.of(LiveService.CONTRACT, Routes.single(CalculationLimits.DEFAULT));
    private static final String DROP = "{\"currentA\":4,\"size\":\"16 AWG\",\"lengthM\":3}";

    private static Response bulk(String operation, String query, String mediaType, String lines) {
        return LiveService.ask()
                .contentType(mediaType.contains("charset") ? mediaType : mediaType + "; charset=utf-8")
                .body(lines.getBytes(StandardCharsets.UTF_8))
                .post("/v1/bulk/" + operation + query);
    }

    private static List<String> lines(String operation, String query, String lines) {
        Response response = bulk(operation, query, Json.LINES, lines);
        assertThat(response.statusCode()).as(response.asString()).isEqualTo(200);
        return response.asString().lines().toList();
    }

    private static JsonNode json(String line) {
        try {
            return MAPPER.readTree(line);
        } catch (com.fasterxml.jackson.core.JsonProcessingException e) {
            throw new IllegalStateException(line, e);
        }
    }

    private static Response alone(String operation, String body) {
        return LiveService.ask()
                .contentType(Json.MEDIA_TYPE)
                .body(body.getBytes(StandardCharsets.UTF_8))
                .post(OPERATIONS.get(operation).post().path());
    }

    /** Good and bad inputs of an operation: its examples, the demo plans, and some of them damaged. */
    private static List<String> inputs(String operation) {
        List<String> inputs = new ArrayList<>();
        for (Example example : ContractExamples.all()) {
            if (example.operation().id().equals(OPERATIONS.get(operation).post().id())) {
                inputs.add(example.body().toString());
            }
        }
        if (OPERATIONS.get(operation).post().path().startsWith("/v1/plans/")) {
            Examples.load()
                    .list()
                    .forEach(plan -> inputs.add(
                            json(LiveService.ask().get(plan.href()).asString()).toString()));
        }
        Random random = new Random(20261125);
        for (String good : List.copyOf(inputs)) {
            inputs.add(good.substring(0, random.nextInt(good.length())));
            ObjectNode damaged = (ObjectNode) json(good);
            List<String> names = new ArrayList<>();
            damaged.fieldNames().forEachRemaining(names::add);
            damaged.remove(names.get(random.nextInt(names.size())));
            damaged.put("noSuch", 1);
            inputs.add(damaged.toString());
        }
        return inputs;
    }

    @TestFactory
    Stream<DynamicTest> aLineIsAnsweredByteForByteAsItIsAlone() {
        return OPERATIONS.names().stream()
                .map(operation -> DynamicTest.dynamicTest(operation, () -> {
                    List<String> inputs = inputs(operation);
                    StringBuilder sent = new StringBuilder();
                    for (int i = 0; i < inputs.size(); i++) {
                        sent.append(
                                        key(inputs, i).isEmpty()
                                                ? inputs.get(i)
                                                : "{\"key\":\"k" + i + "\",\"input\":" + inputs.get(i) + "}")
                                .append('\n');
                    }
                    List<String> answers = lines(operation, "", sent.toString());
                    assertThat(answers).hasSize(inputs.size() + 1);
                    int problems = 0;
                    for (int i = 0; i < inputs.size(); i++) {
                        Response alone = alone(operation, inputs.get(i));
                        String key = key(inputs, i);
                        if (alone.statusCode() == 200) {
                            assertThat(answers.get(i))
                                    .isEqualTo("{\"line\":" + (i + 1) + "," + key + "\"answer\":" + alone.asString()
                                            + "}");
                        } else {
                            problems++;
                            assertThat(answers.get(i)).startsWith("{\"line\":" + (i + 1) + "," + key + "\"problem\":");
                            assertThat(withoutInstance(json(answers.get(i)).path("problem")))
                                    .isEqualTo(withoutInstance(json(alone.asString())));
                        }
                    }
                    JsonNode summary = json(answers.get(inputs.size())).path("summary");
                    assertThat(summary.path("operation").asText()).isEqualTo(operation);
                    assertThat(summary.path("complete").asBoolean()).isTrue();
                    assertThat(summary.path("problems").asInt())
                            .isEqualTo(problems)
                            .isPositive();
                    assertThat(summary.path("answers").asInt())
                            .isEqualTo(inputs.size() - problems)
                            .isPositive();
                }));
    }

    /** Every other line has a key, but for those that break off: there the end of the line would count as theirs. */
    private static String key(List<String> inputs, int i) {
        try {
            MAPPER.readTree(inputs.get(i));
        } catch (com.fasterxml.jackson.core.JsonProcessingException brokenOff) {
            return "";
        }
        return i % 2 == 0 ? "" : "\"key\":\"k" + i + "\",";
    }

    private static JsonNode withoutInstance(JsonNode problem) {
        ((ObjectNode) problem).remove("instance");
        return problem;
    }

    @Test
    void aCarMuchLikeTheOneBeforeGetsItsOwnAnswer() {
        JsonNode plan =
                json(LiveService.ask().get("/v1/examples/sandpiper-as-built").asString());
        for (String operation : List.of("solution", "backfeed", "review")) {
            List<String> inputs = new ArrayList<>();
            for (int i = 0; i < 6; i++) {
                ObjectNode car = plan.deepCopy();
                car.put("name", "Car " + i);
                car.putArray("notes").add("Owner " + i);
                ((ObjectNode) car.at("/wires/0")).put("lengthM", i / 2 == 0 ? 0.7 : 9);
                inputs.add(car.toString());
            }
            List<String> answers = lines(operation, "", String.join("\n", inputs));
            for (int i = 0; i < inputs.size(); i++) {
                assertThat(answers.get(i))
                        .isEqualTo("{\"line\":" + (i + 1) + ",\"answer\":"
                                + alone(operation, inputs.get(i)).asString() + "}");
            }
        }
    }

    @Test
    void theSummaryCountsTheFindingsOfAllAnswers() {
        String plan = json(LiveService.ask()
                        .get("/v1/examples/sandpiper-unguarded-bypass")
                        .asString())
                .toString();
        List<String> answers = lines("review", "", plan + "\n" + plan + "\n");
        JsonNode findings = json(answers.get(0)).at("/answer/result/findings");
        assertThat(findings).isNotEmpty();
        JsonNode counts = json(answers.get(2)).at("/summary/findings");
        int all = 0;
        for (JsonNode count : counts) {
            assertThat(count.path("lines").asInt()).isEqualTo(2);
            all += count.path("count").asInt();
        }
        assertThat(all).isEqualTo(2 * findings.size());
        assertThat(counts.path(0).path("severity").asText())
                .isEqualTo(findings.path(0).path("severity").asText());
    }

    @Test
    void aKeyComesBackAsItWasSentWhereverItStands() {
        List<String> answers = lines(
                "voltage-drop",
                "",
                "{\"input\":" + DROP + ",\"key\":\"a\\\"ü\"}\n{\"key\":1.50,\"input\":" + DROP + "}\n" + DROP + "\n");
        assertThat(answers.get(0)).startsWith("{\"line\":1,\"key\":\"a\\\"ü\",\"answer\":");
        assertThat(answers.get(1)).startsWith("{\"line\":2,\"key\":1.50,\"answer\":");
        assertThat(answers.get(2)).startsWith("{\"line\":3,\"answer\":");
    }

    @TestFactory
    Stream<DynamicTest> aLineThatIsWrongAroundItsInputIsToldSo() {
        String deep = "{\"key\":\"k\",\"input\":" + "[".repeat(33) + "]".repeat(33) + "}";
        return Stream.of(
                        new String[] {"no input", "{\"key\":\"k\"}", "invalid-input", "/input"},
                        new String[] {"key is a list", "{\"key\":[1],\"input\":{}}", "invalid-input", "/key"},
                        new String[] {
                            "key that others read as infinite", "{\"key\":1e400,\"input\":{}}", "invalid-input", "/key"
                        },
                        new String[] {
                            "long key", "{\"key\":\"" + "k".repeat(201) + "\",\"input\":{}}", "invalid-input", "/key"
                        },
                        new String[] {
                            "another name", "{\"key\":\"k\",\"input\":{},\"inputs\":1}", "unknown-name", "/inputs"
                        },
                        new String[] {"key twice", "{\"key\":\"k\",\"key\":\"l\",\"input\":{}}", "duplicate-key", ""},
                        new String[] {"input twice", "{\"input\":{},\"input\":{}}", "duplicate-key", ""},
                        new String[] {"text behind", "{\"key\":\"k\",\"input\":{}} x", "trailing-text", ""},
                        new String[] {"broken behind the input", "{\"key\":\"k\",\"input\":{} x", "malformed-json", ""},
                        new String[] {"broken before it", "{\"key\":\"k\",\"input\"}", "malformed-json", ""},
                        new String[] {"broken key", "{\"key\":\"k", "malformed-json", ""},
                        new String[] {"input too deep", deep, "too-deep", ""},
                        new String[] {"half a surrogate pair", "{\"key\":\"\\ud800\",\"input\":{}}", "bad-encoding", ""
                        },
                        new String[] {"input is a number", "{\"key\":\"k\",\"input\":12}", "invalid-input", ""})
                .map(one -> DynamicTest.dynamicTest(one[0], () -> {
                    List<String> answers = lines("voltage-drop", "", one[1] + "\n" + DROP + "\n");
                    JsonNode problem = json(answers.get(0)).path("problem");
                    assertThat(problem.path("type").asText()).endsWith("/" + one[2]);
                    if (!one[3].isEmpty()) {
                        assertThat(problem.at("/errors/0/pointer").asText()).isEqualTo(one[3]);
                    }
                    assertThat(json(answers.get(1)).has("answer")).isTrue();
                }));
    }

    @Test
    void linesMayEndWithCrLfFollowAByteOrderMarkAndBeBlank() {
        List<String> answers = lines("voltage-drop", "", "\uFEFF" + DROP + "\r\n\r\n  \n" + DROP);
        assertThat(answers).hasSize(3);
        assertThat(json(answers.get(1)).path("line").asInt()).isEqualTo(4);
        assertThat(json(answers.get(2)).at("/summary/blank").asInt()).isEqualTo(2);
    }

    @Test
    void bytesThatAreNoTextAndLinesThatAreTooLongSpoilTheirOwnLineOnly() {
        byte[] latin1 = "{\"key\":\"k\",\"input\":{\"size\":\"\u00fc\"}}\n".getBytes(StandardCharsets.ISO_8859_1);
        byte[] zeros = "{\"\u0000\":1}\n".getBytes(StandardCharsets.UTF_16LE);
        byte[] tooLong =
                ("\"" + "x".repeat(ServiceLimits.DEFAULT.bodyBytes()) + "\"\n").getBytes(StandardCharsets.UTF_8);
        byte[] good = (DROP + "\n").getBytes(StandardCharsets.UTF_8);
        java.io.ByteArrayOutputStream sent = new java.io.ByteArrayOutputStream();
        Stream.of(latin1, good, tooLong, good, zeros).forEach(sent::writeBytes);
        Response response = LiveService.ask()
                .contentType(Json.LINES + "; charset=utf-8")
                .body(sent.toByteArray())
                .post("/v1/bulk/voltage-drop");
        List<String> answers = response.asString().lines().toList();
        assertThat(json(answers.get(0)).at("/problem/type").asText()).endsWith("/bad-encoding");
        assertThat(json(answers.get(0)).path("key").asText()).isEqualTo("k");
        assertThat(json(answers.get(1)).has("answer")).isTrue();
        assertThat(json(answers.get(2)).at("/problem/status").asInt()).isEqualTo(413);
        assertThat(json(answers.get(3)).path("line").asInt()).isEqualTo(4);
        assertThat(json(answers.get(4)).at("/problem/type").asText()).endsWith("/bad-encoding");
    }

    @Test
    void whatIsTakenUpAgainIsNumberedAsBefore() {
        String lines = (DROP + "\n").repeat(5);
        List<String> whole = lines("voltage-drop", "", lines);
        List<String> from4 = lines("voltage-drop", "?fromLine=4", lines);
        assertThat(from4.subList(0, 2)).isEqualTo(whole.subList(3, 5));
        assertThat(json(from4.get(2)).at("/summary/passedOver").asInt()).isEqualTo(3);
        List<String> rest = lines("voltage-drop", "?numberedFrom=4", (DROP + "\n").repeat(2));
        assertThat(rest.subList(0, 2)).isEqualTo(whole.subList(3, 5));
        assertThat(json(rest.get(2)).at("/summary/nextLine").asInt()).isEqualTo(6);
    }

    @Test
    void noLinesAreARunToo() {
        List<String> answers = lines("review", "", "");
        assertThat(answers).hasSize(1);
        assertThat(json(answers.get(0)).at("/summary/complete").asBoolean()).isTrue();
    }

    @TestFactory
    Stream<DynamicTest> aRowIsAnsweredAsGetIs() {
        return OPERATIONS.names().stream()
                .filter(name -> OPERATIONS.get(name).get() != null)
                .flatMap(name -> ContractExamples.all().stream()
                        .filter(example -> example.operation()
                                .id()
                                .equals(Objects.requireNonNull(
                                                OPERATIONS.get(name).get())
                                        .id()))
                        .map(example -> DynamicTest.dynamicTest(example.toString(), () -> {
                            String url = example.url();
                            StringBuilder names = new StringBuilder("key");
                            StringBuilder cells = new StringBuilder("car 1");
                            RawQuery.parse(url.substring(url.indexOf('?') + 1)).forEach((parameter, values) -> {
                                names.append(',').append(parameter);
                                cells.append(",\"")
                                        .append(values.get(0).replace("\"", "\"\""))
                                        .append('"');
                            });
                            Response alone = example.send(LiveService.ask());
                            String sent = names + "\r\n" + cells + "\r\n";
                            Response json = LiveService.ask()
                                    .contentType("text/csv; charset=utf-8")
                                    .accept(Json.LINES)
                                    .body(sent.getBytes(StandardCharsets.UTF_8))
                                    .post("/v1/bulk/" + name);
                            String first = json.asString().lines().findFirst().orElseThrow();
                            if (alone.statusCode() == 200) {
                                assertThat(first)
                                        .isEqualTo(
                                                "{\"line\":2,\"key\":\"car 1\",\"answer\":" + alone.asString() + "}");
                                compareTables(
                                        example,
                                        bulk(name, "", "text/csv", sent).asString());
                            } else {
                                assertThat(withoutInstance(json(first).path("problem")))
                                        .isEqualTo(withoutInstance(json(alone.asString())));
                            }
                        })));
    }

    private static void compareTables(Example example, String rows) {
        List<String> alone = example.send(LiveService.ask().accept("text/csv"))
                .asString()
                .lines()
                .toList();
        List<String> expected = new ArrayList<>();
        expected.add("line,key,status,message," + alone.get(0));
        alone.stream().skip(1).forEach(row -> expected.add("2,car 1,200,," + row));
        List<String> written = rows.lines().toList();
        assertThat(written.subList(0, expected.size())).isEqualTo(expected);
        assertThat(written.subList(expected.size(), written.size()))
                .allMatch(row -> row.startsWith("summary,"))
                .anyMatch(row -> row.startsWith("summary,answers,,1,"))
                .anyMatch(row -> row.startsWith("summary,problems,,0,"))
                .last()
                .asString()
                .startsWith("summary,complete,,yes,");
    }

    @Test
    void aRowThatCannotBeReadHasItsProblemInTheTable() {
        List<String> rows = bulk(
                        "conductor-size",
                        "",
                        "text/csv; charset=utf-8",
                        "\uFEFFkey,currentA,lengthM\na,\"5,2\n\nb,5,2,7\nc,5,\n\"d,\"\"d\"\"\",x,2\ne,5,2\n")
                .asString()
                .lines()
                .toList();
        assertThat(rows.get(1)).startsWith("2,,400,\"");
        assertThat(rows.get(2)).startsWith("4,b,400,");
        assertThat(rows.get(3)).startsWith("5,c,422,");
        assertThat(rows.get(4)).startsWith("6,\"d,\"\"d\"\"\",400,");
        assertThat(rows.get(5)).startsWith("7,e,200,,drop,");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "key;currentA;lengthM\na;5,2;3,5\n",
                "key\tcurrentA\tlengthM\na\t5,2\t3,5\n",
                "key,currentA,lengthM\na,5.2 A,3.5 m\n",
                "key,currentA,lengthM\na,\"5,2\",\"3,5\"\n",
                "key;currentA;lengthM\na;5,2 A;350 cm\n"
            })
    void tablesOfOtherCountriesAndCellsWithUnitsAreRead(String table) {
        String plain = bulk("voltage-drop", "", "text/csv", "key,currentA,lengthM,size\na,5.2,3.5,2 mm²\n")
                .asString();
        char separator = table.charAt(3);
        String sized = table.replaceFirst("lengthM", "lengthM" + separator + "size")
                .replaceFirst("\n$", separator + "2 mm²\n");
        assertThat(bulk("voltage-drop", "", "text/csv", sized).asString()).isEqualTo(plain);
        assertThat(plain.lines().toList().get(1)).startsWith("2,a,200,");
    }

    @ParameterizedTest
    @ValueSource(strings = {"\"1,234\"", "80 mA", "5 V", "about 5"})
    void aCellThatMayMeanTwoNumbersOrSaysAnotherUnitIsNamed(String current) {
        List<String> rows = bulk("fuse", "", "text/csv", "key,currentA,size\na," + current + ",2 mm²\n")
                .asString()
                .lines()
                .toList();
        assertThat(rows.get(1)).startsWith("2,a,400,").contains("currentA");
    }

    @Test
    void plansMayBeAnsweredAsOneTable() {
        String plan = json(LiveService.ask()
                        .get("/v1/examples/sandpiper-as-built")
                        .asString())
                .toString();
        Response response = LiveService.ask()
                .contentType(Json.LINES + "; charset=utf-8")
                .accept("text/csv")
                .body((plan + "\n{}\n").getBytes(StandardCharsets.UTF_8))
                .post("/v1/bulk/backfeed");
        List<String> rows = response.asString().lines().toList();
        assertThat(rows.get(0)).startsWith("line,key,status,message,load,severity,");
        assertThat(rows.get(1)).startsWith("1,,200,,");
        assertThat(rows).anyMatch(row -> row.startsWith("2,,400,"));
        assertThat(rows).anyMatch(row -> row.startsWith("summary,problems,,1,"));
        assertThat(rows.get(rows.size() - 1)).startsWith("summary,complete,,yes,");
    }

    @Test
    void aHeaderWithAnotherNameRefusesTheWholeTable() {
        bulk("fuse", "", "text/csv", "key,currentA,colour\na,5,red\n")
                .then()
                .statusCode(400)
                .header("Content-Type", Problem.MEDIA_TYPE)
                .body("errors[0].parameter", equalTo("colour"));
        bulk("fuse", "", "text/csv", "currentA,currentA\n1,2\n")
                .then()
                .statusCode(400)
                .body("errors[0].code", equalTo("duplicate"));
        bulk("fuse", "", "text/csv", "").then().statusCode(400);
    }

    @Test
    void otherFormsAreNotRead() {
        bulk("review", "", "application/pdf", "name\n")
                .then()
                .statusCode(415)
                .header("Accept-Post", containsString(Json.LINES));
        bulk("review", "", "application/json", "{}").then().statusCode(415);
        bulk("reviews", "", Json.LINES, "").then().statusCode(404).body("detail", notNullValue());
    }
}
