package loomwright.drawing.diagram;

import java.util.ArrayList;
import java.util.List;
import loomwright.drawing.TextWidth;

/** Breaks a text into lines. */
final class TextLines {
    private TextLines() {}

    /** Stands between a figure and its unit, which are not to be parted. */
    static final char TIE = '\u00a0';

    private static String spaced(String line) {
        return line.replace(TIE, ' ');
    }

    /** Lines no wider than asked, broken between words where that is possible; what is too much ends in an ellipsis. */
    static List<String> wrapped(String text, Text.Role role, double widthPx, int mostLines) {
        List<String> lines = new ArrayList<>();
        StringBuilder line = new StringBuilder();
        for (String word : text.strip().split("\\s+", -1)) {
            String longer = line.isEmpty() ? word : line + " " + word;
            if (role.widthPx(spaced(longer)) <= widthPx || line.isEmpty()) {
                line.setLength(0);
                line.append(longer);
            } else {
                lines.add(line.toString());
                line.setLength(0);
                line.append(word);
            }
        }
        if (!line.isEmpty()) {
            lines.add(line.toString());
        }
        if (lines.size() > mostLines) {
            String rest = String.join(" ", lines.subList(mostLines - 1, lines.size()));
            lines = new ArrayList<>(lines.subList(0, mostLines - 1));
            lines.add(rest);
        }
        double factor = role.widthPx("n") / TextWidth.of("n", role.sizePx());
        return lines.stream()
                .map(one -> TextWidth.shortened(spaced(one), role.sizePx(), widthPx / factor))
                .toList();
    }
}
