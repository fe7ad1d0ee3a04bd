package loomwright.list;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import loomwright.catalogue.PartCatalogue;
import loomwright.catalogue.PartType;
import org.jspecify.annotations.Nullable;

/**
 * Reads an end of a wire, "part terminal" in the owner's words.
 *
 * <p>What the part is tells the phrase of the catalogue that stands in its name. Of several phrases the first and longest one
 * counts whose tail makes sense: left or right, a number, a terminal of that part. In "starter solenoid motor post" that is
 * the starter solenoid; in "stop lamp switch" the switch, because "switch" is no terminal of a lamp.
 */
final class Names {
    private static final Set<String> QUALIFIERS = Set.of(
            "left",
            "right",
            "lh",
            "rh",
            "l",
            "r",
            "front",
            "rear",
            "nearside",
            "offside",
            "ns",
            "os",
            "upper",
            "lower",
            "inner",
            "outer",
            "main",
            "dip",
            "dipped",
            "one",
            "two",
            "three",
            "four",
            "near",
            "off",
            "side",
            "port",
            "starboard",
            "top",
            "bottom",
            "lf",
            "rf",
            "lr",
            "rr",
            "fl",
            "fr",
            "rl");
    private static final Set<String> FREE_TAIL = Set.of("joint", "earth");
    private static final Pattern NUMBERED = Pattern.compile("[0-9]{1,3}|[a-z]|[a-z][0-9]{1,2}");
    private static final Pattern DOTTED = Pattern.compile("([^.]*[^.\\s])\\.([A-Za-z0-9+-]{1,12})");
    /** Words of one meaning in a list of wires, whole. */
    private static final Map<String, String> ABBREVIATIONS =
            Map.of("batt", "battery", "ign", "ignition", "alt", "alternator", "reg", "regulator");
    /** The rating in the name of a fuse: 20A is no terminal there, but a is the terminal in "fuse 7 a". */
    private static final Pattern RATED_FUSE = Pattern.compile(
            "(?=.*\\bfuse\\b(?! ?(?:box|block|panel|board)))(.*?)\\b(\\d{2,3}|[5-9]|\\d{1,2}[.,]5)(?:\\s?amps?|A|\\s(?-i:A)|(?<=\\d\\d|[.,]5)\\sA)\\b(.*)",
            Pattern.CASE_INSENSITIVE);

    private static final Pattern TWO_PARTS =
            Pattern.compile("(.*\\S)\\s+(\\+|&|and)\\s+(\\S.*)", Pattern.CASE_INSENSITIVE);
    /** What stands between two circuits, so that a name with "and" before it says what it is for; a plus sign is no name. */
    private static final Set<String> BETWEEN =
            Set.of("fuse", "fuse box", "relay", "switch", "solenoid", "joint", "earth", "flasher");

    private static final Pattern VIA = Pattern.compile("\\s(?:via|through)\\s", Pattern.CASE_INSENSITIVE);
    private static final List<Phrase> PHRASES = phrases();
    private static final Map<String, Set<String>> TERMINAL_WORDS = new HashMap<>();
    private static final Set<String> CATALOGUE_WORDS = catalogueWords();

    static {
        PartCatalogue.types().forEach(type -> TERMINAL_WORDS.put(type.name(), Terminals.words(type)));
    }

    private final Map<String, PartType> declared = new LinkedHashMap<>();
    private final Set<String> vocabulary = new LinkedHashSet<>(CATALOGUE_WORDS);

    private record Phrase(PartType type, List<String> tokens) {}

    /**
     * An end as read.
     *
     * @param key by which the part is known: its words in lower case
     * @param label what to call it
     * @param type what it is; absent if its name says nothing
     * @param terminal the words for its terminal; empty if none is named
     * @param values watts and the like that stand beside the name
     * @param corrected words as written, to the words that they were read as
     */
    record Name(
            String key,
            String label,
            @Nullable PartType type,
            String terminal,
            Quantities.Values values,
            Map<String, String> corrected) {}

    /** Makes a part of the table of parts known by its name. */
    void declare(String name, @Nullable PartType type) {
        List<String> tokens = tokens(name);
        if (type != null) {
            declared.put(String.join(" ", tokens), type);
        }
        tokens.stream().filter(token -> token.length() >= 4).forEach(vocabulary::add);
    }

    /** The end, and what stands between, if the text names a part "via" which the wire goes. */
    static List<String> splitVia(String text) {
        return Arrays.asList(VIA.split(text, 2));
    }

    /** The text, or several if it names several parts at one end of a wire: points and condenser. */
    List<String> split(String text) {
        Matcher two = TWO_PARTS.matcher(text.strip());
        List<String> tokens = tokens(text);
        boolean oneName = !two.matches()
                || PHRASES.stream()
                        .filter(phrase -> phrase.tokens().contains("and"))
                        .anyMatch(phrase -> Collections.indexOfSubList(tokens, phrase.tokens()) >= 0);
        if (oneName
                || findDeclared(text, tokens, Quantities.besideName(text), new HashMap<>())
                        .isPresent()) {
            return List.of(text);
        }
        PartType first = read(two.group(1)).type();
        PartType second = read(two.group(3)).type();
        boolean signed = two.group(2).equals("+");
        if (first == null || second == null || (!signed && BETWEEN.contains(second.kind()))) {
            return List.of(text);
        }
        List<String> parts = new ArrayList<>(split(two.group(1)));
        parts.add(two.group(3));
        return parts;
    }

    Name read(String text) {
        Matcher fuse = RATED_FUSE.matcher(text);
        if (!fuse.matches()) {
            return read(text, Quantities.besideName(text), "");
        }
        String rating = fuse.group(2) + " A";
        Quantities.Values value = Quantities.values(rating);
        String rest =
                (fuse.group(1) + " " + fuse.group(3)).replaceAll("\\s+", " ").strip();
        return read(text, new Quantities.Values(value.byUnit(), value.secondW(), value.times(), rest), rating);
    }

    /** A fuse that has no name but its rating is known by that; its wires may have different fuses at their ends. */
    private static Name rated(Name name, String rating) {
        boolean bare = !rating.isEmpty()
                && name.type() != null
                && PHRASES.stream()
                        .anyMatch(phrase -> String.join(" ", phrase.tokens()).equals(name.key()));
        return bare
                ? new Name(
                        name.key() + " " + rating.toLowerCase(Locale.ROOT).replace(" ", ""),
                        name.label() + " " + rating,
                        name.type(),
                        name.terminal(),
                        name.values(),
                        name.corrected())
                : name;
    }

    private Name read(String text, Quantities.Values values, String rating) {
        String whole = (values.isEmpty() ? text : values.rest()).strip();
        Matcher dot = DOTTED.matcher(whole);
        String dotted = dot.matches() ? dot.group(2) : "";
        String left = dotted.isEmpty() ? whole : dot.group(1);
        Map<String, String> corrected = new LinkedHashMap<>();
        List<String> tokens = new ArrayList<>();
        for (String token : tokens(left)) {
            tokens.add(correct(token, corrected));
        }
        if (!dotted.isEmpty()) {
            String key = String.join(" ", tokens);
            PartType type = declared.containsKey(key)
                    ? declared.get(key)
                    : bestHead(tokens).map(h -> h.phrase.type()).orElse(null);
            return new Name(key, label(left, tokens, tokens.size(), corrected), type, dotted, values, corrected);
        }
        Optional<Name> known = findDeclared(left, tokens, values, corrected);
        if (known.isPresent()) {
            return known.get();
        }
        return bestHead(tokens)
                .map(head -> rated(
                        new Name(
                                String.join(" ", tokens.subList(0, head.nameEnd)),
                                label(left, tokens, head.nameEnd, corrected),
                                refined(head.phrase.type(), tokens),
                                asWritten(
                                        left,
                                        String.join(" ", tokens.subList(head.nameEnd, tokens.size())),
                                        head.phrase.type()),
                                values,
                                corrected),
                        rating))
                .orElseGet(() -> new Name(
                        String.join(" ", tokens),
                        label(left, tokens, tokens.size(), corrected),
                        null,
                        "",
                        values,
                        corrected));
    }

    /** What a kind in the table of parts means: a kind, a type, or words for one. */
    static Optional<PartType> typeOf(String words) {
        List<String> tokens = tokens(words);
        String joined = String.join(" ", tokens);
        return PartCatalogue.types().stream()
                .filter(type -> type.name().equals(words.strip().toLowerCase(Locale.ROOT)))
                .findFirst()
                .or(() -> PHRASES.stream()
                        .filter(phrase ->
                                phrase.tokens().size() == tokens.size() && matches(phrase.tokens(), tokens, 0))
                        .map(Phrase::type)
                        .findFirst())
                .or(() -> Spelling.nearest(
                                joined,
                                PHRASES.stream()
                                        .map(p -> String.join(" ", p.tokens()))
                                        .toList())
                        .flatMap(Names::typeOf));
    }

    private Optional<Name> findDeclared(
            String text, List<String> tokens, Quantities.Values values, Map<String, String> corrected) {
        for (int end = tokens.size(); end > 0; end--) {
            String key = String.join(" ", tokens.subList(0, end));
            PartType type = declared.get(key);
            String tail = String.join(" ", tokens.subList(end, tokens.size()));
            if (type != null
                    && (tail.isEmpty()
                            || Terminals.words(type).contains(tail)
                            || (type.kind().equals("switch") && end == tokens.size() - 1)
                            || Spelling.nearest(tail, Terminals.words(type)).isPresent())) {
                return Optional.of(new Name(
                        key,
                        label(text, tokens, end, corrected),
                        type,
                        asWritten(text, tail, type),
                        values,
                        corrected));
            }
        }
        return Optional.empty();
    }

    /** The words for a terminal; a capital stays one where the catalogue has both b and B. */
    private static String asWritten(String text, String terminal, PartType type) {
        String capital = terminal.toUpperCase(Locale.ROOT);
        return Terminals.differsByCase(type, terminal) && text.strip().endsWith(capital) ? capital : terminal;
    }

    private record Head(Phrase phrase, int start, int nameEnd, boolean sound) {}

    private static Optional<Head> bestHead(List<String> tokens) {
        List<Head> heads = new ArrayList<>();
        for (Phrase phrase : PHRASES) {
            for (int start = 0; start + phrase.tokens().size() <= tokens.size(); start++) {
                if (matches(phrase.tokens(), tokens, start)) {
                    heads.add(head(phrase, tokens, start));
                }
            }
        }
        Comparator<Head> earliest = Comparator.comparingInt(Head::start);
        Comparator<Head> longest =
                Comparator.comparingInt((Head h) -> -h.phrase.tokens().size());
        return heads.stream()
                .filter(Head::sound)
                .min(earliest.thenComparing(longest))
                .or(() -> heads.stream()
                        .max(Comparator.comparingInt(
                                        (Head h) -> h.start + h.phrase.tokens().size())
                                .thenComparingInt(h -> h.phrase.tokens().size())));
    }

    private static Head head(Phrase phrase, List<String> tokens, int start) {
        int end = start + phrase.tokens().size();
        List<String> tail = tokens.subList(end, tokens.size());
        if (FREE_TAIL.contains(phrase.type().kind())) {
            boolean sound = tail.stream().noneMatch(Names::namesAPart);
            return new Head(phrase, start, tokens.size(), sound);
        }
        Set<String> words = TERMINAL_WORDS.getOrDefault(phrase.type().name(), Set.of());
        for (int i = end; i <= tokens.size(); i++) {
            String terminal = String.join(" ", tokens.subList(i, tokens.size()));
            boolean qualified = tokens.subList(end, i).stream().allMatch(Names::isQualifier);
            if (qualified && (terminal.isEmpty() || words.contains(terminal))) {
                return new Head(phrase, start, i, true);
            }
        }
        // "fuse caravan out": words of the owner's between the part and its terminal.
        for (int i = end + 1; i < tokens.size(); i++) {
            boolean terminal = words.contains(String.join(" ", tokens.subList(i, tokens.size())));
            if (terminal && tokens.subList(end, i).stream().noneMatch(Names::namesAPart)) {
                return new Head(phrase, start, i, false);
            }
        }
        return new Head(phrase, start, tokens.size(), false);
    }

    private static boolean namesAPart(String token) {
        return PHRASES.stream()
                .filter(phrase -> !FREE_TAIL.contains(phrase.type().kind()))
                .anyMatch(phrase -> phrase.tokens().size() == 1
                        && isWord(token, phrase.tokens().get(0)));
    }

    private static boolean isQualifier(String token) {
        return QUALIFIERS.contains(token) || NUMBERED.matcher(token).matches();
    }

    private static boolean matches(List<String> phrase, List<String> tokens, int start) {
        for (int i = 0; i < phrase.size(); i++) {
            boolean last = i == phrase.size() - 1;
            String token = tokens.get(start + i);
            if (!(last ? isWord(token, phrase.get(i)) : token.equals(phrase.get(i)))) {
                return false;
            }
        }
        return true;
    }

    private static boolean isWord(String token, String word) {
        return token.equals(word) || token.equals(word + "s") || token.equals(word + "es");
    }

    /** A headlamp of which a name says that it is the dipped one. */
    private static PartType refined(PartType type, List<String> tokens) {
        boolean dipped = tokens.contains("dip") || tokens.contains("dipped") || tokens.contains("low");
        return type.name().equals("headlamp") && dipped
                ? PartCatalogue.findType("headlamp-dip").orElse(type)
                : type;
    }

    private String correct(String token, Map<String, String> corrected) {
        boolean known = token.length() < 4
                || !token.chars().allMatch(Character::isLetter)
                || vocabulary.contains(token)
                || (token.endsWith("s") && vocabulary.contains(token.substring(0, token.length() - 1)));
        if (known) {
            return token;
        }
        String word = Spelling.nearest(token, vocabulary).orElse(token);
        if (!word.equals(token)) {
            corrected.put(token, word);
        }
        return word;
    }

    /** The words as written, with a capital; slips are mended. */
    private static String label(String text, List<String> tokens, int end, Map<String, String> corrected) {
        String[] written = text.strip().replaceAll("\\s+", " ").split(" ", -1);
        String joined = written.length == tokens.size() && corrected.isEmpty()
                ? String.join(" ", List.of(written).subList(0, end))
                : String.join(" ", tokens.subList(0, end));
        return capitalised(joined);
    }

    static String capitalised(String text) {
        return text.isEmpty() ? text : text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
    }

    /** Words in lower case; hyphens between letters and brackets separate, a sign after a word is a word. */
    static List<String> tokens(String text) {
        String spaced = text.toLowerCase(Locale.ROOT)
                .replace('\u2212', '-')
                .replace('\u2013', '-')
                .replaceAll("(?<=[a-z]{2})-(?=[a-z]{2})", " ")
                .replaceAll("\\b([a-z]{3,})([+-])(?=\\s|$)", "$1 $2")
                .replaceAll("[(),;:_\"']+", " ")
                .strip();
        return spaced.isEmpty()
                ? List.of()
                : Stream.of(spaced.split("\\s+", -1))
                        .map(word -> ABBREVIATIONS.getOrDefault(word, word))
                        .toList();
    }

    private static List<Phrase> phrases() {
        List<Phrase> phrases = new ArrayList<>();
        for (PartType type : PartCatalogue.types()) {
            for (String words : type.words()) {
                phrases.add(new Phrase(type, tokens(words)));
            }
        }
        return List.copyOf(phrases);
    }

    private static Set<String> catalogueWords() {
        Set<String> words = new HashSet<>(QUALIFIERS);
        PHRASES.forEach(phrase -> words.addAll(phrase.tokens()));
        PartCatalogue.types().stream()
                .flatMap(type -> Terminals.words(type).stream())
                .flatMap(word -> Stream.of(word.split(" ", -1)))
                .forEach(words::add);
        words.addAll(List.of(
                "power",
                "blue",
                "green",
                "white",
                "black",
                "brown",
                "yellow",
                "panel",
                "screen",
                "boot",
                "dash",
                "door",
                "roof",
                "trailer",
                "service",
                "split",
                "spare",
                "second",
                "first",
                "cabin",
                "steering",
                "column",
                "lighting",
                "acces",
                "point",
                "seat",
                "window",
                "tank",
                "radiator",
                "accessory"));
        return words;
    }
}
