package loomwright;

import java.util.Collections;
import java.util.Enumeration;
import java.util.Map;
import java.util.ResourceBundle;
import loomwright.message.Catalogue;
import org.jspecify.annotations.Nullable;

/** What {@code --help} says: the descriptions of commands and options by their names, from the catalogue. */
final class OptionWords extends ResourceBundle {
    static final String PREFIX = "option.";

    private final Map<String, String> texts = Catalogue.inUse().patterns(PREFIX);

    @Override
    protected @Nullable Object handleGetObject(String key) {
        @Nullable String text = texts.get(key);
        // The library puts in the words that an option takes, and ends of lines; its marks for them are no places of a
        // message.
        return text == null
                ? null
                : text.replace("{candidates}", "${COMPLETION-CANDIDATES}").replace("{newline}", "%n");
    }

    @Override
    public Enumeration<String> getKeys() {
        return Collections.enumeration(texts.keySet());
    }
}
