package loomwright.service.page;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import loomwright.message.Catalogue;
import loomwright.message.PseudoLanguage;
import loomwright.message.Untranslated;
import org.junit.jupiter.api.Test;

/** The help page says nothing that is not of the catalogue, and the catalogue has nothing that the page does not say. */
class PageWordsTest {
    private static final Path PAGE = Path.of("src/main/resources/page");
    private static final Pattern SPOKEN_ATTRIBUTE =
            Pattern.compile("(?:aria-label|placeholder|title|alt)=\"([^\"]+)\"");
    private static final Pattern PLACE = Pattern.compile("\\{\\{([a-z0-9.-]+)}}");
    private static final Pattern KEY =
            Pattern.compile("(?<![\\w.])t\\((?:[^()\"]*\\? )?\"([a-z0-9-]+)\"(?: : \"([a-z0-9-]+)\")?");
    private static final Pattern LITERAL = Pattern.compile("\"([^\"\\n]*)\"|`([^`\\n]*)`");
    /** A capital and more, or three words: what a person would read. */
    private static final Pattern SPOKEN =
            Pattern.compile("^\\s?[A-Z][a-z]+[ .:…?].*|.*(?<![\\w.])[A-Za-z'-]{2,}(,? [A-Za-z']{2,}){2,}(?![\\w(]).*");
    /** Keys that a script puts together. */
    private static final Set<String> MADE = Set.of("count-danger", "count-warning", "count-note");
    /** What the scripts tell programmers or the list, not the reader. */
    private static final Set<String> OTHER = Set.of(
            "plan solved state selected",
            "solved state selected",
            "checked solved plan",
            "path, polyline, line",
            "joint to ohm");

    @Test
    void theHtmlSaysNothingOfItsOwn() throws IOException {
        byte[] template = Files.readAllBytes(PAGE.resolve("index.html"));
        assertThat(Untranslated.words(() -> written(template), "Loomwright")).isEmpty();
        List<String> attributes = SPOKEN_ATTRIBUTE
                .matcher(PseudoLanguage.load().use(() -> written(template)))
                .results()
                .map(found -> found.group(1))
                .filter(text -> !text.startsWith("⟦"))
                .toList();
        assertThat(attributes).isEmpty();
    }

    private static String written(byte[] template) {
        return new String(PageWords.html(template), StandardCharsets.UTF_8);
    }

    @Test
    void theScriptsSayNothingOfTheirOwn() throws IOException {
        List<String> found = new ArrayList<>();
        for (Path script : scripts()) {
            String code =
                    Files.readString(script).replaceAll("(?s)/\\*.*?\\*/", "").replaceAll("(?m)(?<!:)//.*$", "");
            Matcher literal = LITERAL.matcher(code);
            while (literal.find()) {
                String text = literal.group(1) == null ? literal.group(2) : literal.group(1);
                if (SPOKEN.matcher(text.replaceAll("\\$\\{[^{}]*}", "")).matches() && !OTHER.contains(text)) {
                    found.add(script.getFileName() + ": " + text);
                }
            }
        }
        assertThat(found).isEmpty();
    }

    @Test
    void thePageSaysWhatTheCatalogueHasForItAndNothingElse() throws IOException {
        Set<String> said = new TreeSet<>(MADE);
        for (Path script : scripts()) {
            KEY.matcher(Files.readString(script)).results().forEach(found -> {
                said.add(found.group(1));
                if (found.group(2) != null) {
                    said.add(found.group(2));
                }
            });
        }
        Set<String> inHtml = PLACE.matcher(Files.readString(PAGE.resolve("index.html")))
                .results()
                .map(found -> found.group(1))
                .collect(Collectors.toSet());
        Set<String> known =
                new TreeSet<>(Catalogue.english().patterns(PageWords.SCRIPTS).keySet());
        assertThat(known).containsAll(said);
        inHtml.stream()
                .filter(key -> key.startsWith(PageWords.SCRIPTS))
                .forEach(key -> said.add(key.substring(PageWords.SCRIPTS.length())));
        assertThat(said).isEqualTo(known);
        assertThat(inHtml.stream()
                        .filter(key -> key.startsWith(PageWords.HTML))
                        .map(key -> key.substring(PageWords.HTML.length())))
                .containsExactlyInAnyOrderElementsOf(
                        Catalogue.english().patterns(PageWords.HTML).keySet());
    }

    private static List<Path> scripts() throws IOException {
        try (Stream<Path> files = Files.list(PAGE)) {
            return files.filter(file -> file.toString().endsWith(".js"))
                    .sorted()
                    .toList();
        }
    }
}
