package loomwright.conductor;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;

import java.util.ArrayList;
import java.util.List;
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
