package loomwright.message;

import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Supplier;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** What a surface says in words that did not come from the catalogue. */
public final class Untranslated {
    private static final Pattern STYLE = Pattern.compile("(?s)<style.*?</style>|<!doctype[^>]*>|<[^>]*>");
    private static final Pattern WORD = Pattern.compile("\\p{L}{3,}");

    private Untranslated() {}

    /**
     * The words of three letters or more outside of the brackets of the pseudo-language, small letters.
     *
     * @param surface writes it
     * @param given what its writer was given, such as the plan: words of it are not ours to translate
     */
    public static Set<String> words(Supplier<String> surface, String given) {
        String text = PseudoLanguage.load().use(surface);
        String plain = STYLE.matcher(text).replaceAll(" ");
        StringBuilder outside = new StringBuilder();
        int depth = 0;
        for (int i = 0; i < plain.length(); i++) {
            char c = plain.charAt(i);
            if (c == '⟦') {
                depth++;
            } else if (c == '⟧') {
                depth--;
                outside.append(' ');
            } else if (depth == 0) {
                outside.append(c);
            }
        }
        Set<String> known = collect(given);
        Set<String> found = collect(outside.toString());
        found.removeAll(known);
        return found;
    }

    private static Set<String> collect(String text) {
        Set<String> words = new TreeSet<>();
        Matcher word = WORD.matcher(text);
        while (word.find()) {
            words.add(word.group().toLowerCase(Locale.ROOT));
        }
        return words;
    }
}
