package loomwright.drawing.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

/** How a picture is laid on paper. */
class PicturesTest {
    @Test
    void aWidePictureLiesAndATallOneStands() {
        assertThat(Pictures.isLying(1000, 600)).isTrue();
        assertThat(Pictures.isLying(600, 1000)).isFalse();
        assertThat(Pictures.isLying(800, 800)).isFalse();
    }

    /** Turned by a right angle, a picture that is not square lies on the other kind of page. */
    @Property(seed = "20260520")
    void turnedItGoesOnTheOtherPage(
            @ForAll @DoubleRange(min = 300, max = 4000) double shortPx,
            @ForAll @DoubleRange(min = 4001, max = 8000) double longPx) {
        assertThat(Pictures.isLying(longPx, shortPx)).isTrue();
        assertThat(Pictures.isLying(shortPx, longPx)).isFalse();
    }
}
