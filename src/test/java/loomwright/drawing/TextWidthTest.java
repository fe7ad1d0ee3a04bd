package loomwright.drawing;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Font;
import java.awt.font.FontRenderContext;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.StringLength;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The widths reckoned with are those that are drawn, or more. */
class TextWidthTest {
    @ParameterizedTest
    @ValueSource(
            strings = {
                "available, 23.44 kV",
                "The quick brown fox jumps over the lazy dog.",
                "14 AWG reaches 80 °C, no heat lost",
                "ÄÖÜ äöü ß é ñ",
                "Ωµ≥≤→∥…",
                "Зажигание"
            })
    void aTextIsNotWiderThanReckoned(String text) {
        Font font = new Font(Font.SANS_SERIF, Font.PLAIN, 100);
        FontRenderContext context = new FontRenderContext(null, true, true);
        assertThat(font.getStringBounds(text, context).getWidth()).isLessThanOrEqualTo(TextWidth.of(text, 100) * 1.001);
        assertThat(font.deriveFont(Font.BOLD).getStringBounds(text, context).getWidth())
                .isLessThanOrEqualTo(TextWidth.ofBold(text, 100) * 1.001);
    }

    @Property(seed = "20260502")
    void aShortenedTextFits(
            @ForAll @StringLength(max = 60) String text, @ForAll @DoubleRange(min = 30, max = 300) double width) {
        String shortened = TextWidth.shortened(text, 12, width);
        assertThat(TextWidth.of(shortened, 12)).isLessThanOrEqualTo(width);
        assertThat(text).startsWith(shortened.replaceFirst("…$", ""));
    }
}
