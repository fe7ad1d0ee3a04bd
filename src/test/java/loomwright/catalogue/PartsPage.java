package loomwright.catalogue;

import java.io.IOException;
import java.math.BigDecimal;
import java.math.MathContext;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import loomwright.judgement.LoadKind;

/** Makes docs/parts.md from the catalogue: {@code main} writes it. */
final class PartsPage {
    static final Path FILE = Path.of("docs", "parts.md");

    private PartsPage() {}

    public static void main(String[] args) throws IOException {
        Files.writeString(FILE, text());
    }

    static String text() {
        List<String> lines = new ArrayList<>(List.of(
                "# Parts",
                "",
                "This page is made from the catalogue that lists and `/v1/parts` use. Don't edit it.",
                "",
                "A measured or plated value always wins over a usual one.",
                ""));
        lines.addAll(List.of(
                "## Symbols",
                "",
                "The symbol of each kind with its terminals, as the service draws it. The shapes follow IEC 60617.",
                "",
                "![Symbols of parts](symbols.svg)",
                ""));
        lines.add("## Kinds");
        for (PartKind kind : PartCatalogue.kinds()) {
            lines.addAll(List.of("", "### " + capital(kind.name()) + " (`" + kind.kind() + "`)", ""));
            lines.add("Model: " + kind.model() + ".");
            List<TerminalMeaning> terminals = PartCatalogue.terminals(kind.kind());
            if (!terminals.isEmpty()) {
                lines.addAll(List.of("", "| terminal | what it is | also called | source |", "|---|---|---|---|"));
                terminals.forEach(t -> lines.add(row(
                        t.terminal() == null ? "(none)" : "`" + t.terminal() + "`",
                        t.meaning(),
                        String.join(", ", t.words()),
                        t.source() + " (" + t.status() + ")")));
            }
        }
        lines.addAll(List.of("", "## Usual values", "", "| part | value | 6 V | 12 V | 24 V | source |"));
        lines.add("|---|---|---|---|---|---|");
        for (PartType type : PartCatalogue.types()) {
            lines.addAll(values(type));
        }
        lines.addAll(List.of(
                "",
                "## What is not known",
                "",
                "| part | what is not known, and what counts instead | source |",
                "|---|---|---|"));
        for (PartType type : PartCatalogue.types()) {
            PartCatalogue.limits(type.name())
                    .forEach(limit -> lines.add(
                            row(type.words().get(0), limit.limit(), limit.source() + " (" + limit.status() + ")")));
        }
        lines.addAll(List.of(
                "",
                "## When a load counts as working",
                "",
                "The share is of the volts that a load is made for; of an LED lamp it is of its current.",
                "",
                "| kind | works from | weak from | creeps from | source |",
                "|---|---|---|---|---|"));
        for (LoadKind kind : LoadKind.values()) {
            lines.add(row(
                    kind.name().toLowerCase(Locale.ROOT),
                    number(kind.worksFrom()),
                    number(kind.weakFrom()),
                    number(kind.creepsFrom()),
                    kind.basis().source() + " (" + word(kind.basis().status()) + ")"));
        }
        return String.join("\n", lines) + "\n";
    }

    private static List<String> values(PartType type) {
        Map<String, Map<Integer, UsualValue>> byProperty = new LinkedHashMap<>();
        for (int nominalV : new int[] {6, 12, 24}) {
            PartCatalogue.usualValues(type.name(), nominalV)
                    .forEach(value -> byProperty
                            .computeIfAbsent(value.property(), key -> new LinkedHashMap<>())
                            .put(nominalV, value));
        }
        return byProperty.entrySet().stream()
                .map(entry -> {
                    UsualValue any = entry.getValue().values().iterator().next();
                    return row(
                            type.words().get(0),
                            "`" + entry.getKey() + "`",
                            at(entry.getValue(), 6),
                            at(entry.getValue(), 12),
                            at(entry.getValue(), 24),
                            any.basis().source() + " (" + word(any.basis().status()) + ")"
                                    + (any.note().isEmpty() ? "" : "; " + any.note()));
                })
                .collect(Collectors.toList());
    }

    private static String at(Map<Integer, UsualValue> values, int nominalV) {
        UsualValue value = values.get(nominalV);
        return value == null ? "" : number(value.value());
    }

    private static String number(double value) {
        return BigDecimal.valueOf(value)
                .round(new MathContext(3))
                .stripTrailingZeros()
                .toPlainString();
    }

    private static String word(Enum<?> status) {
        return status.name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }

    private static String row(String... cells) {
        return Arrays.stream(cells).map(cell -> cell.replace("|", "/")).collect(Collectors.joining(" | ", "| ", " |"));
    }

    private static String capital(String name) {
        return name.substring(0, 1).toUpperCase(Locale.ROOT) + name.substring(1);
    }
}
