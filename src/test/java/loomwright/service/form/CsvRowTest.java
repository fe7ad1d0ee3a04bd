package loomwright.service.form;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.Collectors;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.CharRange;
import net.jqwik.api.constraints.Chars;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;

/** Rows of comma-separated values are taken apart as RFC 4180, section 2, puts them together. */
class CsvRowTest {
    @Test
    void cellsStandBetweenCommas() {
        assertThat(CsvRow.parse("a,b c, 1.5 ,", ',')).contains(List.of("a", "b c", "1.5", ""));
        assertThat(CsvRow.parse("", ',')).contains(List.of(""));
    }

    @Test
    void quotesKeepCommasBlanksAndDoubledQuotes() {
        assertThat(CsvRow.parse("\"a,b\", \" c \" ,\"d\"\"e\",\"\"", ',')).contains(List.of("a,b", " c ", "d\"e", ""));
    }

    @Test
    void quotesThatDoNotMatchAreNoRow() {
        for (String row : List.of("\"a", "a,\"b", "\"a\"b", "\"a\"\"", "\"")) {
            assertThat(CsvRow.parse(row, ',')).as(row).isEmpty();
        }
    }

    @Test
    void theHeaderTellsTheSeparator() {
        assertThat(CsvRow.separatorOf("currentA,lengthM")).isEqualTo(',');
        assertThat(CsvRow.separatorOf("currentA;lengthM")).isEqualTo(';');
        assertThat(CsvRow.separatorOf("currentA\tlengthM")).isEqualTo('\t');
        assertThat(CsvRow.parse("5,2;\"a;b\";", ';')).contains(List.of("5,2", "a;b", ""));
    }

    @Property(seed = "20261125", tries = 500)
    void whatIsQuotedComesBack(
            @ForAll @Size(min = 1, max = 5)
                    List<@Chars({',', '"', ' ', ';'}) @CharRange(from = 'a', to = 'e') String> cells) {
        String row = cells.stream()
                .map(cell -> '"' + cell.replace("\"", "\"\"") + '"')
                .collect(Collectors.joining(","));
        assertThat(CsvRow.parse(row, ',')).contains(cells);
    }
}
