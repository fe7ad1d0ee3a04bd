package loomwright.list;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import loomwright.answer.RejectedInput;
import loomwright.catalogue.PartCatalogue;
import loomwright.catalogue.PartKind;
import loomwright.catalogue.UsualValue;
import loomwright.catalogue.WrittenValue;
import loomwright.conductor.ConductorSize;
import loomwright.list.ListAssumption.Code;
import loomwright.list.PartDraft.Use;
import loomwright.message.PropertyName;

/** The values of a part: what its list says, in the units that people use, else what is usual. */
final class PartValues {
    /** What some types have beside what their kind needs. */
    private static final List<String> BESIDE = List.of("operateV", "switchOnOhm");

    private final PartDraft draft;
    private final Map<String, Object> object;
    private final double nominalV;
    private final boolean ballastInPlan;
    private final Notes notes;

    PartValues(PartDraft draft, Map<String, Object> object, double nominalV, boolean ballastInPlan, Notes notes) {
        this.draft = draft;
        this.object = object;
        this.nominalV = nominalV;
        this.ballastInPlan = ballastInPlan;
        this.notes = notes;
    }

    void put() {
        for (Quantities.Values values : draft.values) {
            putWritten(values);
        }
        PartKind kind = PartCatalogue.findKind(draft.kind()).orElseThrow();
        for (String property : kind.needs()) {
            putNeeded(property);
        }
        for (String beside : BESIDE) {
            if (!object.containsKey(beside)) {
                PartCatalogue.usual(draft.typeName(), beside, nominalV)
                        .map(usual -> beside.equals("switchOnOhm") ? ofOwn(usual) : usual)
                        .ifPresent(usual -> assume(beside, usual));
            }
        }
        switch (draft.kind()) {
            case "lamp" -> object.putIfAbsent("ratedV", nominalV);
            case "load" -> putUsualLoad();
            case "coil" -> object.putIfAbsent("use", ballastInPlan ? "with-ballast" : "direct");
            case "fuse" -> putFuseRating();
            case "fusible-link" -> putLinkSize();
            default -> {}
        }
    }

    /** The ohms when switched on are a share of those at work, of the part's own where they are stated. */
    private UsualValue ofOwn(UsualValue switchOn) {
        Optional<UsualValue> hot = PartCatalogue.usual(draft.typeName(), "resistanceOhm", nominalV);
        return hot.isPresent() && object.get("resistanceOhm") instanceof Double ownOhm
                ? switchOn.withValue(
                        new BigDecimal(switchOn.value() * ownOhm / hot.get().value())
                                .round(new MathContext(3))
                                .doubleValue())
                : switchOn;
    }

    private void putNeeded(String property) {
        switch (property) {
            case "ratedW" -> putUsualWatts();
            case "elementsOhm" -> putUsualBallast();
            case "primaryResistanceOhm" -> putUsual(property, ballastInPlan ? "coil-with-ballast" : "coil");
            default -> putUsual(property, draft.typeName());
        }
    }

    /** By the table of the catalogue: each figure counts once, and of two for one property the first row counts. */
    private void putWritten(Quantities.Values values) {
        double ratedV = values.in("V").orElse(nominalV);
        Set<String> put = new HashSet<>();
        Set<String> read = new HashSet<>();
        for (WrittenValue row : PartCatalogue.writtenValues(draft.typeName(), draft.kind())) {
            OptionalDouble written = values.in(row.unit());
            Double from = row.from();
            boolean applies = written.isPresent() && (from == null || written.getAsDouble() >= from);
            if (applies && read.add(row.unit()) && put.add(row.property())) {
                row.value(written.getAsDouble(), values.times(), ratedV, nominalV)
                        .ifPresent(value -> object.put(row.property(), valueOf(row, value)));
            }
        }
    }

    private static Object valueOf(WrittenValue row, double value) {
        return switch (row.law()) {
            case LIST -> List.of(value);
            case SIZE -> Fixed.text(value) + " " + row.unit();
            default -> value;
        };
    }

    private void putUsualWatts() {
        if (object.containsKey("ratedW")) {
            return;
        }
        Optional<UsualValue> usual = PartCatalogue.usual(draft.typeName(), "ratedW", nominalV);
        if (usual.isEmpty()) {
            ask("ratedW", List.of("5 W", "2.2 W", "10 W", "21 W", "45 W"), 5);
            return;
        }
        double watts = usual.get().value();
        if (isPlural()) {
            object.put("ratedW", 2 * watts);
            notes.assume(
                    Code.SEVERAL_BULBS,
                    draft.at,
                    List.of(draft.id),
                    usual.get().basis(),
                    Map.of("part", draft.label, "value", "2 x " + Fixed.text(watts) + " W"));
        } else {
            assume("ratedW", usual.get());
        }
    }

    /** "Side lamps" on one wire are two. */
    private boolean isPlural() {
        return draft.type != null
                && draft.type.words().stream()
                        .anyMatch(word -> (" " + draft.key + " ").contains(" " + Terminals.plain(word) + "s "));
    }

    private void putUsualLoad() {
        if (object.containsKey("resistanceOhm") || object.containsKey("currentA") || object.containsKey("powerW")) {
            return;
        }
        Optional<UsualValue> usual =
                PartCatalogue.usualValues(draft.typeName(), nominalV).stream().findFirst();
        if (usual.isPresent()) {
            assume(usual.get().property(), usual.get());
        } else {
            ask("resistanceOhm", List.of(Fixed.text(nominalV) + " ohm (1 A)", "2 A", "5 A"), nominalV);
        }
    }

    private void putUsual(String property, String type) {
        if (object.containsKey(property)) {
            return;
        }
        Optional<UsualValue> usual = PartCatalogue.usual(type, property, nominalV)
                .or(() -> PartCatalogue.usual(draft.kind(), property, nominalV));
        if (usual.isPresent()) {
            assume(property, usual.get());
        } else if (property.equals("resistanceOhm")) {
            double ohm = draft.is("motor") ? nominalV / 4 : 100;
            ask(property, List.of(Fixed.text(ohm) + " ohm"), ohm);
        }
    }

    private void putUsualBallast() {
        if (!object.containsKey("elementsOhm")) {
            PartCatalogue.usual("ballast", "elementsOhm", nominalV).ifPresent(usual -> {
                assume("elementsOhm", usual);
                object.put("elementsOhm", List.of(usual.value()));
            });
        }
    }

    private void putFuseRating() {
        if (object.containsKey("ratingA")) {
            return;
        }
        double ratingA = PartCatalogue.usualFuseA(thinnestMm2());
        object.put("ratingA", ratingA);
        List<String> choices = new ArrayList<>(List.of(Fixed.text(ratingA) + " A"));
        for (String other : List.of("8 A", "15 A", "25 A", "35 A")) {
            if (!choices.contains(other)) {
                choices.add(other);
            }
        }
        notes.ask(Question.Code.FUSE_RATING, draft.at, List.of(draft.id), "", choices, Map.of("part", draft.label));
    }

    private double thinnestMm2() {
        double least = Double.POSITIVE_INFINITY;
        for (Use use : draft.uses) {
            String size = use.wire.row.text("size");
            String unit = use.wire.row.find("size").map(TableRow.Cell::unit).orElse("");
            try {
                String text = unit.equals("mm2") ? size.replace(',', '.') + " mm2" : size;
                least = Math.min(least, ConductorSize.parse(text).areaMm2());
            } catch (RejectedInput unreadable) {
                // Asked about where the wire itself is read; here the other wires of the fuse count.
                least = Math.min(least, Double.POSITIVE_INFINITY);
            }
        }
        return Double.isInfinite(least) ? 1.5 : least;
    }

    private void putLinkSize() {
        if (!object.containsKey("size")) {
            object.put("size", "16 AWG");
            notes.ask(
                    Question.Code.WHAT_SIZE,
                    draft.at,
                    List.of(draft.id),
                    "",
                    List.of("16 AWG", "14 AWG", "18 AWG"),
                    Map.of("part", draft.label));
        }
    }

    private void assume(String property, UsualValue usual) {
        object.put(property, usual.value());
        notes.assume(
                Code.USUAL_VALUE,
                draft.at,
                List.of(draft.id),
                usual.basis(),
                Map.of("part", draft.label, "property", name(property), "value", text(property, usual.value())));
    }

    private static String name(String property) {
        return switch (property) {
            case "ratedW" -> "rated power";
            case "limitA" -> "highest current";
            case "operateV" -> "least working voltage";
            case "switchOnOhm" -> "resistance when switched on";
            case "holdInResistanceOhm" -> "hold-in resistance";
            case "elementsOhm" -> "resistance";
            default -> PropertyName.of(property).words();
        };
    }

    private static String text(String property, double value) {
        String unit = PropertyName.of(property).unit();
        return unit == null ? Fixed.text(value) : Fixed.text(value) + " " + unit;
    }

    private void ask(String property, List<String> choices, double taken) {
        object.put(property, taken);
        notes.ask(
                Question.Code.WHAT_VALUE,
                draft.at,
                List.of(draft.id),
                "",
                choices,
                Map.of("part", draft.label, "property", name(property)));
    }
}
