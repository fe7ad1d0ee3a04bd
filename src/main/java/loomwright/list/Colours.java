package loomwright.list;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * Reads the colour of a wire: words, letters of IEC 60757, or the letters of BS AU 7 where the list says that it uses them.
 * Letters that mean different colours on drawings of different origin are read by that choice alone.
 */
final class Colours {
    /** In words; slate and purple are the names of BS AU 7. */
    private static final Map<String, String> WORDS = Map.ofEntries(
            Map.entry("black", "BK"),
            Map.entry("brown", "BN"),
            Map.entry("red", "RD"),
            Map.entry("orange", "OG"),
            Map.entry("yellow", "YE"),
            Map.entry("green", "GN"),
            Map.entry("blue", "BU"),
            Map.entry("purple", "VT"),
            Map.entry("violet", "VT"),
            Map.entry("grey", "GY"),
            Map.entry("gray", "GY"),
            Map.entry("slate", "GY"),
            Map.entry("white", "WH"),
            Map.entry("pink", "PK"),
            Map.entry("rose", "PK"),
            Map.entry("gold", "GD"),
            Map.entry("turquoise", "TQ"),
            Map.entry("silver", "SR"),
            Map.entry("tan", "BN"));

    /** BS AU 7, letter to colour; LG is its only pair. */
    private static final Map<String, String> BRITISH = Map.ofEntries(
            Map.entry("B", "BK"),
            Map.entry("N", "BN"),
            Map.entry("R", "RD"),
            Map.entry("O", "OG"),
            Map.entry("Y", "YE"),
            Map.entry("G", "GN"),
            Map.entry("LG", "GN"),
            Map.entry("U", "BU"),
            Map.entry("P", "VT"),
            Map.entry("S", "GY"),
            Map.entry("W", "WH"),
            Map.entry("K", "PK"));

    private static final Pattern IEC = Pattern.compile("(BK|BN|RD|OG|YE|GN|BU|VT|GY|WH|PK|GD|TQ|SR)+");
    private static final Pattern BETWEEN = Pattern.compile("[/,&+-]|\\bwith\\b|\\band\\b|\\bon\\b|\\btracer\\b|\\s+");
    private static final List<String> SHADES = List.of("light", "dark", "pale", "lt", "dk", "stripe", "trace", "a");
    private static final int MOST = 3;

    private Colours() {}

    /**
     * The colour in letters of IEC 60757.
     *
     * @param british whether letters are those of BS AU 7
     * @return empty if it cannot be read; an empty text for a bare wire
     */
    static Optional<String> read(String text, boolean british) {
        String stripped = text.strip();
        if (stripped.equalsIgnoreCase("bare") || stripped.equalsIgnoreCase("none") || stripped.equals("-")) {
            return Optional.of("");
        }
        List<String> codes = new ArrayList<>();
        for (String piece : BETWEEN.split(stripped.toLowerCase(Locale.ROOT), -1)) {
            if (piece.isBlank() || SHADES.contains(piece)) {
                continue;
            }
            Optional<List<String>> read = word(piece)
                    .or(() -> letters(piece.toUpperCase(Locale.ROOT), british))
                    .or(() -> misspelt(piece));
            if (read.isEmpty()) {
                return Optional.empty();
            }
            codes.addAll(read.get());
        }
        if (codes.isEmpty() || codes.size() > MOST) {
            return Optional.empty();
        }
        return Optional.of(String.join("", codes));
    }

    private static Optional<List<String>> word(String piece) {
        return Optional.ofNullable(WORDS.get(piece)).map(List::of);
    }

    private static Optional<List<String>> misspelt(String piece) {
        return Spelling.nearest(piece, WORDS.keySet()).flatMap(Colours::word);
    }

    private static Optional<List<String>> letters(String piece, boolean british) {
        List<String> codes = new ArrayList<>();
        if (!british) {
            if (piece.equals("GNYE")) {
                return Optional.of(List.of("GNYE"));
            }
            if (!IEC.matcher(piece).matches()) {
                return Optional.empty();
            }
            for (int i = 0; i < piece.length(); i += 2) {
                codes.add(piece.substring(i, i + 2));
            }
            return Optional.of(codes);
        }
        int i = 0;
        while (i < piece.length()) {
            String letter = piece.startsWith("LG", i) ? "LG" : piece.substring(i, i + 1);
            String code = BRITISH.get(letter);
            if (code == null) {
                return Optional.empty();
            }
            codes.add(code);
            i += letter.length();
        }
        return Optional.of(codes);
    }
}
