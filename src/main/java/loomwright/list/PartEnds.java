package loomwright.list;

import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import loomwright.catalogue.PartCatalogue;
import loomwright.catalogue.PartKind;
import loomwright.catalogue.PartType;
import loomwright.list.ListAssumption.Code;
import loomwright.list.PartDraft.Use;

/** The terminals of a part whose kind fixes them. */
final class PartEnds {
    private static final Map<String, String> SWAPPED = Map.of(
            "+", "-", "-", "+", "plus", "minus", "minus", "plus", "positive", "negative", "negative", "positive");

    private final PartDraft draft;
    private final PartType type;
    private final boolean positiveEarth;
    private final Notes notes;
    private final PartKind kind;
    private final Set<String> used = new HashSet<>();

    PartEnds(PartDraft draft, boolean positiveEarth, Notes notes) {
        this.draft = draft;
        this.type = java.util.Objects.requireNonNull(draft.type);
        this.positiveEarth = positiveEarth;
        this.notes = notes;
        this.kind = PartCatalogue.findKind(draft.kind()).orElseThrow();
    }

    /** The terminal at which a wire ends; empty if the model has none for it. */
    String terminal(Use use) {
        String name = use.phrase.isEmpty() ? unnamed(use) : named(use);
        used.add(name);
        return name;
    }

    private String named(Use use) {
        String phrase = positiveEarth && !draft.is("battery") && !draft.is("relay") && !draft.is("diode")
                ? SWAPPED.getOrDefault(use.phrase, use.phrase)
                : use.phrase;
        if (isSecondEnd(use)) {
            return kind.back();
        }
        Terminals.Meaning meaning = Terminals.find(type, phrase);
        if (!meaning.choices().isEmpty()) {
            return twoMeanings(use, meaning);
        }
        if (draft.is("battery") && Terminals.isPoleByEarth(phrase)) {
            return meaning.name().equals("plus") ? livePole() : earthedPole();
        }
        if (!meaning.known()) {
            String nearest = Spelling.nearest(phrase, Terminals.words(type)).orElse("");
            Terminals.Meaning other = nearest.isEmpty() ? meaning : Terminals.find(type, nearest);
            if (other.known()) {
                notes.assume(
                        Code.SPELLING, use.at(), List.of(draft.id), null, Map.of("written", phrase, "value", nearest));
                return other.name();
            }
            String taken = unnamed(use);
            notes.ask(
                    Question.Code.WHICH_TERMINAL,
                    use.at(),
                    List.of(draft.id, use.wire.id),
                    phrase,
                    choices(taken),
                    Map.of("part", draft.label));
            return taken;
        }
        return pole(meaning.name(), phrase);
    }

    /** B is the feed of a load as some makers mark it; beside an A, or with its wire on earth, it is the second end. */
    private boolean isSecondEnd(Use use) {
        return draft.is("load")
                && use.phrase.equals("B")
                && (use.other().isEarth() || draft.uses.stream().anyMatch(other -> other.phrase.equalsIgnoreCase("a")));
    }

    /** With positive earth the live pole of an alternator is B-, whatever its owner calls it. */
    private String pole(String terminal, String phrase) {
        boolean marked = phrase.equalsIgnoreCase("B+") || phrase.equalsIgnoreCase("B-");
        if (!draft.is("alternator") || !positiveEarth || marked) {
            return terminal;
        }
        return switch (terminal) {
            case "B+" -> "B-";
            case "B-" -> "B+";
            default -> terminal;
        };
    }

    /** A relay's 87: with a wire at 30 as well that is the common terminal, and 87 can only be the output. */
    private String twoMeanings(Use use, Terminals.Meaning meaning) {
        boolean common = draft.uses.stream()
                .filter(other -> !other.phrase.isEmpty())
                .map(other -> Terminals.find(type, other.phrase))
                .anyMatch(other -> other.name().equals("30"));
        if (!common) {
            notes.ask(
                    Question.Code.TERMINAL_WITH_TWO_MEANINGS,
                    use.at(),
                    List.of(draft.id, use.wire.id),
                    use.phrase,
                    meaning.choices(),
                    Map.of("part", draft.label, "terminal", use.phrase));
        }
        return "87";
    }

    private List<String> choices(String taken) {
        Set<String> names = new java.util.LinkedHashSet<>();
        names.add(taken);
        PartCatalogue.terminals(draft.kind()).forEach(t -> names.add(t.words().get(0)));
        return List.copyOf(names);
    }

    private String unnamed(Use use) {
        String name = switch (draft.kind()) {
            case "battery" -> use.other().isEarth() ? earthedPole() : livePole();
            case "alternator" -> use.other().isEarth() ? earthedPole() : livePole();
            case "dynamo" -> ofDynamo(use, "control-box");
            case "control-box" -> isNeither(use, "dynamo", "lamp", "earth") ? "A" : ofDynamo(use, "dynamo");
            case "stabiliser" -> use.other().isEarth() ? "E" : use.from ? "I" : "B";
            case "flasher" -> use.other().isEarth() ? "31" : use.from ? "49a" : "49";
            case "ammeter" -> ofAmmeter(use);
            case "solenoid" -> solenoid(use);
            case "relay" -> use.from ? "87" : used.contains("86") ? "30" : "86";
            case "module" -> use.from ? "1" : "15";
            default -> twoEnded(use);
        };
        if (isMarked() && !draft.is("battery")) {
            notes.assume(
                    Code.TERMINAL,
                    use.at(),
                    List.of(draft.id, use.wire.id),
                    Notes.PRACTICE,
                    Map.of("part", draft.label, "onWire", use.wire.id, "value", name));
        }
        return name;
    }

    private boolean isMarked() {
        return kind.ends() == PartKind.Ends.MARKED || kind.ends() == PartKind.Ends.THROUGH_MARKED;
    }

    private static boolean isNeither(Use use, String... kinds) {
        return Stream.of(kinds).noneMatch(use.other()::is);
    }

    /** Of two wires between a dynamo and its control box the first is that of the armature. */
    private String ofDynamo(Use use, String other) {
        if (use.other().isEarth()) {
            return "E";
        }
        return use.other().is(other) && used.contains("D") ? "F" : "D";
    }

    private String ofAmmeter(Use use) {
        if (!isNeither(use, "battery", "solenoid")) {
            return "a";
        }
        return !isNeither(use, "alternator", "dynamo", "control-box") || used.contains("a") || use.from ? "b" : "a";
    }

    private String solenoid(Use use) {
        if (use.from) {
            return "45";
        }
        return use.other().is("battery") ? "30" : "50";
    }

    private String twoEnded(Use use) {
        String feed = kind.feed();
        String back = kind.back();
        if (use.other().isEarth()) {
            return back;
        }
        if (draft.is("capacitor")
                || (draft.is("contact-breaker") && !use.other().isEarth())) {
            return feed;
        }
        if (draft.uses.size() == 1 || leadsOn(use) || hasOwnEarth()) {
            return feed;
        }
        boolean charged = draft.uses.stream().anyMatch(other -> charges(other.other()));
        if (draft.typeName().equals("charge-lamp") && charged) {
            return charges(use.other()) ? back : feed;
        }
        boolean sameWay = draft.uses.stream().allMatch(other -> other.from == use.from);
        if (sameWay && kind.ends().isThrough()) {
            return used.contains(feed) ? back : feed;
        }
        if (sameWay && !used.isEmpty()) {
            return used.contains(feed) && use.from ? back : feed;
        }
        return use.from && !sameWay ? back : feed;
    }

    /** A load that one wire earths: the others lead to it, or on from where it is fed, as from a starter to the coil. */
    private boolean hasOwnEarth() {
        return !kind.ends().isThrough()
                && draft.uses.stream().anyMatch(other -> other.other().isEarth());
    }

    /** From a lamp that is earthed through its case a wire goes on to the next lamp, or to a plug that leads nowhere yet. */
    private boolean leadsOn(Use use) {
        PartDraft other = use.other();
        boolean nextLamp = other.is("lamp") && other.type != null && other.type.earth() != null;
        boolean deadEnd = (other.is("joint") || other.type == null) && other.uses.size() == 1;
        return draft.is("lamp") && type.earth() != null && (nextLamp || deadEnd);
    }

    private static boolean charges(PartDraft other) {
        return other.is("alternator") || other.is("dynamo") || other.is("control-box");
    }

    private String livePole() {
        return positiveEarth && isPolar() ? kind.back() : kind.feed();
    }

    private String earthedPole() {
        return positiveEarth && isPolar() ? kind.feed() : kind.back();
    }

    /** Whether its terminals are named by their sign, so that the live one depends on the earth of the vehicle. */
    private boolean isPolar() {
        return draft.is("battery") || draft.is("alternator");
    }

    boolean hasOutput() {
        return used.contains(output());
    }

    /** The terminal at which a source gives its current. */
    String output() {
        return livePole();
    }

    /** The return of a part that nothing is wired to; empty if it needs none or has one. */
    String openReturn() {
        boolean source = draft.is("battery") || draft.is("alternator");
        String back = source ? earthedPole() : kind.back();
        boolean needed = !kind.ends().isThrough() && (draft.connectedInside || !draft.uses.isEmpty());
        return needed && !used.contains(back) ? back : "";
    }
}
