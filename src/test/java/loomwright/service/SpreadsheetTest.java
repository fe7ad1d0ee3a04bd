package loomwright.service;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.emptyOrNullString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.not;

import io.restassured.path.json.JsonPath;
import java.io.IOException;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import loomwright.service.http.ErrorsAsText;
import loomwright.service.http.Representations;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What a spreadsheet gets: one number in a cell, a table to import, and on request the reason for its absence. */
class SpreadsheetTest {
    @ParameterizedTest
    @ValueSource(
            strings = {
                "/v1/voltage-drop?size=14&lengthM=3&currentA=5",
                "/v1/conductor-size?currentA=5&lengthM=3",
                "/v1/fuse?currentA=5&size=14",
                "/v1/conductors/2%2F0"
            })
    void aCellGetsOneBareNumber(String url) {
        String byHeader = LiveService.ask()
                .accept("text/plain")
                .get(url)
                .then()
                .statusCode(200)
                .contentType("text/plain; charset=utf-8")
                .extract()
                .asString();
        assertThat(byHeader).matches("\\d+(\\.\\d+)?(E-?\\d+)?");
        String byParameter = LiveService.ask()
                .get(url + (url.contains("?") ? "&" : "?") + "format=text")
                .then()
                .extract()
                .asString();
        assertThat(byParameter).isEqualTo(byHeader);
        LiveService.ask().head(url).then().statusCode(200).body(emptyOrNullString());
        LiveService.ask().options(url.replaceAll("\\?.*", "")).then().statusCode(204);
    }

    @Test
    void theInstructionsShowTheReasonInTheWordsOfTheService() throws IOException {
        String reason = LiveService.ask()
                .get("/v1/voltage-drop?size=16&lengthM=3&currentA=5&format=text&errors=text")
                .asString();
        assertThat(Files.readString(Path.of("docs/spreadsheets.md"))).contains("```\n" + reason.strip() + "\n```");
    }

    @Test
    void everyFigureAskedByAddressCanComeWithTheReasonForItsAbsence() {
        assertThat(LiveService.CONTRACT.operations().stream()
                        .filter(operation -> operation.method().equals("GET"))
                        .map(ContractExamples::good)
                        .filter(example -> example.answer().path("content").has("text/plain"))
                        .filter(example -> example.operation().query(Representations.PARAMETER) != null)
                        .filter(example -> example.operation().query(ErrorsAsText.PARAMETER) == null))
                .isEmpty();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "/v1/voltage-drop?size=14&lengthM=3&currentA=5&jointsOutOhm=0.01,0.02&format=csv",
                "/v1/conductor-size?currentA=5&lengthM=3&format=csv",
                "/v1/conductor-size?currentA=5000&lengthM=3&format=csv",
                "/v1/fuse?currentA=5&size=14&format=csv",
                "/v1/conductors?format=csv",
                "/v1/conductors/14?format=csv",
                "/v1/conductors/ISO%200.13%20mm2?format=csv"
            })
    void aTableHasOneHeadLineAndAsManyCellsInEachRow(String url) {
        List<String> lines = LiveService.ask()
                .get(url)
                .then()
                .statusCode(200)
                .contentType("text/csv; charset=utf-8")
                .extract()
                .asString()
                .lines()
                .toList();
        assertThat(lines).hasSizeGreaterThan(1);
        int cells = lines.get(0).split(",", -1).length;
        // None of these tables has a text with a comma.
        assertThat(lines)
                .allSatisfy(line -> assertThat(line.split(",", -1)).hasSize(cells))
                .noneMatch(line -> line.startsWith("#"));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "/v1/voltage-drop?size=16&lengthM=3&currentA=5",
                "/v1/voltage-drop?size=14&lengthM=0&currentA=5",
                "/v1/voltage-drop?size=14&lengthM=3&currentA=5&no-such=1",
                "/v1/conductor-size?currentA=5000&lengthM=3",
                "/v1/fuse?currentA=12&size=18AWG&insulationC=60",
                "/v1/conductors/16?temperatureC=20",
                "/v1/ballast?elementsOhm=1.4&coilPrimaryOhm=1.5&bypassTap=7",
                "/v1/ballast-choice?wantedCoilV=7&coilPrimaryOhm=-1",
                "/v1/spark?speedRpm=-1",
                "/v1/resistance?network=4+(6"
            })
    void theReasonStandsInTheCellOnRequestOnly(String url) {
        String reason = LiveService.ask()
                .get(url + "&format=text&errors=text")
                .then()
                .statusCode(200)
                .contentType("text/plain; charset=utf-8")
                .extract()
                .asString();
        assertThat(reason).doesNotContain("{", "\n").endsWith(".");
        LiveService.ask()
                .get(url + "&format=text")
                .then()
                .statusCode(not(200))
                .contentType("application/problem+json")
                .body("detail", equalTo(reason));
        LiveService.ask().get(url + "&format=text&errors=status").then().statusCode(not(200));
    }

    /** A cell can send nothing but an address: the list in it is the list of a body. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "from~to~size~length;battery +~fuse 15 A in~2.5 mm2~30 cm;fuse out~headlamp~0.5 mm2~2 m",
                "from,to,size,length\nbattery +,fuse 15 A in,2.5 mm2,30 cm\nfuse out,headlamp,0.5 mm2,2 m"
            })
    void aListInTheAddressIsReviewed(String list) {
        String csv = "from,to,size,length\nbattery +,fuse 15 A in,2.5 mm2,30 cm\nfuse out,headlamp,0.5 mm2,2 m\n";
        JsonPath asBody = LiveService.ask()
                .contentType("text/csv")
                .body(csv)
                .post("/v1/plans/review")
                .jsonPath();
        JsonPath inAddress = LiveService.ask()
                .get("/v1/plans/review?list=" + encoded(list))
                .then()
                .statusCode(200)
                .extract()
                .jsonPath();
        assertThat(inAddress.getList("result.findings")).isNotEmpty().isEqualTo(asBody.getList("result.findings"));
        assertThat(inAddress.getList("questions")).isEqualTo(asBody.getList("questions"));
    }

    private static String encoded(String text) {
        return URLEncoder.encode(text, StandardCharsets.UTF_8);
    }

    @Test
    void whatIsNoListIsSaidInTheCell() {
        String address = "/v1/plans/review?list=";
        LiveService.ask().get(address + "hello").then().statusCode(422);
        LiveService.ask()
                .get(address + "hello&format=markdown&errors=text")
                .then()
                .statusCode(200)
                .contentType("text/plain; charset=utf-8")
                .body(not(emptyOrNullString()));
        LiveService.ask()
                .get(address + encoded("from~to;battery +~horn") + "&strict=true")
                .then()
                .statusCode(422);
    }

    /** The workbook of a shop can be sent as it is: its sheets of formulas are no tables. */
    @Test
    void theWorkbookOfAShopIsAPlanOfItsOwn() throws IOException {
        LiveService.ask()
                .contentType("application/vnd.openxmlformats-officedocument.spreadsheetml.sheet")
                .body(Files.readAllBytes(Path.of("postman-free-examples/spreadsheet/wires.xlsx")))
                .post("/v1/plans/review")
                .then()
                .statusCode(200)
                .body("result.plan", equalTo("Sandpiper 1500"))
                .body("questions", hasSize(0))
                .body("assumptions.code", not(hasItem("list-voltage")))
                .body("assumptions.code", not(hasItem("list-column-not-read")));
    }
}
