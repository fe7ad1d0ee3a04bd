package loomwright.drawing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Elements: 1 escapes, 2 parts put together, 3 numbers. */
class MarkupTest {
    private static final String HOSTILE = "</text><script>alert('x')</script>&amp; \"quoted\" ]]> <!--";

    @Test
    void aHostileNameStaysAName() {
        Svg picture = new Svg("p", 100, 50, HOSTILE, HOSTILE);
        picture.text(1, 2, 10, HOSTILE, "data-name", HOSTILE);
        Labels read = Labels.of(picture.bytes());
        assertThat(read.list()).singleElement().extracting(Labels.Label::text).isEqualTo(HOSTILE);
        assertThat(read.textOf("title")).isEqualTo(HOSTILE);
        assertThat(read.root().getElementsByTagName("script").getLength()).isZero();
    }

    /** Whatever a name holds, the picture can be read again, and what XML can hold comes back unchanged. */
    @Property(seed = "20260501")
    void anyTextGivesAPictureThatCanBeRead(@ForAll String name) {
        Labels read =
                Labels.of(new Svg("p", 100, 50, "t", "d").text(1, 2, 10, name).bytes());
        String back = read.list().get(0).text();
        assertThat(back.codePointCount(0, back.length())).isEqualTo(name.codePointCount(0, name.length()));
        if (name.codePoints().allMatch(c -> c >= ' ' && c < 0xD800)) {
            assertThat(back).isEqualTo(name);
        }
    }

    @Test
    void controlCharactersAreShownAsUnknown() {
        assertThat(new Markup().element("b", "a\u0000b\uD800c").toString()).isEqualTo("<b>a\uFFFDb\uFFFDc</b>");
    }

    @Test
    void oneMarkupBecomesPartOfAnother() {
        Markup inner = new Markup().element("i", "x < y");
        assertThat(new Markup().open("p").add(inner).text("!").close().toString())
                .isEqualTo("<p><i>x &lt; y</i>!</p>");
    }

    @Test
    void anElementWithoutContentIsWrittenInFull() {
        assertThat(new Markup().empty("td").toString()).isEqualTo("<td></td>");
    }

    @ParameterizedTest
    @CsvSource({"3, 3", "0.5, 0.5", "-0.004, 0", "-1.25, -1.25", "2.005, 2.01", "1000000, 1000000", "0.04, 0.04"})
    void numbersHaveAtMostTwoDecimals(double value, String written) {
        assertThat(Markup.number(value)).isEqualTo(written);
    }

    @Test
    void whatIsNoNumberIsRefused() {
        assertThatThrownBy(() -> Markup.number(Double.NaN)).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void theIdsOfTwoPicturesOfAPageDiffer() {
        String one = new String(new Svg("a", 9, 9, "t", "d").bytes(), StandardCharsets.UTF_8);
        assertThat(one).contains("aria-labelledby=\"a-title a-desc\"").doesNotContain("id=\"title\"");
    }
}
