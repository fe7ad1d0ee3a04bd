package loomwright.service;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.equalTo;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import io.restassured.response.Response;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import loomwright.list.ListLimits;
import loomwright.list.ListSource;
import loomwright.list.Sheet;
import loomwright.list.TextList;
import loomwright.list.Workbooks;
import loomwright.service.form.CsvRow;
import org.junit.jupiter.api.Test;

/** Many cars as lists in one request. */
class BulkListsTest {
    private static final String XLSX = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";
    private static final String HEAD = "car,from,to,size,length\n";
    private static final JsonMapper MAPPER = new JsonMapper();

    /** A horn on a wire of a size: of 0.5 mm2 with a fuse that lets the wire burn, of 2.5 mm2 without fault. */
    private static String wires(String car, String size) {
        return car + ",battery +,fuse in," + size + ",30 cm\n"
                + car + ",fuse out,horn +," + size + ",1 m\n"
                + car + ",horn -,horn button in," + size + ",1 m\n"
                + car + ",horn button out,body," + size + ",50 cm\n"
                + car + ",battery -,body,16 mm2,40 cm\n";
    }

    private static String parts(String car) {
        return "\ncar,part,kind,value\n" + car + ",fuse,fuse,30 A\n";
    }

    private static Response review(String query, String type, byte[] body) {
        return LiveService.ask().header("Content-Type", type).body(body).post("/v1/bulk/review" + query);
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    /** Rows under their headings, without those of the summary. */
    private static List<List<String>> rows(Response response) {
        List<List<String>> rows = new ArrayList<>();
        response.asString()
                .lines()
                .skip(1)
                .map(line -> CsvRow.parse(line, ',').orElseThrow())
                .filter(row -> !row.get(0).equals("summary"))
                .forEach(rows::add);
        return rows;
    }

    @Test
    void eachCarIsAnsweredAsItWouldBeAlone() throws Exception {
        String both = HEAD + wires("thin", "0.5 mm2") + wires("stout", "4 mm2");
        List<String> lines = LiveService.ask()
                .header("Content-Type", "text/csv")
                .accept("application/x-ndjson")
                .body(bytes(both))
                .post("/v1/bulk/review")
                .asString()
                .lines()
                .toList();
        assertThat(lines).hasSize(3);
        JsonNode second = MAPPER.readTree(lines.get(1));
        assertThat(second.path("key").asText()).isEqualTo("stout");
        JsonNode alone = MAPPER.readTree(LiveService.ask()
                .header("Content-Type", "text/csv")
                .body(bytes(HEAD + wires("stout", "4 mm2")))
                .post("/v1/plans/review")
                .asString());
        assertThat(second.at("/answer/result")).isEqualTo(alone.path("result"));
        assertThat(second.at("/answer/plan")).isEqualTo(alone.path("plan"));
        assertThat(second.at("/answer/questions/0/row").asInt()).isEqualTo(7);
        assertThat(alone.at("/questions/0/row").asInt()).isEqualTo(2);
    }

    @Test
    void fortyCarsInOneWorkbookAreOneRequestAndTheWorstStandsFirst() {
        StringBuilder list = new StringBuilder(HEAD);
        for (int i = 1; i <= 40; i++) {
            list.append(wires("car " + i, i == 17 ? "0.5 mm2" : "6 mm2"));
        }
        list.append(parts("car 17").replace("\ncar,", "\ncar,"));
        ListSource source = TextList.read(list.toString(), ListLimits.defaults());
        byte[] workbook = Workbooks.writeXlsx(
                List.of(new Sheet("cars", source.sheets().get(0).rows())));
        List<List<String>> rows = rows(review("?rows=cars&order=worst", XLSX, workbook));
        assertThat(rows).hasSize(40);
        assertThat(rows.get(0).get(1)).isEqualTo("car 17");
        assertThat(rows.get(0).get(4)).isEqualTo("danger");
        assertThat(rows.get(0).get(9)).isNotEmpty();
        assertThat(rows.get(1).get(1)).isEqualTo("car 1");
        assertThat(rows.stream().skip(1)).noneMatch(row -> row.get(4).equals("danger"));
    }

    @Test
    void oneFileACarMayBeSentAndABadOneStopsNoOther() {
        Response answer = LiveService.ask()
                .multiPart("a", "otter.csv", bytes("from,to\nbattery +,horn\n"), "text/csv")
                .multiPart("b", "broken.xlsx", bytes("PK\u0003\u0004 but no workbook"), XLSX)
                .multiPart("c", "heron.md", bytes("| from | to |\n|---|---|\n| battery + | horn |\n"), "text/markdown")
                .post("/v1/bulk/review?rows=cars&order=worst");
        List<List<String>> rows = rows(answer);
        assertThat(rows).extracting(row -> row.get(1)).containsExactly("broken", "otter", "heron");
        assertThat(rows).extracting(row -> row.get(2)).containsExactly("422", "200", "200");
    }

    @Test
    void noCellHoldsMoreThanOneFigure() {
        String table = review("?rows=cars", "text/csv", bytes(HEAD + wires("thin", "0.5 mm2")))
                .asString();
        assertThat(table.lines().skip(1).map(line -> CsvRow.parse(line, ',').orElseThrow()))
                .allSatisfy(row -> assertThat(row).noneMatch(cell -> cell.matches(".*\\d; [a-z]+ \\d.*")));
    }

    @Test
    void aListOfSeveralCarsIsNotOnePlan() {
        LiveService.ask()
                .header("Content-Type", "text/csv")
                .body(bytes(HEAD + wires("thin", "0.5 mm2") + wires("stout", "6 mm2")))
                .post("/v1/plans/review")
                .then()
                .statusCode(422)
                .body("errors[0].code", equalTo("over-limit"));
    }

    @Test
    void aListOfMoreRowsThanAreReadAtOnceIsAnsweredCarByCar() {
        StringBuilder list = new StringBuilder("car,from,to\n");
        for (int i = 0; i < 11_000; i++) {
            list.append(i).append(",battery +,horn\n").append(i).append(",horn,body\n");
        }
        list.append("0,battery +,lamp\n");
        List<List<String>> rows = rows(review("?rows=cars&fromLine=10999", "text/csv", bytes(list.toString())));
        assertThat(rows).extracting(row -> row.get(1)).containsExactly("10998", "10999", "0");
        assertThat(rows).extracting(row -> row.get(2)).containsExactly("200", "200", "422");
    }
}
