package loomwright.drawing.sheet;

import loomwright.drawing.Svg;

/** How a picture is laid on paper: whole on a page of its own, upright or lying, whichever shows it larger. */
final class Pictures {
    /** What a page takes beside its caption, on the shorter and the narrower of A4 and Letter, in millimetres. */
    private static final double SHORT_MM = 180;

    private static final double LONG_MM = 240;

    private Pictures() {}

    static void write(Html html, String caption, Svg picture) {
        html.open("figure", isLying(picture.widthPx(), picture.heightPx()) ? "lying" : "upright")
                .element("figcaption", "", caption);
        html.picture(picture).close();
    }

    static boolean isLying(double widthPx, double heightPx) {
        double upright = Math.min(SHORT_MM / widthPx, LONG_MM / heightPx);
        double lying = Math.min(LONG_MM / widthPx, SHORT_MM / heightPx);
        return lying > upright;
    }
}
