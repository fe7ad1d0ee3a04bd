package loomwright.message;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import loomwright.answer.Caution;
import loomwright.answer.RecordProperties;
import loomwright.circuit.Connector;
import loomwright.circuit.Part;
import loomwright.circuit.Wire;
import loomwright.message.Argument.Count;
import loomwright.message.Argument.Instant;
import loomwright.message.Argument.Listing;
import loomwright.message.Argument.Quantity;
import loomwright.message.Argument.SwitchPosition;
import loomwright.message.Argument.Thing;
import loomwright.message.Argument.Verbatim;
import org.junit.jupiter.api.Test;

/** The texts: none missing, none left over, each can be written. */
class CatalogueTest {
    private static final String SHORT = ".short";
    private static final Path MESSAGES = Path.of("src/main/resources/messages");

    /** What the formatter itself asks for. */
    private static final Set<String> OF_THE_FORMATTER = Set.of(
            "language.decimal-mark",
            "language.group-mark",
            "unit.rpm",
            "general.switch-position",
            "general.instant",
            "general.plain-part",
            "general.list-next",
            "general.list-last",
            "general.list-next-long",
            "general.list-last-long",
            "general.quoted-part",
            "general.path-next");

    /** The words of page and command line, which have tests of their own. */
    private static final List<String> OF_TOPICS = List.of("page.", "help-page.", "option.");

    /** All constants of all enums of ours that implement {@link MessageCode}. */
    static List<MessageCode> codes() {
        List<MessageCode> codes = new ArrayList<>();
        try {
            Path classes = Path.of(MessageCode.class
                    .getProtectionDomain()
                    .getCodeSource()
                    .getLocation()
                    .toURI());
            try (Stream<Path> files = Files.walk(classes)) {
                for (Path file :
                        files.filter(f -> f.toString().endsWith(".class")).toList()) {
                    String name = classes.relativize(file).toString().replace('/', '.');
                    Class<?> type = Class.forName(
                            name.substring(0, name.length() - ".class".length()),
                            false,
                            MessageCode.class.getClassLoader());
                    if (type.isEnum() && MessageCode.class.isAssignableFrom(type)) {
                        for (Object constant : type.getEnumConstants()) {
                            codes.add((MessageCode) constant);
                        }
                    }
                }
            }
        } catch (IOException | URISyntaxException | ClassNotFoundException unreadable) {
            throw new IllegalStateException(unreadable);
        }
        return codes;
    }

    /** A pattern with one argument, x, in English. */
    static String text(String pattern, Argument x) {
        Map<String, String> texts = new HashMap<>(Catalogue.read("en"));
        texts.put("sample", pattern);
        return new Catalogue(texts).text("sample", Map.of("x", x));
    }

    @Test
    void everyCodeHasATextAndEveryTextACode() {
        Set<String> used = codes().stream().map(MessageCode::key).collect(Collectors.toCollection(TreeSet::new));
        assertThat(used).contains("caution.high-tension");
        used.addAll(OF_THE_FORMATTER);
        propertiesOfPlans().forEach(name -> used.add(keyOfProperty(name)));
        Set<String> written = Catalogue.english().keys().stream()
                .filter(key -> OF_TOPICS.stream().noneMatch(key::startsWith))
                .map(key -> key.endsWith(SHORT) ? key.substring(0, key.length() - SHORT.length()) : key)
                .collect(Collectors.toCollection(TreeSet::new));
        assertThat(written).isEqualTo(used);
    }

    private static Set<String> propertiesOfPlans() {
        Set<String> names = new TreeSet<>(Set.of("kind", "earthPolarity", "nominalVoltageV"));
        Stream.concat(records(Part.class), Stream.of(Wire.class, Connector.class))
                .forEach(record -> names.addAll(RecordProperties.types(record).keySet()));
        return names;
    }

    private static Stream<Class<?>> records(Class<?> type) {
        return type.isSealed()
                ? Stream.of(type.getPermittedSubclasses()).flatMap(CatalogueTest::records)
                : Stream.of(type);
    }

    private static String keyOfProperty(String name) {
        return "property." + name.replaceAll("([a-z0-9])([A-Z])", "$1-$2").toLowerCase(Locale.ROOT);
    }

    @Test
    void noTwoSetsOfCodesShareAName() {
        Map<String, Class<?>> sets = new HashMap<>();
        for (MessageCode code : codes()) {
            Class<?> other = sets.putIfAbsent(CatalogueKey.ofSet(code.getDeclaringClass()), code.getDeclaringClass());
            assertThat(other == null || other == code.getDeclaringClass())
                    .as(code.getDeclaringClass() + " and " + other)
                    .isTrue();
        }
    }

    @Test
    void everyMessageCanBeWritten() {
        for (String key : Catalogue.english().keys()) {
            for (Map<String, Argument> sample : samples(Catalogue.english().pattern(key))) {
                String text = Catalogue.english().text(key, sample);
                assertThat(text).as(key).isNotEmpty().doesNotContain("{").doesNotContain("  ");
            }
        }
    }

    /** Arguments of the kinds that the names of a pattern ask for, with each plural and each choice. */
    private static List<Map<String, Argument>> samples(MessagePattern pattern) {
        Set<String> plurals = new LinkedHashSet<>();
        Map<String, Set<String>> choices = new HashMap<>();
        collect(pattern.nodes(), plurals, choices);
        int most = choices.values().stream().mapToInt(Set::size).max().orElse(1);
        List<Map<String, Argument>> samples = new ArrayList<>();
        for (int choice = 0; choice < most; choice++) {
            for (int many : new int[] {0, 1, 2, 5}) {
                for (boolean list : new boolean[] {false, true}) {
                    Map<String, Argument> sample = new HashMap<>();
                    for (String name : pattern.required()) {
                        if (plurals.contains(name)) {
                            Argument item = Thing.part("fuse1", "Main fuse");
                            sample.put(
                                    name,
                                    list ? new Listing(java.util.Collections.nCopies(many, item)) : new Count(many));
                        } else if (choices.containsKey(name)) {
                            List<String> cases = List.copyOf(choices.get(name));
                            sample.put(name, new Verbatim(cases.get(choice % cases.size())));
                        } else if (UnitOfName.has(name)) {
                            sample.put(name, new Quantity(12.3456, UnitOfName.get(name)));
                        } else {
                            sample.put(name, Thing.part("lamp1", "Left headlamp"));
                        }
                    }
                    samples.add(sample);
                }
            }
        }
        return samples;
    }

    private static void collect(List<PatternNode> nodes, Set<String> plurals, Map<String, Set<String>> choices) {
        for (PatternNode node : nodes) {
            if (node instanceof PatternNode.Plural plural) {
                plurals.add(plural.name());
                plural.cases().values().forEach(part -> collect(part, plurals, choices));
            } else if (node instanceof PatternNode.Select select) {
                choices.computeIfAbsent(select.name(), name -> new LinkedHashSet<>())
                        .addAll(select.cases().keySet());
                select.cases().values().forEach(part -> collect(part, plurals, choices));
            }
        }
    }

    @Test
    void theFilesOfEachLanguageAreThoseThatAreRead() throws IOException {
        for (String language : languages()) {
            try (Stream<Path> files = Files.list(MESSAGES.resolve(language))) {
                List<String> topics = files.map(
                                file -> file.getFileName().toString().replace(".properties", ""))
                        .toList();
                assertThat(Catalogue.TOPICS).containsAll(topics);
                if (language.equals("en")) {
                    assertThat(topics).containsExactlyInAnyOrderElementsOf(Catalogue.TOPICS);
                }
            }
        }
    }

    /** A properties file keeps the last of two lines with one key and says nothing. */
    @Test
    void noFileHasAKeyTwice() throws IOException {
        for (String language : languages()) {
            for (String topic : Catalogue.TOPICS) {
                Path file = MESSAGES.resolve(language).resolve(topic + ".properties");
                if (Files.exists(file)) {
                    List<String> keys = Files.readAllLines(file).stream()
                            .filter(line -> line.matches("[a-z][a-z0-9.-]* =.*"))
                            .map(line -> line.substring(0, line.indexOf(" =")))
                            .toList();
                    assertThat(keys).as(file.toString()).doesNotHaveDuplicates();
                }
            }
        }
    }

    @Test
    void noLanguageHasATextThatEnglishLacksOrNamesOtherArguments() throws IOException {
        for (String language : languages()) {
            Catalogue other = Catalogue.of(language);
            assertThat(Catalogue.english().keys()).containsAll(other.keys());
            for (String key : other.keys()) {
                assertThat(Catalogue.english().pattern(key).required())
                        .as(language + " " + key)
                        .containsAll(other.pattern(key).required());
            }
        }
    }

    private static List<String> languages() throws IOException {
        try (Stream<Path> folders = Files.list(MESSAGES)) {
            return folders.map(folder -> folder.getFileName().toString()).toList();
        }
    }

    @Test
    void anotherLanguageIsUsedWhereItIsPutInUseAndSaysInEnglishWhatItLacks() {
        Catalogue pseudo = PseudoLanguage.load();
        assertThat(Caution.HOT_BALLAST.text()).startsWith("A ballast");
        assertThat(pseudo.use(Caution.HOT_BALLAST::text)).isEqualTo("⟦" + Caution.HOT_BALLAST.text() + "⟧");
        assertThat(Caution.HOT_BALLAST.text()).startsWith("A ballast");
        Instant when = new Instant(Thing.Kind.PART, List.of(new SwitchPosition(Thing.part("S1", "Lights"), "dip")));
        assertThat(pseudo.text("general.list-last", Map.of("before", when, "item", new Quantity(1.5, "V"))))
                .contains("the lights⟧⟧ at “dip”⟧")
                .contains("1.5 V");
    }

    @Test
    void aLanguageThatIsNotThereIsRefused() {
        assertThatThrownBy(() -> Catalogue.of("xx")).hasMessageContaining("'xx'");
    }
}
