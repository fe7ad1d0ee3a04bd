package loomwright.service.form;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import loomwright.answer.Answer;
import loomwright.answer.Basis;
import loomwright.answer.Caution;
import loomwright.message.PlainLine;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Answers as text for a forum post. */
class MarkdownTest {
    @Test
    void anyAnswerWithATableHasResultCautionsWorkingAndSources() {
        Table table = new Table(
                List.of("part", "dropV", "size", "ok"),
                List.of(Arrays.asList("out", 0.123456, null, true), Arrays.asList("total", 1234.5, null, null)));
        Answer<String> answer = new Answer<>(
                "",
                PlainLine.lines(List.of("1 + 1 = 2")),
                List.of(Basis.fromMemory("a rule", "a book")),
                List.of(Caution.HOT_BALLAST));
        assertThat(Markdown.of(answer, table)).isEqualTo("""
                        ## Result

                        | part | drop, V | ok |
                        | --- | --- | --- |
                        | out | 0.1235 | yes |
                        | total | 1234 |  |

                        ## Cautions

                        - %s

                        ## Working

                        - 1 + 1 = 2

                        ## Sources

                        - a rule: a book (from memory)

                        """.formatted(Caution.HOT_BALLAST.text()));
    }

    @ParameterizedTest(name = "{0} is written {1}")
    @CsvSource(
            delimiter = ';',
            value = {
                "a|b; a\\|b",
                "<img src=x>; \\<img src=x\\>",
                "[text](address); \\[text\\](address)",
                "# loud; \\# loud",
                "## Cautions; \\## Cautions",
                "- listed; \\- listed",
                "12. listed; \\12. listed",
                "12 V; 12 V",
                "-0.5 V; -0.5 V",
                "https://example.org/a; https\\://example.org/a",
                "www.example.org; www\\.example.org",
                "call @everyone; call @\u2060everyone",
                "a@example.org; a@\u2060example.org",
                "12 A @ 12 V; 12 A @ 12 V",
                "*bold* `code` ~~out~~; \\*bold\\* \\`code\\` \\~\\~out\\~\\~"
            })
    void textOfThePlanIsTakenAsItStands(String given, String written) {
        assertThat(new Markdown().paragraph(given).toString()).isEqualTo(written + "\n\n");
    }

    @Test
    void aLineEndInATextStartsNoNewLine() {
        assertThat(new Markdown().paragraph("a\r\n\n# b\u2028c").toString()).hasLineCount(2);
    }

    @ParameterizedTest(name = "{0} is written {1}")
    @CsvSource({"0, 0", "1234567.8, 1234568", "0.0000331249, 0.00003312", "12.30, 12.3", "-0.4999999, -0.5"})
    void figuresHaveFourDigitsAndNoExponent(double value, String written) {
        assertThat(Markdown.fourDigits(value)).isEqualTo(written);
    }
}
