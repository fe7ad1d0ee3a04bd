package loomwright.service;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;

import com.fasterxml.jackson.databind.JsonNode;
import io.restassured.response.ValidatableResponse;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Drop, size and fuse over HTTP: 1 published examples, 2 faults, 3 query and body agree. */
class WireCalculationsTest {
    private static final double OHM_PER_KM_IN_OHM_PER_FT = 1000 / 0.3048;

    @ParameterizedTest(name = "FAA AC 43.13-1B tables 11-7 and 11-8: {0} AWG, {1} ft, {2} A, {3} ohm/ft: {4} V")
    @CsvSource({
        "6, 107, 20, 0.00044, 0.942",
        "4, 90, 20, 0.00028, 0.504",
        "14, 100, 20, 0.00306, 6.12",
        "12, 88, 20, 0.00202, 3.555",
        "10, 39, 20, 0.00126, 0.983",
        "10, 156, 20, 0.00126, 3.931",
        "10, 273, 20, 0.00126, 6.880",
        "10, 19.5, 20, 0.00126, 0.491"
    })
    void dropOfTheAdvisoryCircular(int gauge, double ft, double currentA, double ohmPerFt, double dropV) {
        assertThat(figure("/v1/voltage-drop?size=" + gauge + "AWG&lengthFt=" + ft + "&currentA=" + currentA
                        + "&returnPath=none&temperatureC=20&resistanceOhmPerKm20C="
                        + ohmPerFt * OHM_PER_KM_IN_OHM_PER_FT))
                .isCloseTo(dropV, within(0.0006));
    }

    /** FAA AC 43.13-1B 11-66 and figure 11-2, example 1: 28 V, 20 A, 50 ft: between 10 and 8 on the chart, take 8. */
    @Test
    void sizeOfTheAdvisoryCircular() {
        LiveService.ask()
                .get("/v1/conductor-size?currentA=20&lengthFt=50&returnPath=none&supplyV=28&limitV=1&temperatureC=20")
                .then()
                .statusCode(200)
                .body("result.size", equalTo("8 AWG"));
    }

    /** FAA AC 43.13-1B 11-66: L2 = 254.5 L1 / (234.5 + T2); 100 ft at 20 C is 76.08 ft at 100 C. */
    @Test
    void longestRunAtTemperature() {
        String run = "/v1/voltage-drop?size=10AWG&lengthFt=10&currentA=20&returnPath=none&limitV=1&temperatureC=";
        double cold = get(run + 20).extract().jsonPath().getDouble("result.maxLengthM");
        double hot = get(run + 100).extract().jsonPath().getDouble("result.maxLengthM");
        assertThat(100 * hot / cold).isCloseTo(76.08, within(0.01));
    }

    @ParameterizedTest(
            name = "boat supplier''s example, CM = 10.75 I L / E: 10 A, 21 ft, {0} % of 12 V: {1} CM, {2} AWG")
    @CsvSource({"10, 1881, 16", "3, 6271, 12"})
    void circularMilsByBoatPractice(String percent, double circularMils, String gauge) {
        var answer = get("/v1/conductor-size?currentA=10&lengthFt=21&returnPath=none&limitPercent=" + percent)
                .body("result.beside[0].size", equalTo(gauge + " AWG"))
                .extract()
                .jsonPath();
        assertThat(answer.getDouble("result.beside[0].value")).isCloseTo(circularMils, within(0.5));
    }

    /** OpenStax College Physics 20.3: 20.0 m of 12-gauge copper: 0.104 ohm; 20.4: 1 km of 2/0, 100 A: 2.55 kW of solid copper. */
    @Test
    void resistanceAndHeatOfTextbookWires() {
        assertThat(20 * figure("/v1/conductors/12AWG?temperatureC=20")).isCloseTo(0.104, within(0.0005));
        double wattsPerM = get("/v1/voltage-drop?size=2/0&lengthM=1000&currentA=100&returnPath=none&temperatureC=20")
                .extract()
                .jsonPath()
                .getDouble("result.out.heatWPerM");
        assertThat(1000 * wattsPerM).isCloseTo(1.08 * 2550, within(10.0));
    }

    /** Preece's equation: copper of 16 AWG, 0.0508 in (rounded): 117.3 A; the link of a 12 AWG wire is four numbers smaller. */
    @Test
    void meltingCurrentOfALink() {
        var answer = get("/v1/fuse?currentA=8&size=12&ambientC=25")
                .body("result.fusibleLink.size", equalTo("16 AWG"))
                .extract()
                .jsonPath();
        assertThat(answer.getDouble("result.fusibleLink.preeceA")).isCloseTo(117.3, within(0.1));
    }

    @Test
    void starterCablesAreNamedAsUsuallyUnfused() {
        get("/v1/fuse?currentA=150&size=1/0&circuit=starter")
                .body("result.usuallyUnfused", equalTo(true))
                .body("cautions.code", hasItem("unfused-supply"));
    }

    @ParameterizedTest(name = "{0}: {1} at {2}, accepted: {4}")
    @CsvSource(
            delimiter = '|',
            value = {
                "/v1/voltage-drop?size=14&lengthM=0&currentA=1 | 400 | lengthM | 0 | 0.001 to 10000",
                "/v1/voltage-drop?size=14&lengthM=-3&currentA=1 | 400 | lengthM | -3 | 0.001 to 10000",
                "/v1/voltage-drop?size=14&lengthM=3&currentA=0 | 400 | currentA | 0 | a number from",
                "/v1/voltage-drop?size=14&lengthM=3&currentA=-1 | 400 | currentA | -1 | a number from",
                "/v1/voltage-drop?size=26AWG&lengthM=3&currentA=1 | 422 | size | 26AWG | 4/0 to 24",
                "/v1/voltage-drop?size=16&lengthM=3&currentA=1 | 422 | size | 16 | 16 AWG",
                "/v1/voltage-drop?size=14&lengthM=3&lengthFt=3&currentA=1 | 422 | lengthFt | 3 | not both",
                "/v1/voltage-drop?size=14&lengthM=3&currentA=1&jointsOutOhm=0.1,-1 | 400 | jointsOutOhm | -1 | from 0",
                "/v1/voltage-drop?size=14&lengthM=3&currentA=1&jointsOutOhm=0.1,x | 400 | jointsOutOhm | x | a number",
                "/v1/conductor-size?currentA=0&lengthM=3 | 400 | currentA | 0 | a number from",
                "/v1/conductor-size?currentA=3&lengthM=3&ambientC=90&insulationC=80 | 422 | ambientC | 90 | below",
                "/v1/fuse?currentA=0&size=14 | 400 | currentA | 0 | a number from",
                "/v1/fuse?currentA=1&size=300mm2 | 422 | size | 300mm2 | IEC 60228",
                "/v1/conductors/40%20AWG | 422 | size | 40 AWG | 4/0 to 24",
                "/v1/conductors/14?temperatureC=900 | 400 | temperatureC | 900 | -60 to 400",
                "/v1/conductors?system=awg,sae | 400 | system | awg,sae | one of awg"
            })
    void whatCannotBeCalculatedIsRefusedWithItsPlace(
            String url, int status, String parameter, String value, String accepted) {
        LiveService.ask()
                .get(url)
                .then()
                .statusCode(status)
                .body("errors[0].parameter", equalTo(parameter))
                .body("errors[0].value", containsString(value))
                .body("errors[0].accepted", containsString(accepted));
    }

    @Test
    void aMissingLengthIsSaidWithBothNames() {
        LiveService.ask()
                .contentType("application/json")
                .body("{\"currentA\": 1, \"size\": \"14\"}")
                .post("/v1/voltage-drop")
                .then()
                .statusCode(422)
                .body("errors[0].pointer", equalTo("/lengthM"))
                .body("errors[0].accepted", containsString("lengthFt"));
    }

    @Test
    void aTableThatIsNotThereIs404AndNamesThoseThatAre() {
        LiveService.ask()
                .get("/v1/tables/no-such")
                .then()
                .statusCode(404)
                .body("detail", containsString("us-33cfr183-ampacity"));
    }

    /** Same names, same limits, same words in query and body. */
    @TestFactory
    Stream<DynamicTest> queryAndBodyTakeTheSame() {
        return Stream.of("voltage-drop", "conductor-size", "fuse", "resistance")
                .map(name -> DynamicTest.dynamicTest(name, () -> {
                    JsonNode path = LiveService.CONTRACT.document().at("/paths/~1v1~1" + name);
                    Map<String, JsonNode> query = new TreeMap<>();
                    List<String> required = new ArrayList<>();
                    for (JsonNode unresolved : path.at("/get/parameters")) {
                        JsonNode parameter = LiveService.CONTRACT.resolved(unresolved);
                        query.put(
                                parameter.path("name").asText(),
                                LiveService.CONTRACT.resolved(parameter.path("schema")));
                        if (parameter.path("required").asBoolean()) {
                            required.add(parameter.path("name").asText());
                        }
                    }
                    assertThat(query.remove("format")).isNotNull();
                    assertThat(query.remove("errors")).isNotNull();
                    assertThat(query.remove("maxLength")).isNotNull();
                    JsonNode body = LiveService.CONTRACT.resolved(
                            path.at("/post/requestBody/content/application~1json/schema"));
                    Map<String, JsonNode> properties = new TreeMap<>();
                    body.path("properties")
                            .forEachEntry((key, value) -> properties.put(key, LiveService.CONTRACT.resolved(value)));
                    assertThat(query).isEqualTo(properties);
                    assertThat(body.path("required"))
                            .extracting(JsonNode::asText)
                            .isEqualTo(required);
                }));
    }

    /** Lists are written with commas in every query, since a parameter given twice is refused. */
    @Test
    void listsInQueriesAreWrittenWithCommas() {
        LiveService.CONTRACT
                .document()
                .path("paths")
                .forEach(path -> path.path("get").path("parameters").forEach(parameter -> {
                    if (LiveService.CONTRACT
                            .resolved(parameter.path("schema"))
                            .path("type")
                            .asText()
                            .equals("array")) {
                        assertThat(parameter.path("style").asText("form")).isEqualTo("form");
                        assertThat(parameter.path("explode").asBoolean(true)).isFalse();
                    }
                }));
        double together = figure("/v1/voltage-drop?size=14&lengthM=3&currentA=5&jointsOutOhm=0.03");
        assertThat(figure("/v1/voltage-drop?size=14&lengthM=3&currentA=5&jointsOutOhm=0.01,0.02"))
                .isCloseTo(together, within(1e-9));
        LiveService.ask()
                .get("/v1/voltage-drop?size=14&lengthM=3&currentA=5&jointsOutOhm=0.01&jointsOutOhm=0.02")
                .then()
                .statusCode(400)
                .body("errors[0].code", equalTo("duplicate"));
    }

    private static double figure(String url) {
        return Double.parseDouble(get(url + (url.contains("?") ? "&" : "?") + "format=text")
                .extract()
                .asString());
    }

    private static ValidatableResponse get(String url) {
        return LiveService.ask().get(url).then().statusCode(200);
    }
}
