package loomwright.service.form;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import loomwright.answer.Answer;
import loomwright.answer.Caution;
import loomwright.message.PlainLine;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

/** A text for a forum post, cut to what the forum takes. */
class TruncatedMarkdownTest {
    private static final Answer<String> NO_CAUTIONS = new Answer<>("", List.of(), List.of(), List.of());

    @Test
    void aTextThatFitsIsLeftAsItIs() {
        String text = Markdown.of(NO_CAUTIONS, table(3, 10));
        assertThat(TruncatedMarkdown.of(text, TruncatedMarkdown.SHORTEST)).isEqualTo(text);
    }

    @Test
    void theLastLineTellsWhatWasLeftOut() {
        List<String> working = Collections.nCopies(40, "w".repeat(97));
        String text = new Markdown()
                .title("T")
                .section("Long")
                .bullets(working)
                .section("More")
                .bullets(List.of("m"))
                .toString();
        // Four lines of title and heading, the entries, a blank line, the last line.
        assertThat(TruncatedMarkdown.of(text, 2_000).lines())
                .hasSize(4 + 18 + 1 + 1)
                .last()
                .asString()
                .contains("2000", "22 of 40", "\"Long\"", "\"More\"");
    }

    @Test
    void allCautionsAndTheLongestTitleFitIntoTheShortestLimit() {
        Answer<String> answer = new Answer<>(
                "",
                PlainLine.lines(Collections.nCopies(50, "x".repeat(80))),
                List.of(),
                Arrays.asList(Caution.values()));
        String text = new Markdown()
                .title("*".repeat(400))
                .section("Result")
                .table(table(50, 60))
                .close(answer)
                .toString();
        String cut = TruncatedMarkdown.of(text, TruncatedMarkdown.SHORTEST);
        assertThat(cut).hasSizeLessThanOrEqualTo(TruncatedMarkdown.SHORTEST).startsWith("# ");
        for (Caution caution : Caution.values()) {
            assertThat(cut).contains("- " + caution.text() + "\n");
        }
    }

    @Property(seed = "20261125")
    void itIsNeverTooLongAndKeepsWholeLinesInTheirOrder(
            @ForAll @IntRange(min = 0, max = 200) int rows,
            @ForAll @IntRange(min = 1, max = 300) int width,
            @ForAll @IntRange(min = 0, max = 60) int steps,
            @ForAll @IntRange(min = 2_000, max = 9_000) int maxLength) {
        Answer<String> answer = new Answer<>(
                "",
                PlainLine.lines(Collections.nCopies(steps, "a step")),
                List.of(),
                List.of(Caution.HOT_BALLAST, Caution.LOCAL_CODES));
        String text = Markdown.of(answer, table(rows, width));
        String cut = TruncatedMarkdown.of(text, maxLength);
        assertThat(cut).hasSizeLessThanOrEqualTo(maxLength).contains(Caution.HOT_BALLAST.text());
        List<String> whole = text.lines().toList();
        List<String> kept = new ArrayList<>(cut.lines().toList());
        if (text.length() > maxLength) {
            assertThat(kept.remove(kept.size() - 1)).startsWith("*").contains(String.valueOf(maxLength));
        }
        kept.removeIf(String::isEmpty);
        assertThat(whole).containsSubsequence(kept);
        // The head of a table stands there only with a row.
        int head = kept.indexOf("| --- |");
        if (head >= 0) {
            assertThat(kept.get(head + 1)).startsWith("| ");
        }
    }

    /** What was assumed of a list stands before the findings; it takes a quarter of the room, and they are still there. */
    @Test
    void howAListWasReadLeavesRoomForTheFindings() {
        String text = new Markdown()
                .title("T")
                .section(PostText.AS_READ.text())
                .bullets(Collections.nCopies(60, "a".repeat(97)))
                .section("Findings")
                .bullets(Collections.nCopies(40, "f".repeat(97)))
                .toString();
        String cut = TruncatedMarkdown.of(text, 4_000);
        long assumed = cut.lines().filter(line -> line.startsWith("- a")).count();
        long found = cut.lines().filter(line -> line.startsWith("- f")).count();
        assertThat(assumed).isBetween(7L, 10L);
        assertThat(found).isGreaterThan(25);
    }

    private static Table table(int rows, int width) {
        return new Table(List.of("name"), Collections.nCopies(rows, List.of("n".repeat(width))));
    }
}
