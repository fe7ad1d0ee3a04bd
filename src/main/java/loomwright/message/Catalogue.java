package loomwright.message;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Properties;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Supplier;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import loomwright.message.Argument.Count;
import loomwright.message.Argument.Instant;
import loomwright.message.Argument.Listing;
import loomwright.message.Argument.Nested;
import loomwright.message.Argument.Quantity;
import loomwright.message.Argument.SwitchPosition;
import loomwright.message.Argument.Thing;
import loomwright.message.Argument.Verbatim;
import loomwright.message.Argument.Word;
import org.jspecify.annotations.Nullable;

/**
 * Every text that a person reads, in one language. A language is a folder of properties files under {@code messages}; what
 * it lacks is said in English.
 */
public final class Catalogue {
    /** The files of a language: one for each topic. */
    static final List<String> TOPICS = List.of(
            "language",
            "general",
            "accepted",
            "backfeed",
            "caution",
            "command",
            "comparison",
            "problem",
            "ignition",
            "list",
            "mistakes",
            "network",
            "operation",
            "review",
            "sizing",
            "workshop",
            "readings",
            "diagnosis",
            "drawing",
            "post",
            "property",
            "page",
            "option");

    private static final String SHORT = ".short";
    private static final String PLURAL = "language.plural.";
    private static final String LABEL_WORDS = "language.label-words";
    private static final Pattern BETWEEN_WORDS = Pattern.compile("(?<=[a-z0-9])(?=[A-Z])");
    /** A label in quotation marks. */
    private static final Pattern QUOTED = Pattern.compile("“[^”]*”");

    /** The size of a conductor, which programs and lists write without the raised figure. */
    private static final Pattern AREA = Pattern.compile("(ISO |IEC )?[0-9.]+ mm2");

    private static final Catalogue ENGLISH = new Catalogue(read("en"));
    private static final ThreadLocal<@Nullable Catalogue> IN_USE = new ThreadLocal<>();

    private final Map<String, String> texts;
    private final Map<String, MessagePattern> patterns = new LinkedHashMap<>();
    private final PluralRules plurals;
    private final LabelWords labels;
    private final QuantityFormat numbers;

    /**
     * A catalogue of texts in the message format.
     *
     * @param texts by key; complete
     */
    Catalogue(Map<String, String> texts) {
        this.texts = Collections.unmodifiableMap(new TreeMap<>(texts));
        texts.forEach((key, text) -> {
            if (!isRule(key)) {
                patterns.put(key, MessagePattern.parse(text));
            }
        });
        plurals = new PluralRules(texts.entrySet().stream()
                .filter(e -> e.getKey().startsWith(PLURAL))
                .collect(Collectors.toMap(e -> e.getKey().substring(PLURAL.length()), Map.Entry::getValue)));
        labels = new LabelWords(texts.getOrDefault(LABEL_WORDS, ""));
        numbers = new QuantityFormat(
                text("language.decimal-mark", Map.of()).charAt(0),
                text("language.group-mark", Map.of()),
                symbol -> patterns.containsKey("unit." + symbol) ? text("unit." + symbol, Map.of()) : symbol);
    }

    public static Catalogue english() {
        return ENGLISH;
    }

    /**
     * A language.
     *
     * @param language the name of its folder, such as {@code de}
     * @throws IllegalArgumentException if there is none of that name, or a text does not follow the message format
     */
    public static Catalogue of(String language) {
        Map<String, String> texts = read("en");
        Map<String, String> own = read(language);
        if (own.isEmpty()) {
            throw new IllegalArgumentException("no messages in the language '" + language + "'");
        }
        texts.keySet().removeIf(Catalogue::isRule);
        texts.putAll(own);
        return new Catalogue(texts);
    }

    /** What a language has of its own or not at all. */
    private static boolean isRule(String key) {
        return key.startsWith(PLURAL) || key.equals(LABEL_WORDS);
    }

    /** The catalogue in which messages are put into words on this thread: English unless {@link #use} says otherwise. */
    public static Catalogue inUse() {
        Catalogue chosen = IN_USE.get();
        return chosen == null ? ENGLISH : chosen;
    }

    /** Does something with this catalogue in use on this thread. */
    public <T> T use(Supplier<T> work) {
        Catalogue before = IN_USE.get();
        IN_USE.set(this);
        try {
            return work.get();
        } finally {
            IN_USE.set(before);
        }
    }

    /** The texts of one language by key, as they stand in its files; empty if there is no such language. */
    static Map<String, String> read(String language) {
        Map<String, String> texts = new TreeMap<>();
        for (String topic : TOPICS) {
            String path = "/messages/" + language + "/" + topic + ".properties";
            try (InputStream file = Catalogue.class.getResourceAsStream(path)) {
                if (file != null) {
                    Properties properties = new Properties();
                    properties.load(new InputStreamReader(file, StandardCharsets.UTF_8));
                    for (String key : properties.stringPropertyNames()) {
                        if (texts.put(key, properties.getProperty(key)) != null) {
                            throw new IllegalStateException(key + " stands in two files of the language " + language);
                        }
                    }
                }
            } catch (IOException unreadable) {
                throw new UncheckedIOException(path, unreadable);
            }
        }
        return texts;
    }

    /**
     * Texts as they stand in the files, for who fills them in elsewhere: the page in its scripts, the command line.
     *
     * @param prefix with what their keys begin; the rest of each key is its name in the map
     */
    public Map<String, String> patterns(String prefix) {
        Map<String, String> found = new TreeMap<>();
        texts.forEach((key, text) -> {
            if (key.startsWith(prefix)) {
                found.put(key.substring(prefix.length()), text);
            }
        });
        return found;
    }

    /** The keys of all its texts. */
    Set<String> keys() {
        return Collections.unmodifiableSet(patterns.keySet());
    }

    /** A quantity as a person reads it, for a cell or an axis that holds nothing else. */
    public String quantity(double value, String unit) {
        return numbers.text(value, unit);
    }

    /** An argument as it stands in a sentence. */
    public String text(Argument argument) {
        return words(argument, false);
    }

    /** The name of a property of the plan document in words; in those of its own name where the catalogue has none. */
    public String property(String name) {
        String key = "property." + BETWEEN_WORDS.matcher(name).replaceAll("-").toLowerCase(Locale.ROOT);
        return patterns.containsKey(key)
                ? text(key, Map.of())
                : PropertyName.of(name).words();
    }

    /** A whole number as a person reads it. */
    public String count(long value) {
        return numbers.count(value);
    }

    String text(MessageCode code, Map<String, Argument> arguments) {
        return text(code.key(), arguments);
    }

    String shortText(MessageCode code, Map<String, Argument> arguments) {
        return patterns.containsKey(code.key() + SHORT) ? text(code.key() + SHORT, arguments) : text(code, arguments);
    }

    /** The arguments that the text of a message names and that are not there. */
    Set<String> lacking(MessageCode code, Map<String, Argument> arguments) {
        Set<String> lacking = new TreeSet<>();
        for (String key : List.of(code.key(), code.key() + SHORT)) {
            MessagePattern pattern = patterns.get(key);
            if (pattern != null) {
                lacking.addAll(pattern.required());
            }
        }
        lacking.removeAll(arguments.keySet());
        return lacking;
    }

    /** The pattern of a key. */
    MessagePattern pattern(String key) {
        MessagePattern pattern = patterns.get(key);
        if (pattern == null) {
            throw new IllegalStateException("the catalogue has no text for " + key);
        }
        return pattern;
    }

    String text(String key, Map<String, Argument> arguments) {
        StringBuilder out = new StringBuilder();
        write(pattern(key).nodes(), arguments, out);
        return out.toString();
    }

    private void write(List<PatternNode> nodes, Map<String, Argument> arguments, StringBuilder out) {
        for (PatternNode node : nodes) {
            if (node instanceof PatternNode.Literal literal) {
                out.append(literal.text());
            } else if (node instanceof PatternNode.Place place) {
                Argument argument = arguments.get(place.name());
                out.append(argument == null ? "{" + place.name() + "}" : words(argument, place.form()));
            } else if (node instanceof PatternNode.PluralNumber number) {
                out.append(numbers.count(number(arguments.get(number.name()))));
            } else if (node instanceof PatternNode.Plural plural) {
                long number = number(arguments.get(plural.name()));
                List<PatternNode> exact = plural.cases().get("=" + number);
                write(exact == null ? chosen(plural.cases(), plurals.form(number)) : exact, arguments, out);
            } else if (node instanceof PatternNode.Select select) {
                Argument argument = arguments.get(select.name());
                write(chosen(select.cases(), argument == null ? "" : selector(argument)), arguments, out);
            }
        }
    }

    private static List<PatternNode> chosen(Map<String, List<PatternNode>> cases, String name) {
        List<PatternNode> chosen = cases.get(name);
        return chosen == null ? cases.getOrDefault(PluralRules.OTHER, List.of()) : chosen;
    }

    private static long number(@Nullable Argument argument) {
        if (argument instanceof Count count) {
            return count.value();
        }
        return argument instanceof Listing list ? list.items().size() : 0;
    }

    private static String selector(Argument argument) {
        if (argument instanceof Word word) {
            return word.code().code();
        }
        return argument instanceof Verbatim verbatim ? verbatim.text() : "";
    }

    private String words(Argument argument, PatternNode.Form form) {
        return switch (form) {
            case PLAIN -> words(argument, false);
            case SHORT -> words(argument, true);
            case START -> withCapital(words(argument, false));
            case HEAD -> withCapital(heading(argument));
            case PATH -> path(argument);
        };
    }

    private static String withCapital(String words) {
        int end = words.isEmpty() ? 0 : words.offsetByCodePoints(0, 1);
        return words.substring(0, end).toUpperCase(Locale.ROOT) + words.substring(end);
    }

    private String heading(Argument argument) {
        if (argument instanceof Thing thing) {
            return text(thing.kind(), Map.of("label", new Verbatim(thing.label())));
        }
        return argument instanceof Listing list
                ? words(list.items().stream().map(this::heading).toList())
                : words(argument, false);
    }

    /** A number alone does not show that it is a wire. */
    private String path(Argument argument) {
        if (argument instanceof Listing list) {
            return joined(list.items().stream().map(this::path).toList(), "general.path-next");
        }
        boolean numbered = argument instanceof Thing thing
                && !thing.label().isEmpty()
                && Character.isDigit(thing.label().charAt(0));
        return words(argument, !numbered);
    }

    /** An argument in words. */
    private String words(Argument argument, boolean shortForm) {
        if (argument instanceof Quantity quantity) {
            return numbers.text(quantity.value(), quantity.unit());
        } else if (argument instanceof Count count) {
            return numbers.count(count.value());
        } else if (argument instanceof Verbatim verbatim) {
            return AREA.matcher(verbatim.text()).matches() ? verbatim.text().replace("mm2", "mm²") : verbatim.text();
        } else if (argument instanceof Word word) {
            return shortForm ? shortText(word.code(), Map.of()) : text(word.code(), Map.of());
        } else if (argument instanceof Nested nested) {
            Message message = nested.message();
            return shortForm
                    ? shortText(message.code(), message.arguments())
                    : text(message.code(), message.arguments());
        } else if (argument instanceof Thing thing) {
            return shortForm ? thing.label() : inSentence(thing);
        } else if (argument instanceof SwitchPosition at) {
            return text(
                    "general.switch-position",
                    Map.of("switch", at.operated(), "position", new Verbatim(at.position())));
        } else if (argument instanceof Instant instant) {
            return words(instant, shortForm);
        } else if (argument instanceof Listing list) {
            return words(
                    list.items().stream().map(item -> words(item, shortForm)).toList());
        }
        throw new IllegalStateException("an argument of an unknown kind: " + argument);
    }

    private String inSentence(Thing thing) {
        String label = thing.label();
        if (thing.kind() == Thing.Kind.PART && labels.isPlain(label)) {
            label = text("general.plain-part", Map.of("label", new Verbatim(labels.withoutCapital(label))));
        } else if (thing.kind() == Thing.Kind.PART && label.contains(",")) {
            label = text("general.quoted-part", Map.of("label", new Verbatim(label)));
        }
        return text(thing.kind(), Map.of("label", new Verbatim(label)));
    }

    private String words(Instant instant, boolean shortForm) {
        Word step = new Word(instant.step());
        if (instant.switches().isEmpty()) {
            return words(step, shortForm);
        }
        return text(
                "general.instant",
                Map.of(
                        "step",
                        new Verbatim(words(step, shortForm)),
                        "switches",
                        new Listing(List.copyOf(instant.switches()))));
    }

    private String words(List<String> items) {
        if (items.size() < 2) {
            return String.join("", items);
        }
        int last = items.size() - 1;
        String form = items.stream().anyMatch(Catalogue::holdsComma) ? "-long" : "";
        return joined(
                List.of(joined(items.subList(0, last), "general.list-next" + form), items.get(last)),
                "general.list-last" + form);
    }

    /** A comma within quotation marks needs no other sign around it. */
    private static boolean holdsComma(String item) {
        return QUOTED.matcher(item).replaceAll("").contains(", ");
    }

    private String joined(List<String> items, String key) {
        return items.stream()
                .reduce((before, item) -> text(key, Map.of("before", new Verbatim(before), "item", new Verbatim(item))))
                .orElse("");
    }
}
