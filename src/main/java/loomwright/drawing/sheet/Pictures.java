package loomwright.drawing.sheet;

import static loomwright.message.Arg.arg;

import java.util.ArrayList;
import java.util.List;
import loomwright.drawing.Svg;

/**
 * The pictures of a sheet: on the screen whole, on paper as large as it takes to be read. A picture that would become
 * too small on one page is printed in pieces on lying pages, one below the other.
 */
final class Pictures {
    /** Up to this width the smallest writing is still about 5 points high on an upright page. */
    private static final double UPRIGHT_PX = 1000;

    /** Height over width of what a page takes beside its caption, on the shorter of A4 and Letter. */
    private static final double UPRIGHT_RATIO = 1.28;

    private static final double LYING_RATIO = 0.66;

    /** What two pieces have in common, so that every label is whole on one of them. */
    private static final double OVERLAP_PX = 60;

    private Pictures() {}

    /** A stretch of a picture's height. */
    record Piece(double fromPx, double heightPx) {}

    /** On one page however small it becomes: an overview of what is there larger as well. */
    static void writeWhole(Html html, String caption, Svg picture) {
        html.open("figure", "upright").element("figcaption", "", caption);
        html.picture(picture, false).close();
    }

    static void write(Html html, String caption, Svg picture) {
        List<Piece> pieces = pieces(picture.widthPx(), picture.heightPx());
        html.open("figure", pieces.isEmpty() ? "upright" : "pieces").element("figcaption", "", caption);
        html.picture(picture, !pieces.isEmpty()).close();
        for (int i = 0; i < pieces.size(); i++) {
            html.open("figure", "piece");
            html.element(
                    "figcaption",
                    "",
                    SheetText.PIECE_OF_PICTURE
                            .with(arg("caption", caption), arg("number", i + 1), arg("count", pieces.size()))
                            .text());
            html.piece(picture, pieces.get(i).fromPx(), pieces.get(i).heightPx());
            html.close();
        }
    }

    /** No pieces for a picture that fits on an upright page. */
    static List<Piece> pieces(double widthPx, double heightPx) {
        List<Piece> pieces = new ArrayList<>();
        if (widthPx <= UPRIGHT_PX && heightPx <= UPRIGHT_RATIO * widthPx) {
            return pieces;
        }
        double pageWidthPx = Math.max(widthPx, UPRIGHT_PX);
        double mostPx = LYING_RATIO * pageWidthPx;
        int number = (int) Math.max(1, Math.ceil((heightPx - OVERLAP_PX) / (mostPx - OVERLAP_PX)));
        double pieceHeightPx = (heightPx + (number - 1) * OVERLAP_PX) / number;
        for (int i = 0; i < number; i++) {
            pieces.add(new Piece(i * (pieceHeightPx - OVERLAP_PX), pieceHeightPx));
        }
        return pieces;
    }
}
