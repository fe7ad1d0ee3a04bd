package loomwright;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import loomwright.list.ListLimits;
import loomwright.list.Sheet;
import loomwright.list.TextList;
import loomwright.list.Workbooks;
import loomwright.service.Server;
import loomwright.service.limits.Options;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import picocli.CommandLine;

/** Plans checked without the service: the same answers, and an exit code for scripts. */
class CheckCommandTest {
    private static final Path EXAMPLES = Path.of("src/main/resources/examples");
    private static final String DROP = "{\"currentA\":%s,\"size\":\"16 AWG\",\"lengthM\":3}";

    @TempDir
    private Path folder;

    private int check(String... arguments) {
        return new CommandLine(new Main())
                .setErr(new PrintWriter(new StringWriter()))
                .execute(arguments);
    }

    private List<String> report(String operation, Path... files) throws IOException {
        Path out = folder.resolve("report");
        String[] arguments = Stream.concat(
                        Stream.of("check", "--quiet", "--operation", operation, "--out", out.toString()),
                        List.of(files).stream().map(Path::toString))
                .toArray(String[]::new);
        check(arguments);
        return Files.readAllLines(out);
    }

    @ParameterizedTest
    @CsvSource({"review", "backfeed", "solution"})
    void theServiceGivesTheSameLines(String operation) throws Exception {
        StringBuilder plans = new StringBuilder();
        for (String name : List.of("sandpiper-as-built", "sandpiper-unguarded-bypass", "otter-6v-positive-earth")) {
            String plan = Files.readString(EXAMPLES.resolve(name + ".json")).replace("\n", " ");
            plans.append("{\"key\":\"")
                    .append(name)
                    .append("\",\"input\":")
                    .append(plan)
                    .append("}\n");
        }
        plans.append("\n{\"name\":\n{\"key\":7,\"input\":{}}\n");
        Path file = Files.writeString(folder.resolve("plans.ndjson"), plans);
        List<String> local = report(operation, file).stream()
                .map(line -> line.replaceFirst("\"file\":\"[^\"]*\",", "").replace("request:local", "request:id"))
                .toList();
        List<String> answered;
        try (Server server = Server.start(Options.DEFAULT.withPort(0))) {
            answered = io.restassured.RestAssured.given()
                    .header("X-Request-Id", "id")
                    .contentType("application/x-ndjson; charset=utf-8")
                    .body(plans.toString().getBytes(StandardCharsets.UTF_8))
                    .post("http://127.0.0.1:" + server.port() + "/v1/bulk/" + operation)
                    .asString()
                    .lines()
                    .map(line -> line.replaceFirst("\"nextLine\":\\d+,", ""))
                    .toList();
        }
        assertThat(local).hasSize(6).isEqualTo(answered);
    }

    @ParameterizedTest
    @CsvSource({"0.1, 0", "100, 2", "much, 3"})
    void theExitCodeTellsTheWorst(String currentA, int code) throws IOException {
        Path file = Files.writeString(folder.resolve("a.json"), DROP.formatted(currentA));
        assertThat(check("check", "--quiet", "--operation", "voltage-drop", "--out", folder + "/o", file.toString()))
                .isEqualTo(code);
    }

    @Test
    void dangerIsTwo() {
        assertThat(check(
                        "check",
                        "--quiet",
                        "--out",
                        folder + "/o",
                        EXAMPLES.resolve("sandpiper-unguarded-bypass.json").toString()))
                .isEqualTo(2);
    }

    @Test
    void aWrongCommandLineIsSixtyFour() {
        assertThat(check("check", folder + "/no-such.json")).isEqualTo(64);
        assertThat(check("check", "--operation", "no-such", folder.toString())).isEqualTo(64);
    }

    /** So that parts of many lines, each through a pipe of its own, give what all of them give through one. */
    @Test
    void linesOnStandardInputComeOutOneForOneWhereverTheyAreCut() throws IOException {
        List<String> lines = Stream.of("0.1", "5", "much", "100", "2.5")
                .map(amps -> "{\"key\":\"" + amps + "\",\"input\":" + DROP.formatted(amps) + "}")
                .toList();
        List<String> whole = filtered(lines, 3);
        assertThat(whole).hasSize(lines.size());
        for (int i = 0; i < lines.size(); i++) {
            assertThat(filtered(lines.subList(i, i + 1), i == 2 ? 3 : i == 3 ? 2 : 0))
                    .containsExactly(whole.get(i));
        }
        assertThat(filtered(List.of(), 0)).isEmpty();
    }

    private List<String> filtered(List<String> lines, int exitCode) throws IOException {
        InputStream before = System.in;
        Path out = folder.resolve("filtered");
        System.setIn(new ByteArrayInputStream(String.join("\n", lines).getBytes(StandardCharsets.UTF_8)));
        try {
            assertThat(check("check", "--quiet", "--operation", "voltage-drop", "--out", out.toString()))
                    .isEqualTo(exitCode);
        } finally {
            System.setIn(before);
        }
        return Files.readAllLines(out);
    }

    @Test
    void thereIsNoOptionThatOnlyAServiceCanUse() throws IOException {
        Path file = Files.writeString(folder.resolve("a.json"), DROP.formatted("1"));
        for (String option : List.of("--threads", "--port", "--warm-up", "--burst")) {
            assertThat(check("check", option, "1000", "--operation", "voltage-drop", file.toString()))
                    .as(option)
                    .isEqualTo(64);
        }
        assertThat(check(
                        "check",
                        "--quiet",
                        "--limits",
                        Files.writeString(folder.resolve("limits"), "tokens = 100000")
                                .toString(),
                        "--bulk-threads",
                        "1",
                        "--operation",
                        "voltage-drop",
                        "--out",
                        folder + "/o",
                        file.toString()))
                .isZero();
    }

    @Test
    void anEmptyFileIsNoPlan() throws IOException {
        Path file = Files.createFile(folder.resolve("cut-short.json"));
        assertThat(check("check", "--quiet", "--out", folder + "/o", file.toString()))
                .isEqualTo(3);
    }

    @Test
    void theReportIsNotWrittenOverAPlan() throws IOException {
        Path file = Files.writeString(folder.resolve("a.json"), DROP.formatted("1"));
        assertThat(check("check", "--operation", "voltage-drop", "--out", file.toString(), folder.toString()))
                .isEqualTo(64);
        assertThat(file).content().isEqualTo(DROP.formatted("1"));
    }

    @Test
    void aReportThatCannotBeWrittenIsSaidSo() throws IOException {
        Path file = Files.writeString(folder.resolve("a.json"), DROP.formatted("1"));
        StringWriter err = new StringWriter();
        int code = new CommandLine(new Main())
                .setErr(new PrintWriter(err))
                .execute("check", "--out", folder + "/no-such/o", file.toString());
        assertThat(code).isEqualTo(64);
        assertThat(err.toString()).contains("/no-such/o");
    }

    @Test
    void eachLineNamesItsFile() throws IOException {
        Files.writeString(folder.resolve("a.json"), DROP.formatted("1"));
        Files.writeString(folder.resolve("b.jsonl"), DROP.formatted("1") + "\n" + DROP.formatted("2") + "\n");
        List<String> lines = report("voltage-drop", folder.resolve("a.json"), folder.resolve("b.jsonl"));
        assertThat(lines.get(0)).startsWith("{\"file\":\"" + folder.resolve("a.json") + "\",\"line\":1,\"answer\":");
        assertThat(lines.get(2)).startsWith("{\"file\":\"" + folder.resolve("b.jsonl") + "\",\"line\":2,\"answer\":");
    }

    @Test
    void aReportOnSeveralFilesNamesNoLineToGoOnFrom() throws IOException {
        Files.writeString(folder.resolve("a.json"), DROP.formatted("1"));
        List<String> lines = report("voltage-drop", folder.resolve("a.json"));
        assertThat(lines.get(1)).startsWith("{\"summary\":{").doesNotContain("nextLine");
    }

    @Test
    void theReportMayBeATable() throws IOException {
        Files.writeString(folder.resolve("a.json"), DROP.formatted("1"));
        Path out = folder.resolve("table.csv");
        check("check", "--operation", "voltage-drop", "--report", "CSV", "--out", out.toString(), folder.toString());
        List<String> rows = Files.readAllLines(out);
        assertThat(rows.get(0)).startsWith("file,line,key,status,message,part,");
        assertThat(rows.get(1)).startsWith(folder.resolve("a.json") + ",1,,200,,out,16 AWG,");
        assertThat(rows.get(rows.size() - 1)).startsWith(",summary,complete,,yes,");
    }

    @Test
    void fortyCarsOfOneWorkbookAreCheckedByOneCommand() throws IOException {
        StringBuilder list = new StringBuilder("car,from,to,size,length\n");
        for (int i = 1; i <= 40; i++) {
            String car = "car " + i;
            list.append(
                    i == 9
                            ? car + ",battery +,horn,0.5 mm2,1 m\n"
                            : car + ",battery +,fuse in,6 mm2,1 m\n" + car + ",fuse out,horn,6 mm2,1 m\n");
        }
        byte[] workbook = Workbooks.writeXlsx(TextList.read(list.toString(), ListLimits.defaults()).sheets().stream()
                .map(sheet -> new Sheet("cars", sheet.rows()))
                .toList());
        Files.createDirectory(folder.resolve("club"));
        Files.write(folder.resolve("club/cars.xlsx"), workbook);
        Files.writeString(folder.resolve("club/README.md"), "Cars of the club.\n");
        Path out = folder.resolve("report.csv");
        check(
                "check",
                "--report",
                "CARS",
                "--worst-first",
                "--out",
                out.toString(),
                folder.resolve("club").toString());
        List<String> rows = Files.readAllLines(out);
        assertThat(rows.get(0))
                .isEqualTo(
                        "file,line,key,status,message,severity,danger,warning,note,code,text,remedy,questions,assumptions");
        assertThat(rows.stream().filter(row -> row.contains(",200,"))).hasSize(40);
        assertThat(rows.get(1)).contains(",9,car 9,200,,danger,");
        assertThat(rows.get(rows.size() - 1)).startsWith(",summary,complete,,yes,");
    }

    @Test
    void onlyRowsOfCarsCanBePutInOrder() {
        assertThat(check("check", "--worst-first", folder.toString())).isEqualTo(64);
    }
}
