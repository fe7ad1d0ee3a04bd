package loomwright.drawing;

/**
 * How wide a text is, without a font: layouts are the same on every machine, and a machine without fonts can draw too.
 *
 * <p>The widths are those of DejaVu Sans, which is as wide as any of {@link Svg#FONTS}; other faces leave some room.
 */
public final class TextWidth {
    /** Advance widths of the characters from space to tilde, in thousandths of the size. DejaVu Sans 2.37. */
    private static final int[] ASCII = {
        318, 401, 460, 838, 636, 950, 780, 275, 390, 390, 500, 838, 318, 361, 318, 337, 636, 636, 636, 636, 636, 636,
        636, 636, 636, 636, 337, 337, 838, 838, 838, 531, 1000, 684, 686, 698, 770, 632, 575, 775, 752, 295, 295, 656,
        557, 863, 748, 787, 603, 787, 695, 635, 611, 732, 684, 989, 685, 611, 685, 390, 337, 390, 838, 500, 500, 613,
        635, 550, 635, 615, 352, 635, 634, 278, 278, 579, 278, 974, 634, 612, 635, 635, 411, 521, 392, 634, 592, 818,
        592, 592, 525, 636, 337, 636, 838
    };

    /** Any other character of an alphabet; above that of signs and of writing in squares. */
    private static final int OTHER_LETTER = 840;

    private static final int SQUARE = 1100;
    private static final int FIRST_BEYOND_ALPHABETS = 0x2000;
    private static final double BOLD = 1.15;

    private TextWidth() {}

    /** The width of a text in one line, in the unit of the size. */
    public static double of(String text, double size) {
        int sum = 0;
        for (int i = 0; i < text.length(); ) {
            int c = text.codePointAt(i);
            sum += thousandths(c);
            i += Character.charCount(c);
        }
        return sum * size / 1000;
    }

    /** The same in bold face. */
    public static double ofBold(String text, double size) {
        return of(text, size) * BOLD;
    }

    /** The text, or its beginning with an ellipsis, so that it is no wider than asked. */
    public static String shortened(String text, double size, double width) {
        if (of(text, size) <= width) {
            return text;
        }
        int end = text.length();
        while (end > 0 && of(text.substring(0, end) + "…", size) > width) {
            end = text.offsetByCodePoints(end, -1);
        }
        return text.substring(0, end).stripTrailing() + "…";
    }

    private static int thousandths(int c) {
        if (c >= ' ' && c <= '~') {
            return ASCII[c - ' '];
        }
        return c < FIRST_BEYOND_ALPHABETS ? OTHER_LETTER : SQUARE;
    }
}
