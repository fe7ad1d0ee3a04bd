package loomwright.drawing.sheet;

import static loomwright.message.Arg.arg;
import static loomwright.message.Arg.messages;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import loomwright.comparison.PlanComparison.CutLine;
import loomwright.comparison.PlanComparison.Material;
import loomwright.comparison.PlanComparison.PartLine;
import loomwright.comparison.PlanComparison.TerminalLine;
import loomwright.comparison.PropertyWording;
import loomwright.message.Message;

/**
 * What a job takes, as a shop sells it: parts of a kind together with what is printed on them, wire by the half metre.
 */
final class Shopping {
    /** On top of each end of a wire, to strip, crimp and cut again. Common practice, no source. */
    static final double SLACK_M = 0.1;

    /** Wire is cut from a reel in such steps. Common practice, no source. */
    private static final double STEP_M = 0.5;

    /** What is printed on a part or its box. */
    private static final Set<String> PRINTED = Set.of(
            "ratingA",
            "ratedV",
            "ratedW",
            "currentA",
            "powerW",
            "size",
            "elementsOhm",
            "coilResistanceOhm",
            "primaryResistanceOhm",
            "capacitanceUf",
            "form",
            "widthMm",
            "gender",
            "limitA",
            "regulatedV");

    /** What nobody buys: the body, and a joint, for which the terminals stand. */
    private static final Set<String> NOT_SOLD = Set.of("earth", "joint");

    private Shopping() {}

    static List<Message> list(Material material) {
        List<Message> lines = new ArrayList<>();
        Map<String, List<PartLine>> alike = new LinkedHashMap<>();
        material.parts().stream()
                .filter(part -> !NOT_SOLD.contains(part.kind()))
                .forEach(part -> alike.computeIfAbsent(what(part), w -> new ArrayList<>())
                        .add(part));
        alike.forEach((what, parts) -> lines.add(WorkText.PARTS_TO_BUY.with(
                arg("count", parts.size()),
                arg("what", what),
                arg("labels", parts.stream().map(PartLine::label).collect(Collectors.joining(", "))))));
        material.wires().stream()
                .filter(wire -> !wire.lengthsM().isEmpty())
                .map(Shopping::wire)
                .forEach(lines::add);
        lines.addAll(terminals(material.terminals()));
        return lines;
    }

    private static String what(PartLine part) {
        String printed = PropertyWording.list(part.properties(), PRINTED);
        return PropertyWording.spaced(part.kind()) + (printed.isEmpty() ? "" : " (" + printed + ")");
    }

    private static Message wire(CutLine wire) {
        List<Double> cut =
                wire.lengthsM().stream().map(lengthM -> lengthM + 2 * SLACK_M).toList();
        return WorkText.WIRE_TO_BUY.with(
                arg("look", WorkWords.look(wire.colour(), wire.size())),
                arg("lengthM", boughtM(cut)),
                arg("pieces", cut.size()),
                arg("cuts", cut.stream().map(SheetWords::metres).collect(Collectors.joining(", "))));
    }

    /** Rounded up to what is sold. */
    static double boughtM(List<Double> cutM) {
        double sumM = cutM.stream().mapToDouble(Double::doubleValue).sum();
        return Math.ceil(sumM / STEP_M - 1e-9) * STEP_M;
    }

    /** Those of a stated form one by one, the others by the wire that they are crimped on. */
    private static List<Message> terminals(List<TerminalLine> terminals) {
        List<Message> lines = new ArrayList<>();
        Map<String, List<TerminalLine>> bySize = new LinkedHashMap<>();
        for (TerminalLine line : terminals) {
            String size = PropertyWording.size(SheetWords.orBlank(line.size()));
            Double widthMm = line.widthMm();
            String form = line.form();
            if (form == null) {
                bySize.computeIfAbsent(size, s -> new ArrayList<>()).add(line);
            } else {
                lines.add(WorkText.FORMED_TERMINALS_TO_BUY.with(
                        arg("count", line.number()),
                        arg("size", size),
                        arg(
                                "form",
                                (SheetWords.orBlank(line.gender()) + " " + PropertyWording.spaced(form)
                                                + (widthMm == null ? "" : " " + SheetWords.number(widthMm) + " mm"))
                                        .strip())));
            }
        }
        bySize.forEach((size, these) -> lines.add(WorkText.TERMINALS_TO_BUY.with(
                arg("count", these.stream().mapToInt(TerminalLine::number).sum()),
                arg("size", size),
                messages(
                        "places",
                        these.stream()
                                .map(line -> WorkText.TERMINALS_AT.with(
                                        arg("count", line.number()), arg("at", PropertyWording.spaced(line.at()))))
                                .toList()))));
        return lines;
    }
}
