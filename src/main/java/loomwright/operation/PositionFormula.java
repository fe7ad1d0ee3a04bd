package loomwright.operation;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.SortedMap;
import java.util.TreeMap;
import loomwright.circuit.Switch;
import org.jspecify.annotations.Nullable;

/**
 * In which positions of the free switches something holds: a disjunction of terms, each of which asks one or more positions
 * of some switches (sum of products in variables of more than two values). A term that another covers is left out, and two
 * that differ in one switch alone are drawn together.
 *
 * <p>Beyond {@link #MAX_TERMS} terms the formula is widened to the one term that covers them all.
 */
final class PositionFormula {
    static final PositionFormula NEVER = new PositionFormula(List.of());
    static final PositionFormula ALWAYS = new PositionFormula(List.of(new TreeMap<>()));
    private static final int MAX_TERMS = 64;

    private final List<SortedMap<String, Choice>> terms;

    /** Positions of one switch, by their places in its list. */
    private record Choice(Switch of, int mask) {
        static int full(Switch of) {
            return (1 << of.positions().size()) - 1;
        }

        boolean isAny() {
            return mask == full(of);
        }

        List<String> names() {
            List<String> names = new ArrayList<>();
            for (int p = 0; p < of.positions().size(); p++) {
                if ((mask & 1 << p) != 0) {
                    names.add(of.positions().get(p).name());
                }
            }
            return names;
        }
    }

    private PositionFormula(List<SortedMap<String, Choice>> terms) {
        this.terms = terms;
    }

    /** Holds while a free switch is in one of some positions, named by their places. */
    private static PositionFormula of(Switch chosen, int mask) {
        if (mask == 0) {
            return NEVER;
        }
        Choice choice = new Choice(chosen, mask);
        return choice.isAny() ? ALWAYS : new PositionFormula(List.of(new TreeMap<>(Map.of(chosen.id(), choice))));
    }

    /** Holds while a free switch is in the position of that place in its list. */
    static PositionFormula at(Switch chosen, int position) {
        return of(chosen, 1 << position);
    }

    /** Holds while a free switch is in one of the positions named. */
    static PositionFormula in(Switch chosen, List<String> names) {
        int mask = 0;
        for (int p = 0; p < chosen.positions().size(); p++) {
            if (names.contains(chosen.positions().get(p).name())) {
                mask |= 1 << p;
            }
        }
        return of(chosen, mask);
    }

    boolean isNever() {
        return terms.isEmpty();
    }

    private boolean isAlways() {
        return terms.size() == 1 && terms.get(0).isEmpty();
    }

    PositionFormula or(PositionFormula other) {
        if (isNever() || other.isAlways()) {
            return other;
        } else if (other.isNever() || isAlways()) {
            return this;
        }
        List<SortedMap<String, Choice>> all = new ArrayList<>(terms);
        all.addAll(other.terms);
        return normalised(all);
    }

    PositionFormula and(PositionFormula other) {
        if (isNever() || other.isAlways()) {
            return this;
        } else if (other.isNever() || isAlways()) {
            return other;
        }
        List<SortedMap<String, Choice>> all = new ArrayList<>();
        for (SortedMap<String, Choice> one : terms) {
            for (SortedMap<String, Choice> two : other.terms) {
                SortedMap<String, Choice> both = both(one, two);
                if (both != null) {
                    all.add(both);
                }
            }
        }
        return normalised(all);
    }

    PositionFormula not() {
        PositionFormula result = ALWAYS;
        for (SortedMap<String, Choice> term : terms) {
            PositionFormula outside = NEVER;
            for (Choice choice : term.values()) {
                outside = outside.or(of(choice.of(), Choice.full(choice.of()) & ~choice.mask()));
            }
            result = result.and(outside);
        }
        return result;
    }

    private static @Nullable SortedMap<String, Choice> both(
            SortedMap<String, Choice> one, SortedMap<String, Choice> two) {
        SortedMap<String, Choice> both = new TreeMap<>(one);
        for (Map.Entry<String, Choice> entry : two.entrySet()) {
            Choice known = both.get(entry.getKey());
            int mask = known == null
                    ? entry.getValue().mask()
                    : known.mask() & entry.getValue().mask();
            if (mask == 0) {
                return null;
            }
            both.put(entry.getKey(), new Choice(entry.getValue().of(), mask));
        }
        return both;
    }

    private static PositionFormula normalised(List<SortedMap<String, Choice>> terms) {
        List<SortedMap<String, Choice>> rest = new ArrayList<>();
        for (SortedMap<String, Choice> term : terms) {
            add(rest, term);
        }
        if (rest.size() > MAX_TERMS) {
            rest = List.of(cover(rest));
        }
        rest = new ArrayList<>(rest);
        rest.sort(Comparator.comparing(PositionFormula::sortKey));
        return new PositionFormula(List.copyOf(rest));
    }

    /** Adds a term, or the one that it makes with another. */
    private static void add(List<SortedMap<String, Choice>> terms, SortedMap<String, Choice> term) {
        for (SortedMap<String, Choice> known : terms) {
            if (covers(known, term)) {
                return;
            }
        }
        terms.removeIf(known -> covers(term, known));
        for (int i = 0; i < terms.size(); i++) {
            SortedMap<String, Choice> merged = merged(terms.get(i), term);
            if (merged != null) {
                terms.remove(i);
                add(terms, merged);
                return;
            }
        }
        terms.add(term);
    }

    private static boolean covers(SortedMap<String, Choice> wide, SortedMap<String, Choice> narrow) {
        for (Map.Entry<String, Choice> entry : wide.entrySet()) {
            Choice other = narrow.get(entry.getKey());
            if (other == null || (other.mask() & ~entry.getValue().mask()) != 0) {
                return false;
            }
        }
        return true;
    }

    /** One term for two that differ in one switch alone; null for others. */
    private static @Nullable SortedMap<String, Choice> merged(
            SortedMap<String, Choice> one, SortedMap<String, Choice> two) {
        if (!one.keySet().equals(two.keySet())) {
            return null;
        }
        String differs = null;
        for (String id : one.keySet()) {
            if (choice(one, id).mask() != choice(two, id).mask()) {
                if (differs != null) {
                    return null;
                }
                differs = id;
            }
        }
        return differs == null ? one : joined(one, two, differs);
    }

    private static SortedMap<String, Choice> joined(
            SortedMap<String, Choice> one, SortedMap<String, Choice> two, String id) {
        SortedMap<String, Choice> joined = new TreeMap<>(one);
        Choice either = new Choice(
                choice(one, id).of(), choice(one, id).mask() | choice(two, id).mask());
        if (either.isAny()) {
            joined.remove(id);
        } else {
            joined.put(id, either);
        }
        return joined;
    }

    private static SortedMap<String, Choice> cover(List<SortedMap<String, Choice>> terms) {
        SortedMap<String, Choice> cover = new TreeMap<>(terms.get(0));
        for (SortedMap<String, Choice> term : terms) {
            cover.keySet().retainAll(term.keySet());
            for (String id : List.copyOf(cover.keySet())) {
                cover = joined(cover, term, id);
            }
        }
        return cover;
    }

    private static Choice choice(SortedMap<String, Choice> term, String id) {
        return Objects.requireNonNull(term.get(id));
    }

    private static String sortKey(SortedMap<String, Choice> term) {
        StringBuilder key = new StringBuilder().append((char) term.size());
        term.forEach((id, choice) -> key.append(id).append(' ').append((char) choice.mask()));
        return key.toString();
    }

    /** Switch id to positions, one map for each term; empty for never, one empty map for always. */
    List<Map<String, List<String>>> positions() {
        List<Map<String, List<String>>> positions = new ArrayList<>();
        for (SortedMap<String, Choice> term : terms) {
            Map<String, List<String>> names = new LinkedHashMap<>();
            term.forEach((id, choice) -> names.put(id, choice.names()));
            positions.add(names);
        }
        return positions;
    }

    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof PositionFormula formula && terms.equals(formula.terms);
    }

    @Override
    public int hashCode() {
        return terms.hashCode();
    }
}
