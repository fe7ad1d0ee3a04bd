package loomwright.list;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import loomwright.answer.RejectedInput;
import loomwright.catalogue.PartCatalogue;
import loomwright.catalogue.UsualValue;
import loomwright.conductor.ConductorSize;
import loomwright.list.Assumption.Code;
import loomwright.list.Draft.Use;
import loomwright.message.PropertyName;

/** The values of a part: what its list says, in the units that people use, else what is usual. */
final class PartValues {
    /** What stands for a share of the nominal voltage while the starter turns. */
    private static final double CRANKING_SHARE = 10.0 / 12;

    private static final double LEAST_STARTER_A = 60;

    private final Draft draft;
    private final Map<String, Object> object;
    private final double nominalV;
    private final boolean ballastInPlan;
    private final Notes notes;

    PartValues(Draft draft, Map<String, Object> object, double nominalV, boolean ballastInPlan, Notes notes) {
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
        switch (draft.kind()) {
            case "lamp" -> {
                object.putIfAbsent("ratedV", nominalV);
                putUsualWatts();
            }
            case "load" -> putUsualLoad();
            case "motor", "resistor" -> putUsual("resistanceOhm", draft.typeName());
            case "relay" -> putUsual("coilResistanceOhm", draft.typeName());
            case "solenoid" -> putUsual("holdInResistanceOhm", draft.typeName());
            case "coil" -> {
                putUsual("primaryResistanceOhm", ballastInPlan ? "coil-with-ballast" : "coil");
                object.putIfAbsent("use", ballastInPlan ? "with-ballast" : "direct");
            }
            case "capacitor" -> putUsual("capacitanceUf", draft.typeName());
            case "alternator" -> putUsual("limitA", draft.typeName());
            case "ballast" -> putUsualBallast();
            case "fuse" -> putFuseRating();
            case "fusible-link" -> putLinkSize();
            default -> {}
        }
    }

    private void putWritten(Quantities.Values values) {
        OptionalDouble volts = values.in("V");
        OptionalDouble watts = values.in("W");
        OptionalDouble amps = values.in("A");
        OptionalDouble ohm = values.in("ohm");
        double ratedV = volts.orElse(nominalV);
        switch (draft.kind()) {
            case "lamp" -> {
                volts.ifPresent(v -> object.put("ratedV", v));
                double second = values.secondW().orElse(0.0);
                boolean dipped = draft.typeName().equals("headlamp-dip") && second > 0;
                if (watts.isPresent()) {
                    object.put("ratedW", (dipped ? second : watts.getAsDouble()) * values.times());
                } else if (amps.isPresent()) {
                    object.put("ratedW", amps.getAsDouble() * ratedV * values.times());
                }
            }
            case "load" -> putLoad(watts, amps, ohm, ratedV, values.times());
            case "motor" -> {
                double workingV = draft.typeName().equals("starter") ? nominalV * CRANKING_SHARE : ratedV;
                putResistance("resistanceOhm", watts, amps, ohm, workingV);
            }
            case "solenoid" -> {
                if (amps.isPresent() && amps.getAsDouble() >= LEAST_STARTER_A) {
                    object.put("ratingA", amps.getAsDouble());
                } else {
                    putResistance("holdInResistanceOhm", watts, amps, ohm, ratedV);
                }
            }
            case "relay" -> {
                ohm.ifPresent(o -> object.put("coilResistanceOhm", o));
                amps.ifPresent(a -> object.put("ratingA", a));
            }
            case "resistor" -> {
                ohm.ifPresent(o -> object.put("resistanceOhm", o));
                watts.ifPresent(w -> object.put("ratingW", w));
            }
            case "coil" -> ohm.ifPresent(o -> object.put("primaryResistanceOhm", o));
            case "ballast" -> ohm.ifPresent(o -> object.put("elementsOhm", List.of(o)));
            case "capacitor" -> values.in("uF").ifPresent(uf -> object.put("capacitanceUf", uf));
            case "alternator" -> {
                volts.ifPresent(v -> object.put("regulatedV", v));
                amps.ifPresent(a -> object.put("limitA", a));
                watts.ifPresent(w -> object.put("limitA", w / ratedV));
            }
            case "battery" -> {
                if (volts.isPresent() && volts.getAsDouble() != nominalV) {
                    object.put("nominalVoltageV", volts.getAsDouble());
                }
                values.in("Ah").ifPresent(ah -> object.put("capacityAh", ah));
            }
            case "fuse", "switch", "contact-breaker" -> amps.ifPresent(a -> object.put("ratingA", a));
            case "diode", "diode pair" -> {
                volts.ifPresent(v -> object.put("forwardV", v));
                amps.ifPresent(a -> object.put("ratingA", a));
            }
            case "module" -> amps.ifPresent(a -> object.put("limitA", a));
            case "fusible-link" -> {
                values.in("AWG").ifPresent(g -> object.put("size", Fixed.text(g) + " AWG"));
                values.in("mm2").ifPresent(a -> object.put("size", Fixed.text(a) + " mm2"));
            }
            default -> {}
        }
    }

    private void putLoad(OptionalDouble watts, OptionalDouble amps, OptionalDouble ohm, double ratedV, int times) {
        boolean led = draft.typeName().equals("led-lamp");
        OptionalDouble current = amps.isPresent()
                ? amps
                : watts.isPresent() ? OptionalDouble.of(watts.getAsDouble() / ratedV) : OptionalDouble.empty();
        if (led && current.isPresent()) {
            object.put("currentA", current.getAsDouble() * times);
        } else if (ohm.isPresent()) {
            object.put("resistanceOhm", ohm.getAsDouble());
        } else if (current.isPresent()) {
            object.put("resistanceOhm", ratedV / (current.getAsDouble() * times));
        }
    }

    private void putResistance(
            String property, OptionalDouble watts, OptionalDouble amps, OptionalDouble ohm, double workingV) {
        if (ohm.isPresent()) {
            object.put(property, ohm.getAsDouble());
        } else if (amps.isPresent()) {
            object.put(property, workingV / amps.getAsDouble());
        } else if (watts.isPresent()) {
            object.put(property, workingV * workingV / watts.getAsDouble());
        }
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
                && draft.key.endsWith("s")
                && draft.type.words().stream().anyMatch(word -> draft.key.endsWith(Terminals.plain(word) + "s"));
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
            case "holdInResistanceOhm" -> "hold-in resistance";
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
