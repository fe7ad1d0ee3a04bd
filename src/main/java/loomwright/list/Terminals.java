package loomwright.list;

import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import loomwright.catalogue.PartCatalogue;
import loomwright.catalogue.PartType;
import loomwright.catalogue.SwitchTerminal;
import loomwright.catalogue.TerminalMeaning;

/** What the words for a terminal mean at a given part. */
final class Terminals {
    private static final Map<String, String> LIKE_A_SWITCH = Map.of("push-button", "switch", "earth-switch", "switch");

    /** Words for the earthed contact of a switch that usually has it at its case. */
    private static final List<String> EARTHS = List.of(SwitchPart.CASE, "earth", "ground", "case");

    private Terminals() {}

    private static boolean isEarthedByItsCase(PartType type) {
        return type.kind().equals("switch") && type.earth() != null;
    }

    /**
     * What a terminal is.
     *
     * @param name in the plan document; empty if the mark is not a terminal of the model or has two meanings
     * @param choices its meanings, if there are two
     * @param known whether the words are in the catalogue at all
     */
    record Meaning(String name, List<String> choices, boolean known) {
        Meaning {
            choices = List.copyOf(choices);
        }
    }

    static String switchRows(PartType type) {
        String rows = type.switchType() == null ? "switch" : type.switchType();
        return LIKE_A_SWITCH.getOrDefault(rows, rows);
    }

    /** All words for the terminals of a type, in lower case. */
    static Set<String> words(PartType type) {
        Set<String> words = new HashSet<>();
        if (type.kind().equals("switch")) {
            for (SwitchTerminal terminal : PartCatalogue.switchTerminals(switchRows(type))) {
                terminal.words().forEach(word -> words.add(plain(word)));
            }
            if (type.name().equals("key")) {
                PartCatalogue.switchTerminals("lighting-switch").stream()
                        .filter(terminal -> !terminal.terminal().equals("30"))
                        .forEach(terminal -> words.add(plain(terminal.terminal())));
            }
        } else {
            for (TerminalMeaning terminal : PartCatalogue.terminals(type.kind())) {
                terminal.words().forEach(word -> words.add(plain(word)));
            }
        }
        if (isEarthedByItsCase(type)) {
            words.addAll(EARTHS);
        }
        if (type.kind().equals("twin lamp")) {
            words.addAll(SeveralParts.FIRST);
            words.addAll(SeveralParts.SECOND);
            words.addAll(SeveralParts.EARTHS);
        }
        if (type.name().equals("starter")) {
            words.addAll(StarterParts.OF_SOLENOID);
        }
        if (type.kind().equals("fuse box") || type.kind().equals("diode pair")) {
            words.addAll(List.of("in", "feed", "common", "out"));
            for (int i = 1; i <= 20; i++) {
                words.add("out " + i);
                words.add("in " + i);
                words.add(String.valueOf(i));
            }
        }
        return words;
    }

    static Meaning find(PartType type, String phrase) {
        String plain = plain(phrase);
        if (type.kind().equals("switch")) {
            if (isEarthedByItsCase(type) && EARTHS.contains(plain)) {
                return new Meaning(SwitchPart.CASE, List.of(), true);
            }
            for (SwitchTerminal terminal : PartCatalogue.switchTerminals(switchRows(type))) {
                if (terminal.words().stream().anyMatch(word -> plain(word).equals(plain))) {
                    return new Meaning(terminal.terminal(), List.of(), true);
                }
            }
        } else {
            List<TerminalMeaning> terminals = PartCatalogue.terminals(type.kind());
            Optional<TerminalMeaning> found = terminals.stream()
                    .filter(terminal -> terminal.words().contains(phrase))
                    .findFirst()
                    .or(() -> terminals.stream()
                            .filter(terminal -> terminal.words().stream()
                                    .anyMatch(word -> plain(word).equals(plain)))
                            .findFirst());
            if (found.isPresent()) {
                String name = found.get().terminal();
                return new Meaning(name == null ? "" : name, found.get().choices(), true);
            }
        }
        return new Meaning("", List.of(), false);
    }

    /** Whether words for a terminal mean another one in capitals: b is the return of a load, and B its feed. */
    static boolean differsByCase(PartType type, String phrase) {
        return !find(type, phrase).equals(find(type, phrase.toUpperCase(Locale.ROOT)));
    }

    /** Whether words for a pole of a battery say how it is connected, and not which sign it has. */
    static boolean isPoleByEarth(String phrase) {
        String first = plain(phrase).split(" ", 2)[0];
        return Set.of("live", "hot", "feed", "insulated", "earth", "ground", "earthed", "grounded")
                .contains(first);
    }

    static String plain(String words) {
        return String.join(" ", Names.tokens(words)).toLowerCase(Locale.ROOT);
    }
}
