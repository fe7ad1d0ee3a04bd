package loomwright.service.page;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import loomwright.message.Catalogue;

/** The words of the help page, which stand in the catalogue: in its HTML by their keys, and as a script for the others. */
final class PageWords {
    /** Those of the scripts, which fill them in themselves. */
    static final String SCRIPTS = "page.";
    /** Those of the HTML alone. */
    static final String HTML = "help-page.";

    private static final Pattern PLACE = Pattern.compile("\\{\\{([a-z0-9.-]+)}}");
    private static final JsonMapper JSON = new JsonMapper();

    private PageWords() {}

    /** HTML in which each <code>{{key}}</code> has become its text. */
    static byte[] html(byte[] template) {
        Catalogue catalogue = Catalogue.inUse();
        Map<String, String> scripts = catalogue.patterns(SCRIPTS);
        Map<String, String> html = catalogue.patterns(HTML);
        String page = PLACE.matcher(new String(template, StandardCharsets.UTF_8))
                .replaceAll(place -> {
                    String key = place.group(1);
                    String text = key.startsWith(HTML)
                            ? html.get(key.substring(HTML.length()))
                            : scripts.get(key.substring(SCRIPTS.length()));
                    if (text == null) {
                        throw new IllegalStateException("the catalogue has no text for " + key);
                    }
                    return Matcher.quoteReplacement(escaped(text));
                });
        return page.getBytes(StandardCharsets.UTF_8);
    }

    private static String escaped(String text) {
        return text.replace("&", "&amp;")
                .replace("<", "&lt;")
                .replace(">", "&gt;")
                .replace("\"", "&quot;");
    }

    /** A script that holds the words of the others. */
    static byte[] script() {
        try {
            String texts = JSON.writeValueAsString(Catalogue.inUse().patterns(SCRIPTS));
            return ("export const TEXTS = " + texts + ";\n").getBytes(StandardCharsets.UTF_8);
        } catch (JsonProcessingException impossible) {
            throw new IllegalStateException(impossible);
        }
    }
}
