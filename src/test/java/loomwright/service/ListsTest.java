package loomwright.service;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.lessThanOrEqualTo;
import static org.hamcrest.Matchers.notNullValue;
import static org.hamcrest.Matchers.nullValue;

import io.restassured.path.json.JsonPath;
import io.restassured.response.Response;
import java.io.IOException;
import java.io.InputStream;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import loomwright.service.page.Templates;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Lists over HTTP: taken wherever a plan is, given back, each answer held to the contract. */
class ListsTest {
    private static final String XLSX = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";
    private static final String ODS = "application/vnd.oasis.opendocument.spreadsheet";

    private static byte[] file(String name) {
        try (InputStream in = ListsTest.class.getResourceAsStream("/lists/" + name)) {
            if (in == null) {
                throw new IllegalStateException(name + " is not on the class path");
            }
            return in.readAllBytes();
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
    }

    private static Response post(String path, String type, byte[] body) {
        return LiveService.ask().header("Content-Type", type).body(body).post(path);
    }

    static Stream<String> templates() {
        return Templates.load().list().stream().map(Templates.Template::name);
    }

    @ParameterizedTest
    @CsvSource({
        "roadster.csv,text/csv",
        "saloon-lights.txt,text/plain",
        "bike-post.md,text/markdown",
        "boat.csv,text/csv"
    })
    void aListAsPeopleWriteItIsSolvedAndReviewed(String name, String type) {
        for (String path : new String[] {"/v1/plans/solution", "/v1/plans/review", "/v1/plans/backfeed"}) {
            post(path, type, file(name))
                    .then()
                    .statusCode(200)
                    .body("questions", hasSize(lessThanOrEqualTo(5)))
                    .body("assumptions.code", hasItem("list-positions"))
                    .body("plan.wires", notNullValue());
        }
    }

    @Test
    void theAnswerSaysWhatWasAssumedAndWhereToSayItOtherwise() {
        post("/v1/plans/review", "text/csv", file("roadster.csv"))
                .then()
                .statusCode(200)
                .body("assumptions.find { it.code == 'list-several-bulbs' }.ids", hasItem("side-lamps"))
                .body(
                        "assumptions.find { it.code == 'list-several-bulbs' }.assumed.place",
                        equalTo("row 17, column to"))
                .body("questions[0].code", equalTo("fuse-rating"))
                .body("questions[0].row", equalTo(20))
                .body("questions[0].ids", hasItem("fuse-2"));
    }

    @Test
    void aPictureAndAPostOfAList() {
        LiveService.ask()
                .header("Content-Type", "text/markdown")
                .accept("image/svg+xml")
                .body(file("bike-post.md"))
                .post("/v1/plans/diagram")
                .then()
                .statusCode(200);
        LiveService.ask()
                .header("Content-Type", "text/markdown")
                .accept("text/markdown")
                .body(file("bike-post.md"))
                .post("/v1/plans/review")
                .then()
                .statusCode(200);
    }

    @ParameterizedTest
    @ValueSource(strings = {"text/csv", XLSX, ODS, "text/markdown"})
    void aPlanGoesOutAsAListAndComesBackTheSame(String type) {
        String plan =
                LiveService.ask().get("/v1/examples/sandpiper-bypass-relay").asString();
        byte[] list = LiveService.ask()
                .contentType("application/json")
                .accept(type)
                .body(plan)
                .post("/v1/plans/conversion")
                .then()
                .statusCode(200)
                .extract()
                .asByteArray();
        JsonPath back = post("/v1/plans/conversion", type, list).jsonPath();
        assertThat(back.getList("assumptions")).isNull();
        assertThat(back.getList("questions")).isEmpty();
        JsonPath same = LiveService.ask()
                .contentType("application/json")
                .body(plan)
                .post("/v1/plans/conversion")
                .jsonPath();
        assertThat(back.getMap("result.plan")).isEqualTo(same.getMap("result.plan"));
    }

    @Test
    void anAnswerToAPlanInJsonHasNoQuestions() {
        LiveService.ask()
                .contentType("application/json")
                .body(LiveService.ask()
                        .get("/v1/examples/otter-6v-positive-earth")
                        .asString())
                .post("/v1/plans/review")
                .then()
                .statusCode(200)
                .body("questions", nullValue());
    }

    @Test
    void aTextWithoutATableIsRefusedInWords() {
        post(
                        "/v1/plans/review",
                        "text/plain",
                        "My horn does not work.".getBytes(java.nio.charset.StandardCharsets.UTF_8))
                .then()
                .statusCode(422)
                .body("errors[0].code", equalTo("missing"))
                .body("errors[0].accepted", containsString("from"));
    }

    @Test
    void whatIsNoWorkbookIsRefusedInWords() {
        for (String type : new String[] {XLSX, ODS}) {
            post("/v1/plans/review", type, file("roadster.csv"))
                    .then()
                    .statusCode(422)
                    .body("errors[0].code", equalTo("malformed"));
        }
    }

    @Test
    void theCatalogueOfPartsIsGivenOut() {
        LiveService.ask()
                .get("/v1/parts")
                .then()
                .statusCode(200)
                .body("result.kinds.kind", hasItem("relay"))
                .body(
                        "result.types.find { it.type == 'relay' }.values.find { it.nominalVoltageV == 24 }.value",
                        equalTo(255))
                .body(
                        "result.kinds.find { it.kind == 'relay' }.terminals.findAll { it.choices }.words.flatten()",
                        hasItem("87"));
    }

    @Test
    void anUnknownTemplateIsNotThere() {
        LiveService.ask().get("/v1/templates/rocket").then().statusCode(404);
    }

    @ParameterizedTest
    @MethodSource("templates")
    void theSmallPictureOfATemplateIsOfPartsThatItHas(String name) {
        byte[] list = LiveService.ask().get("/v1/templates/" + name).asByteArray();
        List<String> kinds = LiveService.ask()
                .contentType("text/csv")
                .body(list)
                .post("/v1/plans/conversion")
                .jsonPath()
                .getList("result.plan.parts.kind", String.class);
        List<String> drawn = LiveService.ask()
                .get("/v1/templates")
                .jsonPath()
                .getList("templates.find { it.name == '" + name + "' }.parts", String.class);
        assertThat(drawn).hasSizeBetween(2, 4);
        Map<String, Long> counts = kinds.stream().collect(Collectors.groupingBy(kind -> kind, Collectors.counting()));
        drawn.forEach(kind -> assertThat(counts.merge(kind, -1L, Long::sum)).isNotNegative());
    }

    @ParameterizedTest
    @MethodSource("templates")
    void everyTemplateIsSolvedAndReviewedClean(String name) {
        byte[] list = LiveService.ask().get("/v1/templates/" + name).asByteArray();
        JsonPath answer = post("/v1/plans/review", "text/csv", list)
                .then()
                .statusCode(200)
                .extract()
                .jsonPath();
        assertThat(answer.getList("questions")).isEmpty();
        assertThat(answer.getList("result.findings.findAll { it.severity != 'note' }.code"))
                .isEmpty();
    }

    @Test
    void twoTemplatesTogetherAreOneCircuit() {
        String starter = LiveService.ask().get("/v1/templates/starter-solenoid").asString();
        String horn = LiveService.ask().get("/v1/templates/horn-relay").asString();
        JsonPath answer = post(
                        "/v1/plans/conversion",
                        "text/csv",
                        (starter + "\r\n" + horn).getBytes(java.nio.charset.StandardCharsets.UTF_8))
                .jsonPath();
        assertThat(answer.getList("result.plan.parts.findAll { it.kind == 'battery' }"))
                .hasSize(1);
        assertThat(answer.getList("result.plan.parts.id")).contains("starter-solenoid", "horn-relay");
    }
}
