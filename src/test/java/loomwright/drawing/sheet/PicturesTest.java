package loomwright.drawing.sheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import loomwright.drawing.sheet.Pictures.Piece;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

/** How a picture is laid on paper. */
class PicturesTest {
    @Test
    void aSmallPictureStaysWhole() {
        assertThat(Pictures.pieces(720, 900)).isEmpty();
    }

    /** Nothing is lost, neighbours have 60 px in common, and every piece fits on a lying page. */
    @Property(seed = "20260520")
    void piecesCoverThePicture(
            @ForAll @DoubleRange(min = 300, max = 8000) double widthPx,
            @ForAll @DoubleRange(min = 300, max = 8000) double heightPx) {
        List<Piece> pieces = Pictures.pieces(widthPx, heightPx);
        double reached = 0;
        for (int i = 0; i < pieces.size(); i++) {
            Piece piece = pieces.get(i);
            assertThat(piece.fromPx()).isCloseTo(i == 0 ? 0 : reached - 60, within(1e-6));
            assertThat(piece.heightPx()).isLessThanOrEqualTo(0.66 * Math.max(widthPx, 1000) + 1e-6);
            reached = piece.fromPx() + piece.heightPx();
        }
        if (!pieces.isEmpty()) {
            assertThat(reached).isCloseTo(heightPx, within(1e-6));
        }
    }
}
