package loomwright.message;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * Phrases that people stumble over do not come back. Each is looked for as whole words in every text of the catalogue and in
 * the files of the surfaces that are listed. A surface is added when its texts have been rewritten.
 */
class PhrasesTest {
    private static final List<String> PHRASES = List.of(
            "meant to be",
            "though it should be dead",
            "a way not meant",
            "a way that is not meant",
            "comes by",
            "on the way there",
            "on the way back",
            "usual are",
            "much the same",
            "is told",
            "are told",
            "of those in which",
            "nobody asked",
            "unasked",
            "ages and blows",
            "one day",
            "for good",
            "all but shorted",
            "put right",
            "finds no rest",
            "so long it may be",
            "halves the way",
            "goes by",
            "take the last change back",
            "who would rather",
            "chafed through",
            "more or less",
            "at once by itself",
            "go of the starter",
            "of its own volts",
            "fewer ohms",
            "more ohms",
            "accepted is",
            "How bad",
            "What follows",
            "In all",
            "hangs on",
            "hang on");

    /** Words of the code, exponents, and plurals without a rule, as patterns. */
    private static final List<Pattern> FORMS = List.of(
            Pattern.compile("\\d[eE][+-]?\\d"),
            Pattern.compile("\\b1 (times|warnings|wires|fuses|readings|plans)\\b"),
            Pattern.compile("\\b[A-Z]{2,}_[A-Z]+\\b"),
            Pattern.compile("\\b[a-z]+[A-Z][a-z]+\\b"));

    /** Files and folders beside the catalogue whose texts have been rewritten. */
    private static final List<Path> SURFACES = List.of(
            Path.of("README.md"),
            Path.of("DEVELOPERS.md"),
            Path.of("docs"),
            Path.of("postman-free-examples/README.md"),
            Path.of("src/main/java"),
            Path.of("src/main/resources/page"),
            Path.of("src/main/openapi/paths"),
            Path.of("src/main/openapi/schemas"));

    @Test
    void noTextOfTheCatalogueHasThem() {
        List<String> found = new ArrayList<>();
        Catalogue.read("en").forEach((key, text) -> {
            String words = text.replaceAll("\\{[a-zA-Z]+(, (plural|select),|, [a-z]+)?", "{");
            for (Pattern pattern : all()) {
                if (pattern.matcher(words).find()) {
                    found.add(key + ": " + pattern);
                }
            }
        });
        assertThat(found).isEmpty();
    }

    @Test
    void noSurfaceHasThem() throws IOException {
        List<String> found = new ArrayList<>();
        for (Path surface : SURFACES) {
            try (Stream<Path> files = Files.walk(surface)) {
                for (Path file : files.filter(Files::isRegularFile).toList()) {
                    String text = Files.readString(file);
                    PHRASES.stream()
                            .filter(phrase -> pattern(phrase).matcher(text).find())
                            .forEach(phrase -> found.add(file + ": " + phrase));
                }
            }
        }
        assertThat(found).isEmpty();
    }

    /** ASD-STE100: at most 25 words in a sentence that describes; an instruction is to have 20. */
    @Test
    void noSentenceOfTheCatalogueIsTooLong() {
        List<String> found = new ArrayList<>();
        Map<String, String> texts = Catalogue.read("en");
        texts.remove("language.label-words");
        for (Map.Entry<String, String> entry : texts.entrySet()) {
            for (String sentence : entry.getValue().split("(?<=[.:!?])[ }]+", -1)) {
                long words = Pattern.compile("\\p{L}[\\p{L}'-]*")
                        .matcher(sentence.replaceAll("\\{[^{}]*}", "x").replaceAll("\\{[^{}]*", ""))
                        .results()
                        .count();
                if (words > 25) {
                    found.add(entry.getKey() + " (" + words + "): " + sentence);
                }
            }
        }
        assertThat(found).isEmpty();
    }

    private static List<Pattern> all() {
        List<Pattern> all = new ArrayList<>(FORMS);
        PHRASES.forEach(phrase -> all.add(pattern(phrase)));
        return all;
    }

    private static Pattern pattern(String phrase) {
        return Pattern.compile("\\b" + Pattern.quote(phrase) + "\\b");
    }
}
