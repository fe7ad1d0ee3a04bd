package loomwright.service;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasKey;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.notNullValue;
import static org.hamcrest.Matchers.nullValue;
import static org.hamcrest.Matchers.startsWith;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import io.restassured.response.Response;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import loomwright.list.ListLimits;
import loomwright.list.ListSource;
import loomwright.list.Sheet;
import loomwright.list.TextList;
import loomwright.list.Workbooks;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Questions about more than a plan, with lists: as one list, one workbook, or a form with files. */
class ListQuestionsTest {
    private static final String XLSX = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";
    private static final String ODS = "application/vnd.oasis.opendocument.spreadsheet";
    private static final String SETTINGS = "setting,value\nvoltage,12 V\nearth,negative\n\n";
    private static final String LAMP = """
            no,from,to,size,length,colour
            1,battery +,fuse 1 in,2.5 mm2,30 cm,red
            2,fuse 1 out,lamp switch in,1.5 mm2,1 m,red
            3,lamp switch out,head lamp +,1.5 mm2,2 m,white
            4,head lamp -,body,1.5 mm2,50 cm,black
            5,battery -,body,16 mm2,40 cm,black
            """;
    private static final String PARTS = "part,kind,value\nfuse 1,fuse,10 A\nhead lamp,lamp,12 V 45 W\n\n";
    private static final String BEFORE = SETTINGS + PARTS + LAMP;
    private static final String AFTER = BEFORE.replace("45 W", "60 W");
    private static final String READINGS = """
            point,against,reading,condition,switches
            battery +,battery -,12.6 V,key off,
            head lamp +,head lamp -,"9,8 V",key off,lamp switch on
            head lamp -,,0.02 V,key off,lamp switch on
            """;

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    private static Response post(String path, String type, byte[] body) {
        return LiveService.ask().header("Content-Type", type).body(body).post(path);
    }

    private static Response form(String path, String... namesAndFiles) {
        var request = LiveService.ask();
        for (int i = 0; i < namesAndFiles.length; i += 2) {
            request.multiPart(namesAndFiles[i], namesAndFiles[i] + ".csv", bytes(namesAndFiles[i + 1]), "text/csv");
        }
        return request.post(path);
    }

    @Test
    void everyOperationOnPlansNamesListsInTheContract() {
        assertThat(LiveService.CONTRACT.operations())
                .filteredOn(operation ->
                        !operation.plans().isEmpty() && operation.method().equals("POST"))
                .hasSizeGreaterThanOrEqualTo(11)
                .allSatisfy(operation -> assertThat(operation.bodyTypes())
                        .contains("text/csv", "text/markdown", "text/plain", XLSX, ODS, "multipart/form-data"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"readings", "sheet", "mistakes", "diagram", "solution", "backfeed", "review"})
    void anOperationOnOnePlanTakesOneList(String name) {
        post("/v1/plans/" + name, "text/csv", bytes(BEFORE)).then().statusCode(200);
    }

    @ParameterizedTest
    @ValueSource(strings = {"readings", "sheet", "mistakes", "diagram", "solution", "backfeed", "review"})
    void andOneFileOfAForm(String name) {
        form("/v1/plans/" + name, "plan", BEFORE).then().statusCode(200);
    }

    @ParameterizedTest
    @ValueSource(strings = {XLSX, ODS})
    void aWorkbookOfTwoPlansIsCompared(String type) {
        List<Sheet> sheets = List.of(sheet("before", BEFORE), sheet("after", AFTER));
        byte[] workbook = type.equals(XLSX) ? Workbooks.writeXlsx(sheets) : Workbooks.writeOds(sheets);
        post("/v1/plans/comparison", type, workbook)
                .then()
                .statusCode(200)
                .body("result.changes.toString()", containsString("head-lamp"))
                .body("plan.parts.find { it.id == 'head-lamp' }.ratedW", equalTo(45f))
                .body("after.parts.find { it.id == 'head-lamp' }.ratedW", equalTo(60f))
                .body("assumptions.assumed.place", hasItem(startsWith("worksheet before")));
        post("/v1/plans/comparison/diagram", type, workbook).then().statusCode(200);
        post("/v1/plans/sheet", type, workbook).then().statusCode(200);
        post("/v1/plans/review", type, workbook)
                .then()
                .statusCode(422)
                .body("errors[0].code", equalTo("contradiction"));
    }

    @Test
    void worksheetsNamedAfterNeitherPlanBelongToBoth() {
        List<Sheet> sheets = List.of(
                sheet("settings", SETTINGS), sheet("parts", PARTS), sheet("before wires", LAMP), sheet("after", AFTER));
        post("/v1/plans/comparison", XLSX, Workbooks.writeXlsx(sheets))
                .then()
                .statusCode(200)
                .body("plan.parts.find { it.id == 'head-lamp' }.ratedW", equalTo(45f))
                .body("after.parts.find { it.id == 'fuse-1' }.ratingA", equalTo(10f));
    }

    private static Sheet sheet(String name, String csv) {
        ListSource source = TextList.read(csv, ListLimits.defaults());
        return new Sheet(name, source.sheets().get(0).rows());
    }

    @Test
    void twoFilesAreComparedAndOneMayBeJson() {
        form("/v1/plans/comparison", "before", BEFORE, "after", AFTER)
                .then()
                .statusCode(200)
                .body("assumptions.assumed.place", hasItem(startsWith("file before, row")))
                .body("assumptions.assumed.place", hasItem(startsWith("file after, row")));
        String json = post("/v1/plans/conversion", "text/csv", bytes(BEFORE)).asString();
        String plan = planOf(json);
        LiveService.ask()
                .multiPart("before", "before.json", bytes(plan), "application/json")
                .multiPart("after", "after.csv", bytes(AFTER), "text/csv")
                .multiPart("thresholdV", "0.5")
                .post("/v1/plans/comparison")
                .then()
                .statusCode(200)
                .body("plan.parts.find { it.id == 'head-lamp' }.ratedW", equalTo(45));
    }

    /** What is read alike in both lists of a job stands on its sheet once. */
    @Test
    void aSheetSaysOnceWhatIsReadAlikeInTwoLists() {
        String page = form("/v1/plans/sheet?format=html", "before", BEFORE, "after", AFTER)
                .asString();
        int begins = page.indexOf("class=\"reading\"");
        String reading = page.substring(begins, page.indexOf("</section>", begins));
        List<String> said = Pattern.compile("<li>(.*?)</li>")
                .matcher(reading)
                .results()
                .map(line -> line.group(1))
                .toList();
        assertThat(said).isNotEmpty().doesNotHaveDuplicates();
    }

    private static String planOf(String answer) {
        try {
            return new JsonMapper().readTree(answer).at("/result/plan").toString();
        } catch (com.fasterxml.jackson.core.JsonProcessingException e) {
            throw new IllegalStateException(e);
        }
    }

    @Test
    void twoListsOfOneCarAreJoinedAtPartsOfTheSameName() {
        String horn = "from,to,size,length\nfuse 1 out,horn,1.5 mm2,1 m\nhorn,horn button,1.5 mm2,1 m\n";
        LiveService.ask()
                .multiPart("plan", "lights.csv", bytes(BEFORE), "text/csv")
                .multiPart("plan", "horn.csv", bytes(horn), "text/csv")
                .post("/v1/plans/conversion")
                .then()
                .statusCode(200)
                .body("result.plan.parts.findAll { it.kind == 'fuse' }", hasSize(1))
                .body("result.plan.parts.id", hasItem("horn"))
                .body("result.plan.parts.find { it.id == 'fuse-1' }.ratingA", equalTo(10))
                .body("assumptions.assumed.place", hasItem(startsWith("file horn.csv, row")));
        form("/v1/plans/readings", "plan", BEFORE, "plan", "{}").then().statusCode(422);
    }

    @Test
    void oneListWhereTwoAreWantedIsRefusedInWords() {
        post("/v1/plans/comparison", "text/csv", bytes(BEFORE))
                .then()
                .statusCode(422)
                .body("errors[0].code", equalTo("missing"))
                .body("errors[0].accepted", containsString("before and after"));
    }

    @Test
    void readingsInTheOwnersWordsAreExplained() {
        for (Response answer : List.of(
                post("/v1/plans/diagnosis", "text/csv", bytes(BEFORE + "\n" + READINGS)),
                form("/v1/plans/diagnosis", "plan", BEFORE, "readings", READINGS),
                post(
                        "/v1/plans/diagnosis",
                        ODS,
                        Workbooks.writeOds(List.of(sheet("wires", BEFORE), sheet("readings", READINGS)))))) {
            answer.then()
                    .log()
                    .ifError()
                    .statusCode(200)
                    .body("result.readings", hasSize(3))
                    .body("result.readings[1].red", equalTo("head-lamp.a"))
                    .body("result.readings[1].switches", hasKey("lamp-switch"))
                    .body("result.explanations", notNullValue());
        }
    }

    @Test
    void aReadingThatCannotBeReadIsNamedByRowAndColumn() {
        String wrong =
                "point,reading,condition\nhed lamp +,12.4 V,key off\nheadlight nearside,1.2 V,midnight\nbattery +,lots,off\n";
        form("/v1/plans/diagnosis", "plan", BEFORE, "readings", wrong)
                .then()
                .statusCode(422)
                .body("errors.place", hasItem("worksheet readings, row 3, column condition"))
                .body("errors.find { it.place.endsWith('row 4, column reading') }.value", equalTo("lots"))
                .body("errors.find { it.place.endsWith('row 3, column point') }.code", equalTo("unknown-reference"));
    }

    @Test
    void theContractObjectsByRowAndColumn() {
        post("/v1/plans/readings", "text/csv", bytes(BEFORE.replace(",30 cm,", ",5000 m,")))
                .then()
                .statusCode(422)
                .body("errors[0].place", equalTo("row 10, column length"))
                .body("errors[0].row", equalTo(10))
                .body("errors[0].column", equalTo("length"));
        form("/v1/plans/sheet", "plan", BEFORE, "tite", "x")
                .then()
                .statusCode(422)
                .body("errors[0].code", equalTo("unknown-name"))
                .body("errors[0].accepted", containsString("title"));
        LiveService.ask()
                .multiPart("plan", "car.csv", bytes(BEFORE), "text/csv")
                .multiPart("step", "much")
                .post("/v1/plans/sheet")
                .then()
                .statusCode(422)
                .body("errors[0].pointer", equalTo("/step"));
    }

    @Test
    void strictNamesAllThatIsOpenWithItsPlace() {
        Response answer = post("/v1/plans/review?strict=true", "text/csv", bytes("from,to\nbattery +,horn\n"));
        answer.then()
                .statusCode(422)
                .body("errors.code", hasItem("not-stated"))
                .body("errors.place", hasItem("row 2, column size"));
        byte[] complete = LiveService.ask()
                .contentType("application/json")
                .accept("text/csv")
                .body(LiveService.ask().get("/v1/examples/sandpiper-as-built").asString())
                .post("/v1/plans/conversion")
                .asByteArray();
        post("/v1/plans/review?strict=true", "text/csv", complete).then().statusCode(200);
    }

    @Test
    void aFindingThatRestsOnAGuessSaysSo() {
        String list = "from,to,size\nbattery +,fuse in,0.5 mm2\nfuse out,headlamp,0.5 mm2\n";
        Response open = post("/v1/plans/review", "text/csv", bytes(list));
        open.then().statusCode(200).body("result.findings.restsOn.flatten().code", hasItem("length"));
        String said = "part,kind,value\nfuse,blade fuse,30 A\nheadlamp,lamp,12 V 45 W\n\n"
                + list.replace("size\n", "size,length\n").replace("mm2\n", "mm2,1 m\n");
        Response stated = post("/v1/plans/review", "text/csv", bytes(said));
        stated.then().statusCode(200).body("result.findings.findAll { it.restsOn != null }", hasSize(0));
        assertThat(stated.jsonPath().getList("result.findings")).isNotEmpty();
    }

    /** Of a part that is not connected no figure is doubtful; a reader meets questions and assumptions before the findings. */
    @Test
    void aPostHasQuestionsFirst() {
        String list = "from,to\nbattery +,fuse in\nkey 15,headlamp\n";
        post("/v1/plans/review", "text/csv", bytes(list))
                .then()
                .statusCode(200)
                .body(
                        "result.findings.find { it.code == 'terminal-not-connected' && it.ids == ['fuse'] }.restsOn",
                        nullValue());
        String text = post("/v1/plans/review?format=markdown", "text/csv", bytes(list))
                .asString();
        assertThat(text.indexOf("## Questions")).isPositive().isLessThan(text.indexOf("## Read from the list"));
        assertThat(text.indexOf("## Read from the list")).isLessThan(text.indexOf("## Findings"));
    }

    @Test
    void aFormThatBreaksOffIsRefused() {
        post("/v1/plans/review", "multipart/form-data; boundary=x", bytes("--x\r\nContent-Dis"))
                .then()
                .statusCode(400);
        post("/v1/plans/review", "multipart/form-data", bytes("--x--")).then().statusCode(400);
    }

    @Test
    void progressLinesEndWithTheWholeAnswer() {
        String last = LiveService.ask()
                .header("Content-Type", "text/csv")
                .accept("application/x-ndjson")
                .body(bytes(BEFORE))
                .post("/v1/plans/review")
                .asString()
                .lines()
                .collect(Collectors.toCollection(java.util.ArrayDeque::new))
                .getLast();
        assertThat(last).contains("\"questions\"").contains("\"list-positions\"");
    }

    @Test
    void patchesOfRemediesFitThePlanOfTheAnswer() throws Exception {
        byte[] list = LiveService.ask()
                .contentType("application/json")
                .accept("text/csv")
                .body(LiveService.ask()
                        .get("/v1/examples/sandpiper-unguarded-bypass")
                        .asString())
                .post("/v1/plans/conversion")
                .asByteArray();
        JsonNode answer = new JsonMapper()
                .readTree(post("/v1/plans/backfeed", "text/csv", list).asString());
        int fitted = 0;
        for (JsonNode feed : answer.at("/result/unintendedFeeds")) {
            for (JsonNode remedy : feed.path("remedies")) {
                JsonNode patched = BackfeedRemedyTest.patched(answer.path("plan"), remedy.path("patch"));
                LiveService.ask()
                        .contentType("application/json")
                        .body(patched.toString())
                        .post("/v1/plans/backfeed")
                        .then()
                        .statusCode(200);
                fitted++;
            }
        }
        assertThat(fitted).isPositive();
    }
}
