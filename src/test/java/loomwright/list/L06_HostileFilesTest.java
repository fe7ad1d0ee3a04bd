package loomwright.list;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import loomwright.answer.InputError;
import loomwright.answer.RejectedInput;
import org.apache.commons.compress.archivers.zip.ZipArchiveEntry;
import org.apache.commons.compress.archivers.zip.ZipFile;
import org.apache.commons.compress.utils.SeekableInMemoryByteChannel;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Files that mean harm or are no workbooks: a clear error or a safe reading, within bounds, and never a call outside. */
class L06_HostileFilesTest {
    private static final ListLimits LIMITS = ListLimits.defaults();
    private static final List<Sheet> SHEETS = List.of(new Sheet(
            "wires", List.of(new Sheet.Row(1, List.of("from", "to")), new Sheet.Row(2, List.of("battery +", "horn")))));

    @Test
    void aWorkbookThatUnpacksToFarMoreThanItsSize() throws IOException {
        byte[] zeros = new byte[60_000_000];
        byte[] bomb = zip(Map.of("xl/worksheets/sheet1.xml", zeros));
        assertThat(bomb.length).isLessThan(100_000);
        assertThat(code(() -> Workbooks.readXlsx(bomb, LIMITS))).isEqualTo(InputError.Code.OVER_LIMIT);
        assertThat(code(() -> Workbooks.readOds(bomb, LIMITS))).isEqualTo(InputError.Code.OVER_LIMIT);
    }

    @Test
    void aWorkbookOfTooManyFiles() throws IOException {
        Map<String, byte[]> files = new LinkedHashMap<>();
        for (int i = 0; i <= LIMITS.entries(); i++) {
            files.put("f" + i, new byte[1]);
        }
        byte[] many = zip(files);
        assertThat(code(() -> Workbooks.readXlsx(many, LIMITS))).isEqualTo(InputError.Code.OVER_LIMIT);
    }

    @ParameterizedTest
    @ValueSource(strings = {"xl/worksheets/sheet1.xml", "xl/workbook.xml"})
    void entitiesAreRefusedBeforeAnythingReadsThem(String entry) throws IOException {
        byte[] hostile = with(
                Workbooks.writeXlsx(SHEETS),
                entry,
                "<?xml version=\"1.0\"?><!DOCTYPE x [<!ENTITY e SYSTEM \"file:///etc/passwd\">]><x>&e;</x>");
        assertThat(code(() -> Workbooks.readXlsx(hostile, LIMITS))).isEqualTo(InputError.Code.MALFORMED);
    }

    @Test
    void entitiesInAnOpenDocumentAreRefused() throws IOException {
        byte[] hostile = with(
                Workbooks.writeOds(SHEETS),
                "content.xml",
                "<?xml version=\"1.0\"?><!DOCTYPE x [<!ENTITY a \"aaaa\"><!ENTITY b \"&a;&a;\">]><x>&b;</x>");
        assertThat(code(() -> Workbooks.readOds(hostile, LIMITS))).isEqualTo(InputError.Code.MALFORMED);
    }

    @Test
    void whatIsNoWorkbookIsRefused() throws IOException {
        for (byte[] bytes : List.of(
                new byte[0],
                "from,to\n".getBytes(StandardCharsets.UTF_8),
                zip(Map.of("readme.txt", new byte[10])),
                java.util.Arrays.copyOf(Workbooks.writeXlsx(SHEETS), 300))) {
            assertThat(code(() -> Workbooks.readXlsx(bytes, LIMITS))).isEqualTo(InputError.Code.MALFORMED);
            assertThat(code(() -> Workbooks.readOds(bytes, LIMITS))).isEqualTo(InputError.Code.MALFORMED);
        }
    }

    @Test
    void ofAFormulaTheStoredValueCountsAndNothingIsCalledUp() throws IOException {
        String sheet =
                "<?xml version=\"1.0\"?><worksheet xmlns=\"http://schemas.openxmlformats.org/spreadsheetml/2006/main\">"
                        + "<sheetData><row r=\"1\"><c r=\"A1\" t=\"inlineStr\"><is><t>from</t></is></c>"
                        + "<c r=\"B1\" t=\"inlineStr\"><is><t>to</t></is></c><c r=\"C1\" t=\"inlineStr\"><is><t>length m</t></is></c></row>"
                        + "<row r=\"2\"><c r=\"A2\" t=\"inlineStr\"><is><t>battery +</t></is></c>"
                        + "<c r=\"B2\" t=\"str\"><f>WEBSERVICE(\"http://127.0.0.1:1/\")</f><v>horn</v></c>"
                        + "<c r=\"C2\"><f>1+1</f><v>2</v></c></row></sheetData></worksheet>";
        byte[] workbook = with(Workbooks.writeXlsx(SHEETS), "xl/worksheets/sheet1.xml", sheet);
        ListReading reading = PlanList.read(Workbooks.readXlsx(workbook, LIMITS));
        assertThat(Lists.plan(reading).wires().get(0).conductor().lengthM()).isEqualTo(2);
        assertThat(Lists.ends(Lists.plan(reading), "W1")).isEqualTo("battery.plus horn.a");
    }

    /** Merged cells keep their value in the first; the others are as good as empty. */
    @Test
    void ofMergedCellsTheRowAboveCounts() throws IOException {
        String sheet = worksheet(
                "<row r=\"1\">" + cell("A1", "from") + cell("B1", "to") + cell("C1", "size") + "</row>"
                        + "<row r=\"2\">" + cell("A2", "battery +") + cell("B2", "horn") + cell("C2", "2.5 mm2")
                        + "</row>"
                        + "<row r=\"3\">" + cell("B3", "coil +") + cell("C3", "1.5 mm2") + "</row>",
                "<mergeCells count=\"1\"><mergeCell ref=\"A2:A3\"/></mergeCells>");
        ListReading reading = PlanList.read(
                Workbooks.readXlsx(with(Workbooks.writeXlsx(SHEETS), "xl/worksheets/sheet1.xml", sheet), LIMITS));
        assertThat(Lists.ends(Lists.plan(reading), "W2")).startsWith("battery.plus coil.");
        assertThat(Lists.assumptions(reading)).contains(ListAssumption.Code.AS_ROW_ABOVE);
    }

    @ParameterizedTest
    @ValueSource(strings = {"Total", "Sum", "Total length"})
    void aRowOfTotalsIsNoWire(String word) throws IOException {
        String sheet = worksheet(
                "<row r=\"1\">" + cell("A1", "from") + cell("B1", "to") + cell("C1", "length m") + "</row>"
                        + "<row r=\"2\">" + cell("A2", "battery +") + cell("B2", "horn")
                        + "<c r=\"C2\"><v>1.5</v></c></row>"
                        + "<row r=\"4\"><c r=\"C4\"><f>SUM(C2:C2)</f><v>1.5</v></c>" + cell("D4", word) + "</row>",
                "");
        ListReading reading = PlanList.read(
                Workbooks.readXlsx(with(Workbooks.writeXlsx(SHEETS), "xl/worksheets/sheet1.xml", sheet), LIMITS));
        assertThat(Lists.plan(reading).wires().stream().filter(wire -> wire.id().startsWith("W")))
                .hasSize(1);
        assertThat(Lists.assumptions(reading)).doesNotContain(ListAssumption.Code.ROW_LEFT_OUT);
    }

    /** As text it is a name, or a figure that cannot be read; nothing works it out. */
    @Test
    void textThatBeginsLikeAFormulaIsText() {
        ListReading reading = Lists.of("from,to,length", "battery +,=1+1,=1+1", "battery +,horn,1 m");
        assertThat(String.valueOf(reading.plan().get("parts"))).contains("=1+1");
        assertThat(Lists.questions(reading)).contains(Question.Code.LENGTH);
    }

    /** Programs, connections and links to other files lie beside the worksheets; none of them is opened. */
    @Test
    void macrosAndLinksToOutsideAreNotTouched() throws IOException {
        byte[] plain = Workbooks.writeXlsx(SHEETS);
        byte[] loaded = with(
                plain,
                Map.of(
                        "xl/vbaProject.bin",
                        "not a program",
                        "xl/connections.xml",
                        "<connections><connection id=\"1\" name=\"x\"><webPr url=\"http://127.0.0.1:1/\"/></connection></connections>",
                        "xl/externalLinks/externalLink1.xml",
                        "<externalLink><externalBook/></externalLink>",
                        "xl/externalLinks/_rels/externalLink1.xml.rels",
                        "<Relationships><Relationship Id=\"rId1\" Target=\"http://127.0.0.1:1/other.xlsx\" TargetMode=\"External\"/>"
                                + "</Relationships>"));
        assertThat(PlanList.read(Workbooks.readXlsx(loaded, LIMITS)).plan())
                .isEqualTo(PlanList.read(Workbooks.readXlsx(plain, LIMITS)).plan());
        byte[] ods = Workbooks.writeOds(SHEETS);
        byte[] withBasic = with(
                ods,
                Map.of("Basic/Standard/Module1.xml", "<script:module xmlns:script=\"urn:x\">Shell</script:module>"));
        assertThat(PlanList.read(Workbooks.readOds(withBasic, LIMITS)).plan())
                .isEqualTo(PlanList.read(Workbooks.readOds(ods, LIMITS)).plan());
    }

    private static String cell(String at, String text) {
        return "<c r=\"" + at + "\" t=\"inlineStr\"><is><t>" + text + "</t></is></c>";
    }

    private static String worksheet(String rows, String behind) {
        return "<?xml version=\"1.0\"?><worksheet xmlns=\"http://schemas.openxmlformats.org/spreadsheetml/2006/main\">"
                + "<sheetData>" + rows + "</sheetData>" + behind + "</worksheet>";
    }

    /** Ten megabytes of long notes are a list; ten megabytes of short rows are too many of them. */
    @Test
    void aFileOfTenMegabytesIsReadOrRefusedInWords() {
        String notes = "from,to,note\n" + ("battery +,horn," + "x".repeat(1_900) + "\n").repeat(5_300);
        assertThat(notes).hasSizeGreaterThan(10_000_000);
        ListSource read = TextList.read(notes, LIMITS);
        assertThat(read.sheets().get(0).rows()).hasSize(5_301);
        byte[] workbook = Workbooks.writeXlsx(
                List.of(new Sheet("wires", read.sheets().get(0).rows())));
        assertThat(Workbooks.readXlsx(workbook, LIMITS).sheets().get(0).rows())
                .isEqualTo(read.sheets().get(0).rows());
        String rows = "from,to\n" + "battery +,fuse 1 in\n".repeat(500_000);
        assertThat(code(() -> TextList.read(rows, LIMITS))).isEqualTo(InputError.Code.OVER_LIMIT);
    }

    @Test
    void aTextOfTooManyLinesOrTooLongCells() {
        String lines = "from,to\n" + "battery +,horn\n".repeat(LIMITS.rows());
        assertThat(code(() -> TextList.read(lines, LIMITS))).isEqualTo(InputError.Code.OVER_LIMIT);
        String cell = "from,to\nbattery +," + "x".repeat(LIMITS.cellChars() + 1) + "\n";
        assertThat(code(() -> TextList.read(cell, LIMITS))).isEqualTo(InputError.Code.OVER_LIMIT);
        String wide = "from,to" + ",x".repeat(LIMITS.columns()) + "\n";
        assertThat(code(() -> TextList.read(wide, LIMITS))).isEqualTo(InputError.Code.OVER_LIMIT);
    }

    private static InputError.Code code(org.assertj.core.api.ThrowableAssert.ThrowingCallable call) {
        InputError.Code[] found = new InputError.Code[1];
        assertThatThrownBy(call)
                .isInstanceOfSatisfying(
                        RejectedInput.class,
                        rejected -> found[0] = rejected.faults().get(0).code());
        return found[0];
    }

    private static byte[] zip(Map<String, byte[]> files) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (ZipOutputStream zip = new ZipOutputStream(out)) {
            for (Map.Entry<String, byte[]> file : files.entrySet()) {
                zip.putNextEntry(new ZipEntry(file.getKey()));
                zip.write(file.getValue());
                zip.closeEntry();
            }
        }
        return out.toByteArray();
    }

    /** The same workbook with another text in one of its files. */
    private static byte[] with(byte[] workbook, String name, String text) throws IOException {
        return with(workbook, Map.of(name, text), true);
    }

    /** The same workbook with further files in it. */
    private static byte[] with(byte[] workbook, Map<String, String> added) throws IOException {
        return with(workbook, added, false);
    }

    private static byte[] with(byte[] workbook, Map<String, String> changed, boolean known) throws IOException {
        Map<String, byte[]> files = new LinkedHashMap<>();
        try (ZipFile zip = ZipFile.builder()
                .setSeekableByteChannel(new SeekableInMemoryByteChannel(workbook))
                .get()) {
            for (ZipArchiveEntry entry : Collections.list(zip.getEntries())) {
                files.put(entry.getName(), zip.getInputStream(entry).readAllBytes());
            }
        }
        changed.forEach((name, text) -> {
            assertThat(files.containsKey(name)).isEqualTo(known);
            files.put(name, text.getBytes(StandardCharsets.UTF_8));
        });
        return zip(files);
    }
}
