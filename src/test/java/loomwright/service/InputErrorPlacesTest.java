package loomwright.service;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.nullValue;
import static org.hamcrest.Matchers.startsWith;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.restassured.response.ValidatableResponse;
import java.io.IOException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A fault of the input is one entry, at the place that its writer knows, with the name or word that was meant. */
class InputErrorPlacesTest {
    private static final JsonMapper JSON = new JsonMapper();

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '^', textBlock = """
            /wires/3 | {"lenghtM":1}              | unknown-name   | wire W4          | lengthM
            /wires/3 | {"lengthM":"1.2"}          | number-as-text | wire W4: lengthM |
            /wires/3 | {"lengthM":-1}             | out-of-range   | wire W4: lengthM |
            /wires/3 | {"lengthM":"long"}         | wrong-type     | wire W4: lengthM |
            /wires/3 | {"from":"nowhere.x"}       | unknown-reference | wire W4: from |
            /wires/3 | {"lengthFt":3}             | contradiction  | wire W4: lengthFt |
            /parts/0 | {"kind":"batery"}          | not-one-of     | part battery: kind | battery
            /system  | {"nominalVoltageV":"12"}   | number-as-text | system.nominalVoltageV |
            /system  | {"nominalVoltagV":12}      | unknown-name   | system           | nominalVoltageV
            """)
    void isAtItsPlaceByTheNameThatItsWriterGave(
            String place, String written, String code, String inWords, String suggestion) throws IOException {
        ObjectNode plan = plan();
        ((ObjectNode) plan.at(place)).setAll((ObjectNode) JSON.readTree(written));
        post("/v1/plans/solution", plan)
                .body("errors", hasSize(1))
                .body("errors[0].code", equalTo(code))
                .body("errors[0].place", equalTo(inWords))
                .body("errors[0].suggestion", suggestion == null ? nullValue() : equalTo(suggestion))
                .body("errors[0].pointer", startsWith(place));
    }

    @Test
    void aKindUnderAnotherNameIsOneFault() throws IOException {
        ObjectNode plan = plan();
        ObjectNode part = (ObjectNode) plan.at("/parts/0");
        part.set("type", part.remove("kind"));
        post("/v1/plans/solution", plan)
                .body("errors", hasSize(1))
                .body("errors[0].pointer", equalTo("/parts/0/type"))
                .body("errors[0].suggestion", equalTo("kind"));
    }

    /** The contract has one list of forms for all. */
    @Test
    void aFormThatDoesNotExistListsThoseOfTheOperation() {
        LiveService.ask()
                .get("/v1/fuse?currentA=8&size=14+AWG&format=xml")
                .then()
                .statusCode(400)
                .body("errors", hasSize(1))
                .body("errors[0].accepted", equalTo("one of json, text, csv, markdown, svg, png and html"));
    }

    @Test
    void aNameThatIsMisspeltIsNotMissingBesides() {
        LiveService.ask()
                .get("/v1/fuse?curentA=3&size=2%20mm2")
                .then()
                .statusCode(400)
                .body("errors", hasSize(1))
                .body("errors[0].parameter", equalTo("curentA"))
                .body("errors[0].suggestion", equalTo("currentA"));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            /v1/plans/review     | plan  | /plan
            /v1/plans/comparison | bare  | ''
            /v1/plans/review     | list  | ''
            /v1/plans/solution   | list  | ''
            /v1/plans/backfeed   | two   | ''
            /v1/plans/diagnosis  | two   | ''
            /v1/plans/diagnosis  | bare  | ''
            /v1/plans/comparison | plan  | /plan
            /v1/voltage-drop     | bare  | ''
            /v1/spark            | plan  | /plan
            """)
    void aBodyOfAnotherOperationIsOneFault(String path, String shape, String pointer) throws IOException {
        JsonNode body = switch (shape) {
            case "plan" -> JSON.createObjectNode().set("plan", plan());
            case "two" ->
                JSON.createObjectNode().<ObjectNode>set("before", plan()).set("after", plan());
            case "list" -> JSON.createArrayNode().add(plan()).add(plan());
            default -> plan();
        };
        post(path, body)
                .body("errors", hasSize(1))
                .body("errors[0].code", equalTo("wrong-shape"))
                .body("errors[0].pointer", equalTo(pointer));
    }

    @Test
    void aSparkWithoutItsSpeedIsToldWhatASweepNeeds() {
        String accepted = LiveService.ask()
                .contentType("application/json")
                .body("{}")
                .post("/v1/spark")
                .then()
                .statusCode(422)
                .extract()
                .path("errors[0].accepted");
        assertThat(accepted).contains("speedFromRpm", "speedToRpm", "speedSteps");
    }

    @Test
    void anExampleThatDoesNotExistIsAnsweredWithThoseThatDo() {
        String detail = LiveService.ask()
                .get("/v1/examples/no-such")
                .then()
                .statusCode(404)
                .extract()
                .path("detail");
        LiveService.ask()
                .get("/v1/examples")
                .jsonPath()
                .getList("examples.name", String.class)
                .forEach(name -> assertThat(detail).contains(name));
    }

    private static ObjectNode plan() throws IOException {
        return (ObjectNode) JSON.readTree(
                LiveService.ask().get("/v1/examples/sandpiper-as-built").asString());
    }

    private static ValidatableResponse post(String path, JsonNode body) {
        ValidatableResponse answered = LiveService.ask()
                .contentType("application/json")
                .body(body.toString())
                .post(path)
                .then();
        assertThat(answered.extract().statusCode()).isIn(400, 422);
        return answered;
    }
}
