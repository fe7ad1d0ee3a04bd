package loomwright.conductor;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;

import java.util.ArrayList;
import java.util.List;
import loomwright.answer.Basis;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Every table names its source, is complete and in order; a broken file stops the start. */
class ReferenceTablesTest {
    private static final List<String> SOUND = List.of(
            "# title: t",
            "# source: s",
            "# edition: e",
            "# section: 1",
            "# status: verified",
            "# rising: a b",
            "a,b,word",
            "1,2,\"x, \"\"y\"\"\"",
            "2,3,z");

    @Test
    void everyTableIsListedAndFoundByItsName() {
        assertThat(ReferenceTables.list()).hasSize(16);
        for (ReferenceTable table : ReferenceTables.list()) {
            assertThat(ReferenceTables.find(table.name())).contains(table);
            assertThat(table.rows()).isNotEmpty();
            assertThat(table.citation()).doesNotContain(", ,");
        }
        assertThat(ReferenceTables.find("no-such-table")).isEmpty();
    }

    @Test
    void cellsWithCommasAndQuotesAreRead() {
        ReferenceTable table = TableFile.parse("t", SOUND);
        assertThat(table.rows().get(0)).containsExactly("1", "2", "x, \"y\"");
        assertThat(table.columns()).extracting(ReferenceTable.Column::numeric).containsExactly(true, true, false);
    }

    @ParameterizedTest(name = "instead of the last row: {0}")
    @ValueSource(strings = {"2,1,falls", "1,2,twice", "2,3", "2,3,4,5", "2,,blank", "-2,3,negative", "0,3,nought"})
    void aBrokenRowIsRefused(String row) {
        List<String> lines = new ArrayList<>(SOUND.subList(0, SOUND.size() - 1));
        lines.add(row);
        assertThatIllegalStateException().isThrownBy(() -> TableFile.parse("t", lines));
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(
            delimiter = '|',
            value = {
                "a figure of nought | # status: verified | a,b | 5,1 | 4,0",
                "a column that is to fall and rises | # falling: b | a,b | 1,2 | 2,3",
                "a status that says nothing | # status: perhaps | a,b | 1,2 | 2,3",
                "a head line without a key | # : verified | a,b | 1,2 | 2,3",
                "a head line without a colon | # verified | a,b | 1,2 | 2,3"
            })
    void aBrokenFileIsRefused(String what, String head, String names, String first, String second) {
        List<String> lines = new ArrayList<>(SOUND.subList(0, 4));
        lines.addAll(head.startsWith("# status") ? List.of(head) : List.of(SOUND.get(4), head));
        assertThatIllegalStateException()
                .isThrownBy(() -> TableFile.parse("t", List.copyOf(with(lines, names, first, second))));
    }

    @Test
    void aFileWithoutRowsIsRefused() {
        assertThatIllegalStateException().isThrownBy(() -> TableFile.parse("t", SOUND.subList(0, 7)));
    }

    @Test
    void aColumnMayFallAndRepeatItself() {
        List<String> lines = with(SOUND.subList(0, 5), "# falling: b", "a,b", "1,3", "2,3", "3,2");
        assertThat(TableFile.parse("t", lines).rows()).hasSize(3);
    }

    private static List<String> with(List<String> head, String... more) {
        List<String> lines = new ArrayList<>(head);
        lines.addAll(List.of(more));
        return lines;
    }

    /** A row that is partly remembered counts as remembered. */
    @ParameterizedTest(name = "{0}: {1}")
    @CsvSource({
        "verified, VERIFIED",
        "verified on a second page, VERIFIED",
        "computed, COMPUTED",
        "from memory, FROM_MEMORY",
        "mixed, FROM_MEMORY",
        "verified; rating from memory, FROM_MEMORY",
        "common practice, COMMON_PRACTICE"
    })
    void aRowsOwnStatusGoesBeforeThatOfItsTable(String status, Basis.Status told) {
        List<String> lines = with(SOUND.subList(0, 5), "a,b,status", "1,2," + status);
        ReferenceTable table = TableFile.parse("t", lines);
        assertThat(table.basis("rule", table.rows().get(0)).status()).isEqualTo(told);
        assertThat(table.basis("rule").status()).isEqualTo(Basis.Status.VERIFIED);
        assertThat(table.citation()).isEqualTo("s, e, 1");
    }

    @ParameterizedTest(name = "without head line {0}")
    @ValueSource(ints = {0, 1, 2, 3, 4})
    void aHeadWithoutItsSourceIsRefused(int line) {
        List<String> lines = new ArrayList<>(SOUND);
        lines.remove(line);
        assertThatIllegalStateException().isThrownBy(() -> TableFile.parse("t", lines));
    }

    @ParameterizedTest(name = "FAA AC 43.13-1B table 11-6: {0} V system, {1} V continuous, {2} V intermittent")
    @CsvSource({"14, 0.5, 1", "28, 1, 2", "115, 4, 8", "200, 7, 14"})
    void allowableDrops(String systemV, double continuousV, double intermittentV) {
        ReferenceTable table = ReferenceTables.get("ac43-drop");
        List<String> row = table.findRow(systemV).orElseThrow();
        assertThat(table.getNumber(row, "continuousV")).isEqualTo(continuousV);
        assertThat(table.getNumber(row, "intermittentV")).isEqualTo(intermittentV);
    }

    @ParameterizedTest(name = "IEC 60757: {0} is {1}")
    @CsvFileSource(resources = "/conductor/colours.csv", numLinesToSkip = 1)
    void colours(String code, String colour) {
        ReferenceTable table = ReferenceTables.get("colours");
        assertThat(table.getCell(table.findRow(code).orElseThrow(), "colour")).isEqualTo(colour);
    }

    @ParameterizedTest(name = "DIN 72552: {0} is {1}")
    @CsvFileSource(resources = "/conductor/terminals.csv", numLinesToSkip = 1)
    void terminals(String terminal, String meaning, String status) {
        ReferenceTable table = ReferenceTables.get("terminals");
        assertThat(table.findRow(terminal)).contains(List.of(terminal, meaning, status));
    }
}
