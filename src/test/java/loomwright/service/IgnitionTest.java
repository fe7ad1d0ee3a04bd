package loomwright.service;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.util.Map;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

/** Ignition as a person asks for it: from a spreadsheet cell, from a forum bot, with a plan in hand. */
class IgnitionTest {
    private static final JsonMapper MAPPER = new JsonMapper();

    private static JsonNode get(String url) throws IOException {
        var response = LiveService.ask().get(url);
        assertThat(response.statusCode()).as(response.asString()).isEqualTo(200);
        return MAPPER.readTree(response.asByteArray());
    }

    private static JsonNode post(String path, String body) throws IOException {
        var response =
                LiveService.ask().contentType("application/json").body(body).post(path);
        assertThat(response.statusCode()).as(response.asString()).isEqualTo(200);
        return MAPPER.readTree(response.asByteArray());
    }

    private static JsonNode finding(JsonNode findings, String code) {
        for (JsonNode finding : findings) {
            if (finding.path("code").asText().equals(code)) {
                return finding;
            }
        }
        throw new AssertionError(code + " is not among " + findings);
    }

    @Test
    @DisplayName("a spreadsheet cell gets 12.6 x 1.5 / 3.08 = 6.136363636 V as a bare number, whatever it accepts")
    void aSpreadsheetCellGetsABareNumber() {
        assertThat(LiveService.ask()
                        .accept("*/*")
                        .get("/v1/ballast?elementsOhm=1.5&coilPrimaryOhm=1.5&format=text")
                        .asString())
                .isEqualTo("6.136363636");
        assertThat(LiveService.ask()
                        .accept("*/*")
                        .get("/v1/ballast-choice?wantedCoilV=7&coilPrimaryOhm=1.5&format=text")
                        .asString())
                .isEqualTo("1.12");
        assertThat(LiveService.ask()
                        .accept("*/*")
                        .get("/v1/spark?speedRpm=3000&format=text")
                        .asString())
                .matches("[0-9]+\\.[0-9]+");
    }

    @Test
    void whereNoBallastHelpsACellIsToldWhy() {
        var response = LiveService.ask().get("/v1/ballast-choice?wantedCoilV=13&coilPrimaryOhm=1.5&format=text");
        assertThat(response.statusCode()).isEqualTo(422);
        assertThat(response.asString()).contains("No ballast gives the coil");
    }

    @Test
    void thePlanThatComesWithTheBallastGivesTheSameNumbers() throws IOException {
        JsonNode result = post("/v1/ballast", """
                        {"elementsOhm": [0.9, 0.7], "bypassTap": 1, "coilPrimaryOhm": 1.4, "feedSize": "14 AWG",
                         "feedLengthM": 3, "returnResistanceOhm": 0.02, "bypassResistanceOhm": 0.05}
                        """).path("result");
        JsonNode steps =
                post("/v1/plans/solution", result.path("plan").toString()).at("/result/steps");
        Map<String, JsonNode> states = Map.of(
                "run", result.at("/conditions/0/withoutBypass"),
                "crank", result.at("/conditions/1/withBypass"),
                "running", result.at("/conditions/2/withoutBypass"));
        int compared = 0;
        for (JsonNode step : steps) {
            JsonNode state = states.get(step.path("step").asText());
            if (state != null) {
                assertThat(part(step, "coil").path("acrossV").asDouble())
                        .isCloseTo(state.path("coilV").asDouble(), within(1e-8));
                assertThat(part(step, "ballast").at("/branches/0/currentA").asDouble())
                        .isCloseTo(state.at("/elements/0/currentA").asDouble(), within(1e-8));
                compared++;
            }
        }
        assertThat(compared).isEqualTo(3);
    }

    private static JsonNode part(JsonNode step, String id) {
        for (JsonNode part : step.path("parts")) {
            if (part.path("part").asText().equals(id)) {
                return part;
            }
        }
        throw new AssertionError("no part " + id);
    }

    @Test
    @DisplayName("a plain coil at a gap of 1.1 to 1.2 mm: needs a coil and module made for it (common practice)")
    void aWideGapAtAPlainCoilIsSaidToNeedAnotherCoil() throws IOException {
        for (String gap : new String[] {"gapMm=1.1", "gapMm=1.2", "gapIn=0.045"}) {
            JsonNode plain = get("/v1/spark?speedRpm=6000&" + gap).path("result");
            JsonNode found = finding(plain.path("findings"), "gap-needs-other-coil");
            assertThat(found.path("severity").asText()).isEqualTo("warning");
            assertThat(found.path("remedy").path("code").asText()).isEqualTo("set-gap-or-fit-module");
            finding(plain.path("findings"), "no-spark");
            JsonNode made = get("/v1/spark?speedRpm=6000&coilKind=high-energy&switchedBy=module&currentLimitA=6.5&"
                            + gap)
                    .path("result");
            assertThat(made.path("findings").toString()).doesNotContain("gap-needs-other-coil", "no-spark");
        }
    }

    @Test
    @DisplayName("a stock gap asks for the middle of the formulas, 13.3 kV; a wider gap asks for more")
    void aStockGapAsksForTheMiddleOfTheFormulas() throws IOException {
        double stock =
                get("/v1/spark?speedRpm=3000").at("/result/required/requiredKv").asDouble();
        assertThat(stock).isBetween(12.8, 13.8);
        assertThat(get("/v1/spark?speedRpm=3000&gapMm=1")
                        .at("/result/required/requiredKv")
                        .asDouble())
                .isGreaterThan(stock);
    }

    @Test
    @DisplayName("12 V, 4 ohm, 6 mH (textbook problem): 3 A and 27 mJ at last; millihenries in, millijoules out")
    void theTextbookCoilInContractUnits() throws IOException {
        JsonNode at = get("/v1/spark?speedRpm=100&supplyV=12&dropV=0&feedResistanceOhm=0&primaryResistanceOhm=4"
                        + "&inductanceMh=6&dwellDegrees=60")
                .at("/result/at");
        assertThat(at.path("peakA").asDouble()).isCloseTo(3, within(1e-9));
        assertThat(at.path("energyMj").asDouble()).isCloseTo(27, within(1e-8));
        assertThat(at.path("dwellMs").asDouble()).isCloseTo(200, within(1e-9));
    }

    @Test
    void aSweepIsATableForTheSpreadsheet() {
        String csv = LiveService.ask()
                .get("/v1/spark?speedFromRpm=1000&speedToRpm=6000&speedSteps=5&format=csv")
                .asString();
        assertThat(csv.lines()).hasSize(7).first().asString().startsWith("speedRpm,supplyV,dwellMs");
        assertThat(csv.lines().skip(6)).first().asString().startsWith("6000,14.2,");
    }

    @Test
    void aSweepThatLacksItsEndIsToldByTheNameThatIsMissing() throws IOException {
        var response = LiveService.ask().get("/v1/spark?speedFromRpm=1000&speedSteps=5");
        assertThat(response.statusCode()).isEqualTo(422);
        assertThat(MAPPER.readTree(response.asByteArray())
                        .at("/errors/0/parameter")
                        .asText())
                .isEqualTo("speedToRpm");
    }

    @Test
    void faultsBearTheNamesAndUnitsOfTheContract() throws IOException {
        var response =
                LiveService.ask().get("/v1/spark?speedRpm=3000&pressureKpa=800&temperatureC=300&compressionRatio=9");
        assertThat(response.statusCode()).isEqualTo(422);
        JsonNode error = MAPPER.readTree(response.asByteArray()).at("/errors/0");
        assertThat(error.path("parameter").asText()).isEqualTo("pressureKpa");
        assertThat(error.path("value").asText()).isEqualTo("800.0");
    }

    @Test
    void aBallastTakenOutWithItsBypassLeftIsADangerInWords() throws IOException {
        JsonNode findings = post("/v1/ignition-change", """
                        {"before": {"speedRpm": 2500, "coilKind": "for-ballast", "ballastResistanceOhm": 1.5},
                         "after": {"speedRpm": 2500, "coilKind": "for-ballast"}, "bypassLeft": true}
                        """).at("/result/findings");
        assertThat(finding(findings, "coil-overheats").path("severity").asText())
                .isEqualTo("danger");
        assertThat(finding(findings, "bypass-starts-engine")
                        .path("remedy")
                        .path("code")
                        .asText())
                .isEqualTo("remove-bypass-or-fit-diode");
        finding(findings, "bypass-without-ballast");
    }

    @Test
    void sixAndTwentyFourVoltsGoInProportion() throws IOException {
        for (int nominalV : new int[] {6, 24}) {
            JsonNode result = get("/v1/ballast?elementsOhm=1.5&coilPrimaryOhm=1.5&nominalVoltageV=" + nominalV)
                    .path("result");
            assertThat(result.path("coilKeyOnV").asDouble()).isCloseTo(6.136363636 * nominalV / 12, within(1e-8));
            double ohm = nominalV == 6 ? 0.75 : 5;
            assertThat(get("/v1/ballast?elementsOhm=" + ohm + "&coilPrimaryOhm=" + ohm + "&nominalVoltageV=" + nominalV)
                            .at("/result/verdict")
                            .asText())
                    .isEqualTo("within-window");
        }
    }

    @Test
    void aBallastHasNoPolarityInWords() throws IOException {
        String polarity = get("/v1/ballast?elementsOhm=1.5&coilPrimaryOhm=1.5")
                .at("/result/polarity/code")
                .asText();
        assertThat(polarity).isEqualTo("turned");
    }
}
