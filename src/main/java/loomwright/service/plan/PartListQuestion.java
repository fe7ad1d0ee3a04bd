package loomwright.service.plan;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import loomwright.answer.Answer;
import loomwright.answer.Basis;
import loomwright.answer.Caution;
import loomwright.catalogue.ModelLimit;
import loomwright.catalogue.PartCatalogue;
import loomwright.catalogue.PartKind;
import loomwright.catalogue.PartType;
import loomwright.catalogue.SwitchTerminal;
import loomwright.catalogue.TerminalMeaning;
import loomwright.catalogue.UsualValue;
import loomwright.catalogue.WrittenValue;
import org.jspecify.annotations.Nullable;

/** The catalogue of parts: nothing to choose. */
public record PartListQuestion() {
    private static final double[] VOLTAGES = {6, 12, 24};

    /**
     * The catalogue.
     *
     * @param kinds the kinds of parts of the plan document
     * @param types parts as owners call them
     * @param switches terminals of usual switches
     */
    public record Listing(List<Kind> kinds, List<Type> types, List<SwitchType> switches) {}

    /**
     * A kind with its terminals.
     *
     * @param figures the figures that stand on it, in the order in which they are written
     */
    public record Kind(
            String kind,
            String name,
            List<String> words,
            String model,
            List<TerminalMeaning> terminals,
            List<Figure> figures) {
        static Kind of(PartKind kind) {
            return new Kind(
                    kind.kind(),
                    kind.name(),
                    kind.words(),
                    kind.model(),
                    PartCatalogue.terminals(kind.kind()),
                    Figure.of(kind.kind()));
        }
    }

    /**
     * A figure with its unit as it stands on a part.
     *
     * @param unit as a list writes it
     * @param property of the plan document that it gives as it is
     */
    public record Figure(String unit, String property) {
        private static final Set<WrittenValue.Law> AS_WRITTEN =
                EnumSet.of(WrittenValue.Law.IS, WrittenValue.Law.EACH, WrittenValue.Law.LIST, WrittenValue.Law.SIZE);

        static List<Figure> of(String kind) {
            Map<String, Figure> byProperty = new LinkedHashMap<>();
            for (WrittenValue written : PartCatalogue.writtenValues(kind, kind)) {
                if (AS_WRITTEN.contains(written.law())) {
                    byProperty.putIfAbsent(written.property(), new Figure(written.unit(), written.property()));
                }
            }
            return List.copyOf(byProperty.values());
        }
    }

    /** A type with what is usual for it. */
    public record Type(
            String type,
            String kind,
            @Nullable String switchType,
            List<String> words,
            PartType.@Nullable Earth earthedTo,
            PartType.Place place,
            List<String> meantLive,
            Map<String, String> sets,
            List<Value> values,
            List<ModelLimit> limits) {
        static Type of(PartType type) {
            List<Value> values = new ArrayList<>();
            for (double nominalV : VOLTAGES) {
                PartCatalogue.usualValues(type.name(), nominalV)
                        .forEach(value -> values.add(Value.of(nominalV, value)));
            }
            return new Type(
                    type.name(),
                    type.kind(),
                    type.switchType(),
                    type.words(),
                    type.earth(),
                    type.place(),
                    type.works(),
                    type.sets(),
                    values,
                    PartCatalogue.limits(type.name()));
        }
    }

    /** A usual value at one voltage. */
    public record Value(
            double nominalVoltageV, String property, double value, String source, Basis.Status status, String note) {
        static Value of(double nominalV, UsualValue value) {
            return new Value(
                    nominalV,
                    value.property(),
                    value.value(),
                    value.basis().source(),
                    value.basis().status(),
                    value.note());
        }
    }

    /** A usual switch with its terminals. */
    public record SwitchType(String switchType, List<SwitchTerminal> terminals) {}

    /** The whole catalogue. */
    public Answer<Listing> answer() {
        return new Answer<>(
                new Listing(
                        PartCatalogue.kinds().stream().map(Kind::of).toList(),
                        PartCatalogue.types().stream().map(Type::of).toList(),
                        PartCatalogue.switchTypes().stream()
                                .map(name -> new SwitchType(name, PartCatalogue.switchTerminals(name)))
                                .toList()),
                List.of(),
                List.of(Basis.fromMemory("marks of terminals", "DIN 72552")),
                List.of(Caution.LOCAL_CODES));
    }
}
