package loomwright.message;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * The text of a message with places for its arguments, in the part of the ICU message format that translators know best:
 * <pre>
 * Fit {count, plural, one {# fuse} other {# fuses}} near {part}.
 * {part, start} {state, select, on {is live} other {is off}}. Current path: {steps, path}.
 * </pre>
 * A plural may have cases for exact numbers. Braces that are meant as such stand between apostrophes; an apostrophe
 * elsewhere is an apostrophe. Four words of the format are ours: short, for the short form of what stands there; start, for a
 * capital because it begins the sentence; head, for a thing that stands before a colon; path, for a list whose items lead to
 * each other.
 *
 * <p>Source of the format: ICU User Guide, Formatting Messages; the tests compare with ICU4J.
 */
final class MessagePattern {
    private static final List<String> FORMS = List.of("short", "start", "head", "path");

    private final List<PatternNode> nodes;
    private final Set<String> required = new LinkedHashSet<>();

    private MessagePattern(List<PatternNode> nodes) {
        this.nodes = nodes;
        require(nodes);
    }

    /**
     * Reads a pattern.
     *
     * @throws IllegalArgumentException with the place in the text if it does not follow the format
     */
    static MessagePattern parse(String text) {
        Parser parser = new Parser(text);
        List<PatternNode> nodes = parser.nodes(null, false);
        return new MessagePattern(nodes);
    }

    List<PatternNode> nodes() {
        return nodes;
    }

    /** The names of the arguments without which the text cannot be written. */
    Set<String> required() {
        return required;
    }

    private void require(List<PatternNode> list) {
        for (PatternNode node : list) {
            if (node instanceof PatternNode.Place place) {
                required.add(place.name());
            } else if (node instanceof PatternNode.Plural plural) {
                required.add(plural.name());
                plural.cases().values().forEach(this::require);
            } else if (node instanceof PatternNode.Select select) {
                required.add(select.name());
                select.cases().values().forEach(this::require);
            }
        }
    }

    /** Reads from left to right; a piece within a case ends at its closing brace. */
    private static final class Parser {
        private final String text;
        private int at;

        Parser(String text) {
            this.text = text;
        }

        List<PatternNode> nodes(@Nullable String counted, boolean nested) {
            List<PatternNode> nodes = new ArrayList<>();
            StringBuilder words = new StringBuilder();
            while (at < text.length()) {
                char c = text.charAt(at);
                if (c == '\'') {
                    quote(words, counted != null);
                } else if (c == '{') {
                    flush(words, nodes);
                    nodes.add(argument());
                } else if (c == '}') {
                    if (!nested) {
                        throw wrong("a closing brace without an opening one");
                    }
                    flush(words, nodes);
                    return nodes;
                } else if (c == '#' && counted != null) {
                    flush(words, nodes);
                    nodes.add(new PatternNode.PluralNumber(counted));
                    at++;
                } else {
                    words.append(c);
                    at++;
                }
            }
            if (nested) {
                throw wrong("a brace that is not closed");
            }
            flush(words, nodes);
            return nodes;
        }

        private static void flush(StringBuilder words, List<PatternNode> nodes) {
            if (words.length() > 0) {
                nodes.add(new PatternNode.Literal(words.toString()));
                words.setLength(0);
            }
        }

        private void quote(StringBuilder words, boolean counted) {
            at++;
            if (at < text.length() && text.charAt(at) == '\'') {
                words.append('\'');
                at++;
                return;
            }
            boolean quotes = at < text.length()
                    && (text.charAt(at) == '{' || text.charAt(at) == '}' || (counted && text.charAt(at) == '#'));
            if (!quotes) {
                words.append('\'');
                return;
            }
            int end = text.indexOf('\'', at);
            if (end < 0) {
                throw wrong("an apostrophe that is not closed");
            }
            words.append(text, at, end);
            at = end + 1;
        }

        private PatternNode argument() {
            at++;
            String name = word();
            if (next('}')) {
                return new PatternNode.Place(name, PatternNode.Form.PLAIN);
            }
            expect(',');
            String kind = word();
            if (FORMS.contains(kind)) {
                expect('}');
                return new PatternNode.Place(name, PatternNode.Form.valueOf(kind.toUpperCase(Locale.ROOT)));
            }
            expect(',');
            boolean plural = kind.equals("plural");
            if (!plural && !kind.equals("select")) {
                throw wrong("'" + kind + "', which is none of plural, select, " + String.join(", ", FORMS));
            }
            Map<String, List<PatternNode>> cases = cases(plural ? name : null);
            if (!cases.containsKey("other")) {
                throw wrong("no case 'other' of '" + name + "'");
            }
            return plural ? new PatternNode.Plural(name, cases) : new PatternNode.Select(name, cases);
        }

        private Map<String, List<PatternNode>> cases(@Nullable String counted) {
            Map<String, List<PatternNode>> cases = new LinkedHashMap<>();
            while (!next('}')) {
                String key = word();
                expect('{');
                cases.put(key, nodes(counted, true));
                expect('}');
            }
            return cases;
        }

        private String word() {
            skipSpace();
            int start = at;
            while (at < text.length()
                    && (Character.isLetterOrDigit(text.charAt(at)) || "-_=".indexOf(text.charAt(at)) >= 0)) {
                at++;
            }
            if (start == at) {
                throw wrong("no name");
            }
            return text.substring(start, at);
        }

        private boolean next(char c) {
            skipSpace();
            if (at < text.length() && text.charAt(at) == c) {
                at++;
                return true;
            }
            return false;
        }

        private void expect(char c) {
            if (!next(c)) {
                throw wrong("no '" + c + "'");
            }
        }

        private void skipSpace() {
            while (at < text.length() && Character.isWhitespace(text.charAt(at))) {
                at++;
            }
        }

        private IllegalArgumentException wrong(String what) {
            return new IllegalArgumentException("Message '" + text + "', character " + at + ": " + what);
        }
    }
}
