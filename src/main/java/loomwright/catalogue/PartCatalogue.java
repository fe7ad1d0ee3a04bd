package loomwright.catalogue;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import loomwright.answer.Basis;
import loomwright.conductor.ReferenceTable;
import loomwright.conductor.ReferenceTables;
import org.jspecify.annotations.Nullable;

/** All that is known of usual parts, read from resources and checked when this class is first used. */
public final class PartCatalogue {
    private static final String FOLDER = "/parts/";
    private static final ReferenceTable VALUES = load("values");
    private static final ReferenceTable WIRES = load("wires");
    private static final Map<String, PartKind> KINDS = readKinds();
    private static final Map<String, List<TerminalMeaning>> TERMINALS = readTerminals();
    private static final Map<String, List<SwitchTerminal>> SWITCHES = readSwitches();
    private static final Map<String, PartType> TYPES = readTypes();
    private static final Map<String, List<WrittenValue>> WRITTEN = readWritten();
    private static final Map<String, List<ModelLimit>> LIMITS = readLimits();

    private PartCatalogue() {}

    private static ReferenceTable load(String name) {
        return ReferenceTables.load(FOLDER + name + ".csv", "parts/" + name);
    }

    /** All kinds, in the order of the catalogue. */
    public static List<PartKind> kinds() {
        return List.copyOf(KINDS.values());
    }

    /** All parts as owners call them, in the order of the catalogue. */
    public static List<PartType> types() {
        return List.copyOf(TYPES.values());
    }

    public static Optional<PartType> findType(String name) {
        return Optional.ofNullable(TYPES.get(name));
    }

    public static Optional<PartKind> findKind(String kind) {
        return Optional.ofNullable(KINDS.get(kind));
    }

    /** The terminals of a kind whose terminals are the same for all parts of it. */
    public static List<TerminalMeaning> terminals(String kind) {
        return TERMINALS.getOrDefault(kind, List.of());
    }

    /** The names of the rows of terminals that a switch may follow. */
    public static List<String> switchTypes() {
        return List.copyOf(SWITCHES.keySet());
    }

    /** The terminals of a usual switch. */
    public static List<SwitchTerminal> switchTerminals(String switchType) {
        return SWITCHES.getOrDefault(switchType, List.of());
    }

    /**
     * What a property of a type is usually.
     *
     * @param nominalV 6, 12 or 24
     * @return empty if nobody knows, so that the owner must be asked
     */
    public static Optional<UsualValue> usual(String type, String property, double nominalV) {
        return usualValues(type, nominalV).stream()
                .filter(value -> value.property().equals(property))
                .findFirst();
    }

    /** All usual values of a type at one voltage. */
    public static List<UsualValue> usualValues(String type, double nominalV) {
        String column = "at" + Math.round(nominalV) + "V";
        List<UsualValue> values = new ArrayList<>();
        for (List<String> row : VALUES.rows()) {
            if (VALUES.getCell(row, "type").equals(type)
                    && !VALUES.getCell(row, column).isBlank()) {
                String property = VALUES.getCell(row, "property");
                values.add(new UsualValue(
                        property,
                        VALUES.getNumber(row, column),
                        new Basis(property, VALUES.getCell(row, "source"), status(VALUES.getCell(row, "status"))),
                        VALUES.getCell(row, "note")));
            }
        }
        return values;
    }

    /** What is not known of a type; empty where nothing need be said. */
    public static List<ModelLimit> limits(String type) {
        return LIMITS.getOrDefault(type, List.of());
    }

    /** What figures with a unit mean on a part: those of its type first, then those of its kind. */
    public static List<WrittenValue> writtenValues(String type, String kind) {
        List<WrittenValue> values = new ArrayList<>(WRITTEN.getOrDefault(type, List.of()));
        if (!type.equals(kind)) {
            values.addAll(WRITTEN.getOrDefault(kind, List.of()));
        }
        return values;
    }

    /** How long a wire between two places usually is, in metres; on the long side. */
    public static double usualLengthM(PartType.Place one, PartType.Place other) {
        return wireRule("length", word(one), word(other)).orElseThrow();
    }

    /** The copper between two types of part where nobody states it, in mm2. */
    public static double usualAreaMm2(String oneType, String otherType) {
        return wireRule("size", oneType, otherType)
                .orElseGet(() -> wireRule("size", "any", "any").orElseThrow());
    }

    /** The resistance from a part through its case to where it is bolted, in ohm. */
    public static double caseResistanceOhm(PartType.Earth earth) {
        return wireRule("case", word(earth), word(earth)).orElseThrow();
    }

    /** The fuse that usually protects this much copper, in A. */
    public static double usualFuseA(double areaMm2) {
        double ratingA = 0;
        for (List<String> row : WIRES.rows()) {
            if (WIRES.getCell(row, "rule").equals("fuse")
                    && Double.parseDouble(words(WIRES.getCell(row, "between")).get(0)) <= areaMm2) {
                ratingA = WIRES.getNumber(row, "value");
            }
        }
        return ratingA;
    }

    private static Optional<Double> wireRule(String rule, String one, String other) {
        return WIRES.rows().stream()
                .filter(row -> WIRES.getCell(row, "rule").equals(rule))
                .filter(row -> {
                    List<String> ends = words(WIRES.getCell(row, "between"));
                    return ends.equals(List.of(one, other)) || ends.equals(List.of(other, one));
                })
                .map(row -> WIRES.getNumber(row, "value"))
                .findFirst();
    }

    private static String word(Enum<?> value) {
        return value.name().toLowerCase(Locale.ROOT);
    }

    private static List<String> words(String cell) {
        return cell.isBlank() ? List.of() : List.of(cell.split("\\|", -1));
    }

    private static @Nullable String orNull(String cell) {
        return cell.isBlank() ? null : cell;
    }

    private static Basis.Status status(String words) {
        return switch (words) {
            case "verified" -> Basis.Status.VERIFIED;
            case "computed" -> Basis.Status.COMPUTED;
            case "from memory" -> Basis.Status.FROM_MEMORY;
            case "common practice" -> Basis.Status.COMMON_PRACTICE;
            default -> throw new IllegalStateException("unknown status " + words);
        };
    }

    private static Map<String, PartKind> readKinds() {
        ReferenceTable table = load("kinds");
        Map<String, PartKind> kinds = new LinkedHashMap<>();
        for (List<String> row : table.rows()) {
            String kind = table.getCell(row, "kind");
            kinds.put(
                    kind,
                    new PartKind(
                            kind,
                            table.getCell(row, "name"),
                            words(table.getCell(row, "words")),
                            table.getCell(row, "model"),
                            table.getCell(row, "feed"),
                            table.getCell(row, "back"),
                            PartKind.Ends.valueOf(constant(table.getCell(row, "ends"))),
                            words(table.getCell(row, "needs"))));
        }
        return kinds;
    }

    private static Map<String, List<WrittenValue>> readWritten() {
        ReferenceTable table = load("quantities");
        return table.rows().stream()
                .collect(Collectors.groupingBy(
                        row -> table.getCell(row, "kind"),
                        LinkedHashMap::new,
                        Collectors.mapping(
                                row -> {
                                    String[] figure =
                                            table.getCell(row, "figure").split(">=", -1);
                                    return new WrittenValue(
                                            figure[0],
                                            table.getCell(row, "property"),
                                            WrittenValue.Law.valueOf(constant(table.getCell(row, "law"))),
                                            number(table.getCell(row, "volts")),
                                            figure.length < 2 ? null : Double.valueOf(figure[1]));
                                },
                                Collectors.toList())));
    }

    private static Map<String, List<ModelLimit>> readLimits() {
        ReferenceTable table = load("limits");
        return table.rows().stream()
                .collect(Collectors.groupingBy(
                        row -> table.getCell(row, "type"),
                        LinkedHashMap::new,
                        Collectors.mapping(
                                row -> new ModelLimit(
                                        table.getCell(row, "limit"),
                                        table.getCell(row, "source"),
                                        table.getCell(row, "status")),
                                Collectors.toList())));
    }

    private static String constant(String word) {
        return word.toUpperCase(Locale.ROOT).replace('-', '_');
    }

    private static @Nullable Double number(String cell) {
        return cell.isBlank() ? null : Double.valueOf(cell);
    }

    private static Map<String, List<TerminalMeaning>> readTerminals() {
        ReferenceTable table = load("terminals");
        return table.rows().stream()
                .collect(Collectors.groupingBy(
                        row -> table.getCell(row, "kind"),
                        LinkedHashMap::new,
                        Collectors.mapping(
                                row -> new TerminalMeaning(
                                        words(table.getCell(row, "words")),
                                        orNull(table.getCell(row, "terminal")),
                                        table.getCell(row, "meaning"),
                                        words(table.getCell(row, "question")),
                                        table.getCell(row, "source"),
                                        table.getCell(row, "status")),
                                Collectors.toList())));
    }

    private static Map<String, List<SwitchTerminal>> readSwitches() {
        ReferenceTable table = load("switches");
        return table.rows().stream()
                .collect(Collectors.groupingBy(
                        row -> table.getCell(row, "type"),
                        LinkedHashMap::new,
                        Collectors.mapping(
                                row -> new SwitchTerminal(
                                        table.getCell(row, "terminal"),
                                        words(table.getCell(row, "words")),
                                        table.getCell(row, "meaning"),
                                        words(table.getCell(row, "positions")),
                                        table.getCell(row, "source"),
                                        table.getCell(row, "status")),
                                Collectors.toList())));
    }

    /** {@code construction=glass ratedBy=blow}. */
    private static Map<String, String> properties(String cell) {
        return Stream.of(cell.split(" ", -1))
                .filter(pair -> !pair.isBlank())
                .map(pair -> pair.split("=", 2))
                .collect(Collectors.toMap(pair -> pair[0], pair -> pair[1]));
    }

    private static Map<String, PartType> readTypes() {
        ReferenceTable table = load("types");
        Map<String, PartType> types = new LinkedHashMap<>();
        for (List<String> row : table.rows()) {
            String name = table.getCell(row, "type");
            String earth = table.getCell(row, "earth");
            types.put(
                    name,
                    new PartType(
                            name,
                            table.getCell(row, "kind"),
                            orNull(table.getCell(row, "switch")),
                            words(table.getCell(row, "words")),
                            earth.equals("none") ? null : PartType.Earth.valueOf(earth.toUpperCase(Locale.ROOT)),
                            PartType.Place.valueOf(table.getCell(row, "place").toUpperCase(Locale.ROOT)),
                            Stream.of(table.getCell(row, "works").split(" ", -1))
                                    .filter(word -> !word.isBlank())
                                    .toList(),
                            properties(table.getCell(row, "sets"))));
        }
        return types;
    }
}
