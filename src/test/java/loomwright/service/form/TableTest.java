package loomwright.service.form;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Tables as comma-separated values: RFC 4180, section 2. */
class TableTest {
    @Test
    void quotesCommasAndLineEndsAreKept() {
        Table table = new Table(
                List.of("name", "voltageV"),
                List.of(Arrays.asList("a \"b\", c", 0.1 + 0.2), Arrays.asList("two\nlines", null)));
        assertThat(table.csv()).isEqualTo("name,voltageV\r\n\"a \"\"b\"\", c\",0.3\r\n\"two\nlines\",\r\n");
    }

    @Test
    void aTextThatLooksLikeAFormulaIsMadeHarmless() {
        Table table = new Table(List.of("name", "currentA"), List.of(List.of("=1+1", -2.5)));
        assertThat(table.csv()).isEqualTo("name,currentA\r\n'=1+1,-2.5\r\n");
    }

    @Test
    void aRowOfAnotherWidthIsAFaultOfOurs() {
        assertThatThrownBy(() -> new Table(List.of("a"), List.of(List.of(1, 2))))
                .isInstanceOf(IllegalArgumentException.class);
    }
}
