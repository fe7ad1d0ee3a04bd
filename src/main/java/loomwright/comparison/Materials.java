package loomwright.comparison;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import loomwright.circuit.ConnectorHalf;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.TerminalRef;
import loomwright.circuit.Wire;
import loomwright.comparison.PlanComparison.CutLine;
import loomwright.comparison.PlanComparison.Material;
import loomwright.comparison.PlanComparison.PartLine;
import loomwright.comparison.PlanComparison.PropertyChange;
import loomwright.comparison.PlanComparison.TerminalLine;
import org.jspecify.annotations.Nullable;

/** What one of two plans takes that the other does not: parts, wire by colour and size, terminals by form. */
public final class Materials {
    private static final Set<String> CONDUCTOR = Set.of("size", "lengthM", "lengthFt", "resistanceOhm", "colour");

    private final Map<String, Part> parts;
    private final List<PartLine> partLines = new ArrayList<>();
    private final Map<List<@Nullable String>, List<Wire>> cuts = new LinkedHashMap<>();
    private final Map<TerminalLine, Integer> terminals = new LinkedHashMap<>();

    private Materials(Plan plan) {
        this.parts = plan.partsById();
    }

    /** All that is in a plan. */
    public static Material whole(Plan plan) {
        return of(plan, plan, Map.of(), Map.of());
    }

    /** What {@code plan} takes beyond the other; pairs lead from its ids to those of the other. */
    static Material of(Plan plan, Plan other, Map<String, String> partPairs, Map<String, String> wirePairs) {
        Materials materials = new Materials(plan);
        Map<String, Part> otherParts = other.partsById();
        for (Part part : plan.parts()) {
            Part partner = otherParts.get(partPairs.getOrDefault(part.id(), ""));
            if (partner == null || isExchanged(part, partner)) {
                materials.partLines.add(
                        new PartLine(part.id(), part.kind(), part.displayName(), Descriptions.data(part)));
            }
        }
        Map<String, Wire> otherWires = new LinkedHashMap<>();
        other.wires().forEach(w -> otherWires.put(w.id(), w));
        for (Wire wire : plan.wires()) {
            materials.add(wire, otherWires.get(wirePairs.getOrDefault(wire.id(), "")), partPairs);
        }
        return materials.list();
    }

    private static boolean isExchanged(Part part, Part partner) {
        return !part.kind().equals(partner.kind())
                || !PropertyChange.list((Record) part, (Record) partner, Descriptions.USE)
                        .isEmpty();
    }

    private void add(Wire wire, @Nullable Wire partner, Map<String, String> partPairs) {
        if (partner == null || isAnotherPiece(wire, partner)) {
            List<@Nullable String> key = new ArrayList<>();
            key.add(wire.colour());
            key.add(wire.conductor().size());
            cuts.computeIfAbsent(key, k -> new ArrayList<>()).add(wire);
            crimp(wire.from(), wire);
            crimp(wire.to(), wire);
            return;
        }
        Set<TerminalRef> kept = new LinkedHashSet<>(List.of(partner.from(), partner.to()));
        for (TerminalRef end : List.of(wire.from(), wire.to())) {
            String partnerPart = partPairs.getOrDefault(end.part(), "");
            if (partnerPart.isEmpty() || !kept.contains(new TerminalRef(partnerPart, end.terminal()))) {
                crimp(end, wire);
            }
        }
    }

    private static boolean isAnotherPiece(Wire wire, Wire partner) {
        return PropertyChange.list(wire, partner, Set.of()).stream().anyMatch(c -> CONDUCTOR.contains(c.property()));
    }

    private void crimp(TerminalRef end, Wire wire) {
        Part part = Objects.requireNonNull(parts.get(end.part()), "a plan's wire ends at a part of the plan");
        TerminalLine line = part instanceof ConnectorHalf half
                ? new TerminalLine(
                        PropertyValue.word(half.form()),
                        half.widthMm(),
                        PropertyValue.word(half.gender()),
                        part.kind(),
                        wire.conductor().size(),
                        0)
                : new TerminalLine(
                        null, null, null, part.kind(), wire.conductor().size(), 0);
        terminals.merge(line, 1, Integer::sum);
    }

    private Material list() {
        List<CutLine> cutLines = new ArrayList<>();
        cuts.forEach((key, wires) -> cutLines.add(cut(key.get(0), key.get(1), wires)));
        List<TerminalLine> terminalLines = new ArrayList<>();
        terminals.forEach((line, number) -> terminalLines.add(
                new TerminalLine(line.form(), line.widthMm(), line.gender(), line.at(), line.size(), number)));
        return new Material(partLines, cutLines, terminalLines);
    }

    private static CutLine cut(@Nullable String colour, @Nullable String size, List<Wire> wires) {
        List<Double> lengthsM = wires.stream()
                .map(Wire::metres)
                .filter(Objects::nonNull)
                .sorted(Comparator.reverseOrder())
                .toList();
        return new CutLine(
                colour,
                size,
                wires.size(),
                lengthsM,
                lengthsM.stream().mapToDouble(Double::doubleValue).sum(),
                wires.stream().map(Wire::id).toList());
    }
}
