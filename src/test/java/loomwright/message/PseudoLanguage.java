package loomwright.message;

import java.util.Map;
import java.util.TreeMap;

/**
 * English with every text in brackets that nothing else uses: what a reader sees outside of them did not come from the
 * catalogue.
 */
public final class PseudoLanguage {
    private static final Catalogue LOADED = read();

    private PseudoLanguage() {}

    public static Catalogue load() {
        return LOADED;
    }

    private static Catalogue read() {
        Map<String, String> texts = new TreeMap<>(Catalogue.read("en"));
        texts.replaceAll(
                (key, text) -> key.startsWith("language.") || key.startsWith("unit.") ? text : "⟦" + text + "⟧");
        return new Catalogue(texts);
    }
}
