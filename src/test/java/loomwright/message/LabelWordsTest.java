package loomwright.message;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import loomwright.message.Argument.Thing;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Which labels take an article in a sentence. */
class LabelWordsTest {
    private static final LabelWords WORDS = new LabelWords("headlamp left tell-tale switch");

    @ParameterizedTest
    @CsvSource({
        "Left headlamp, left headlamp",
        "Headlamps, headlamps",
        "LH headlamp, LH headlamp",
        "Elsie headlamp, Elsie headlamp",
        "left switch, left switch",
        "Tell-tale, tell-tale"
    })
    void plainWordsLoseTheirCapitalAndNamesKeepIt(String label, String inSentence) {
        assertThat(WORDS.isPlain(label)).isTrue();
        assertThat(WORDS.withoutCapital(label)).isEqualTo(inSentence);
    }

    @ParameterizedTest
    @ValueSource(strings = {"Fuse 2", "W4", "Headlamp L", "Headlamp (left)", "Elsie", "", "headlamp, left"})
    void namesAndFiguresAreLeftAsTheyAre(String label) {
        assertThat(WORDS.isPlain(label)).isFalse();
    }

    @Test
    void aLanguageWithoutSuchWordsLeavesAllLabels() {
        assertThat(new LabelWords("").isPlain("Left headlamp")).isFalse();
    }

    @Test
    void anArticleStandsInASentenceAndNeitherBeforeAColonNorInAPath() {
        Thing lamp = Thing.part("head-left", "Left headlamp");
        assertThat(List.of("{x}", "{x, start}", "{x, head}", "{x, short}", "{x, path}"))
                .extracting(pattern -> CatalogueTest.text(pattern, lamp))
                .containsExactly(
                        "the left headlamp", "The left headlamp", "Left headlamp", "Left headlamp", "Left headlamp");
        assertThat(CatalogueTest.text("{x, path}", Thing.wire("7"))).isEqualTo("wire 7");
        assertThat(CatalogueTest.text("{x, path}", Thing.wire("W7"))).isEqualTo("W7");
    }
}
