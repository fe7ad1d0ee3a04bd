package loomwright.service.form;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import loomwright.answer.Answer;
import loomwright.answer.Basis;
import loomwright.answer.Caution;
import loomwright.message.PlainLine;
import org.junit.jupiter.api.Test;

/** An answer as a page for people: the cautions before the figures, names as words, nothing taken for markup. */
class AnswerPageTest {
    private static final String PAGE = new String(
            AnswerPage.of(
                    "Wire <b>",
                    new Answer<>(
                            "",
                            PlainLine.lines(List.of("8 A & 3 m")),
                            List.of(Basis.fromMemory("a rule", "a book")),
                            List.of(Caution.DISCONNECT_BATTERY)),
                    new Table(List.of("part", "lengthM", "heatWPerM"), List.of(Arrays.asList("<script>", 3.0, null)))),
            StandardCharsets.UTF_8);

    @Test
    void columnsAreHeadedInWordsWithTheirUnits() {
        assertThat(PAGE).contains(">part</th>", ">length, m</th>", ">heat, W per m</th>");
    }

    @Test
    void cautionsComeBeforeTheFigures() {
        assertThat(PAGE.indexOf(Caution.DISCONNECT_BATTERY.text())).isPositive().isLessThan(PAGE.indexOf("<table"));
    }

    @Test
    void aSourceThatWasNotLookedUpSaysSo() {
        assertThat(PAGE).contains("<li>a rule: a book (from memory)</li>");
    }

    @Test
    void textIsNeverMarkup() {
        assertThat(PAGE)
                .contains("Wire &lt;b&gt;", "&lt;script&gt;", "8 A &amp; 3 m")
                .doesNotContain("<script", "<b>");
    }
}
