package loomwright.list;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Reads when a part should be live: {@code key on}, {@code crank}, {@code lights side or head}.
 *
 * <p>As a plan is written: the conditions, then each alternative after a semicolon, as {@code run, crank; lights: side or
 * head + fog: on; in off: hazard: on}.
 *
 * @param conditions absent if the text names none
 * @param alternatives in the form of the plan document
 */
record WorksWhen(@Nullable List<String> conditions, List<Map<String, Object>> alternatives) {
    static final List<String> ALL = List.of("off", "accessory", "run", "crank", "running");
    private static final Map<String, List<String>> WORDS = Map.ofEntries(
            Map.entry("always", ALL),
            Map.entry("any time", ALL),
            Map.entry("key on", List.of("run", "crank", "running")),
            Map.entry("ignition on", List.of("run", "crank", "running")),
            Map.entry("crank", List.of("crank")),
            Map.entry("cranking", List.of("crank")),
            Map.entry("start", List.of("crank")),
            Map.entry("starting", List.of("crank")),
            Map.entry("running", List.of("running")),
            Map.entry("engine running", List.of("running")),
            Map.entry("run", List.of("run")),
            Map.entry("off", List.of("off")),
            Map.entry("key off", List.of("off")),
            Map.entry("accessory", List.of("accessory")),
            Map.entry("never", List.of()));
    private static final Pattern WRITTEN = Pattern.compile("(?:in ([a-z, ]+): )?([A-Za-z0-9][A-Za-z0-9_-]*: .+)");
    private static final String ANY = "any switch";

    WorksWhen {
        conditions = conditions == null ? null : List.copyOf(conditions);
        alternatives = List.copyOf(alternatives);
    }

    /** The conditions that words name; empty if they name none. */
    static List<String> conditions(String text) {
        return WORDS.getOrDefault(Columns.plain(text), List.of());
    }

    /** A condition of the plan document by its word. */
    static Optional<String> condition(String text) {
        String plain = Columns.plain(text);
        return ALL.contains(plain) ? Optional.of(plain) : Optional.empty();
    }

    /**
     * Reads a cell.
     *
     * @param positions the positions of each free switch, by its id
     * @param names what each of these switches is called, by its id
     * @return empty if some of it cannot be read
     */
    static Optional<WorksWhen> read(String text, Map<String, List<String>> positions, Map<String, String> names) {
        Set<String> conditions = new LinkedHashSet<>();
        List<Map<String, Object>> alternatives = new ArrayList<>();
        boolean told = false;
        for (String part : text.split(";", -1)) {
            Matcher written = WRITTEN.matcher(part.strip());
            if (written.matches() || part.strip().endsWith(ANY)) {
                alternatives.add(alternative(part.strip()));
                continue;
            }
            Map<String, Object> switches = new LinkedHashMap<>();
            for (String clause : part.split(",", -1)) {
                String plain = Columns.plain(clause);
                List<String> known = WORDS.get(plain);
                if (known == null && plain.startsWith("always when")) {
                    known = ALL;
                }
                if (known != null) {
                    told = true;
                    conditions.addAll(known);
                }
                boolean more = !plain.isEmpty() && !WORDS.containsKey(plain);
                if (more && !readSwitch(plain, positions, names, switches)) {
                    return Optional.empty();
                }
            }
            if (!switches.isEmpty()) {
                alternatives.add(Map.of("switches", switches));
            }
        }
        boolean bySwitch = !alternatives.isEmpty() && !text.strip().startsWith(";");
        List<String> all = told ? inOrder(conditions) : bySwitch ? ALL : null;
        return Optional.of(new WorksWhen(all, alternatives));
    }

    /** {@code in run, crank: lights: side or head + fog: on}. */
    private static Map<String, Object> alternative(String text) {
        Map<String, Object> alternative = new LinkedHashMap<>();
        String rest = text;
        if (text.startsWith("in ")) {
            int colon = text.indexOf(": ");
            List<String> conditions = new ArrayList<>();
            for (String word : text.substring(3, colon).split(",", -1)) {
                conditions.add(word.strip());
            }
            alternative.put("conditions", conditions);
            rest = text.substring(colon + 2);
        }
        Map<String, Object> switches = new LinkedHashMap<>();
        if (!rest.equals(ANY)) {
            for (String each : rest.split(" \\+ ", -1)) {
                int colon = each.indexOf(": ");
                switches.put(
                        each.substring(0, colon).strip(),
                        List.of(each.substring(colon + 2).split(" or ", -1)));
            }
        }
        alternative.put("switches", switches);
        return alternative;
    }

    /** The text of a consumer of the plan document, which {@link #read} reads back. */
    static String write(Map<String, Object> part) {
        List<String> clauses = new ArrayList<>();
        Object conditions = part.get("meantLive");
        clauses.add(conditions == null ? "" : joined(conditions, ", "));
        if (conditions instanceof List<?> none && none.isEmpty()) {
            clauses.set(0, "never");
        }
        if (part.get("meantLiveWhen") instanceof List<?> alternatives) {
            for (Object each : alternatives) {
                clauses.add(alternative((Map<?, ?>) each));
            }
        }
        return String.join("; ", clauses);
    }

    private static String alternative(Map<?, ?> alternative) {
        Object conditions = alternative.get("conditions");
        String in = conditions == null ? "" : "in " + joined(conditions, ", ") + ": ";
        List<String> switches = new ArrayList<>();
        if (alternative.get("switches") instanceof Map<?, ?> map) {
            map.forEach((id, positions) -> switches.add(id + ": " + joined(positions, " or ")));
        }
        return in + (switches.isEmpty() ? ANY : String.join(" + ", switches));
    }

    private static String joined(Object list, String between) {
        List<String> words = new ArrayList<>();
        if (list instanceof List<?> values) {
            values.forEach(value -> words.add(String.valueOf(value)));
        }
        return String.join(between, words);
    }

    private static List<String> inOrder(Set<String> conditions) {
        return ALL.stream().filter(conditions::contains).toList();
    }

    /** A clause that names a switch by a word of its own and one or more of its positions. */
    private static boolean readSwitch(
            String clause, Map<String, List<String>> positions, Map<String, String> names, Map<String, Object> found) {
        List<String> words = Names.tokens(clause);
        for (Map.Entry<String, List<String>> each : positions.entrySet()) {
            List<String> own = Names.tokens(names.getOrDefault(each.getKey(), each.getKey()));
            boolean named = own.stream()
                    .filter(word -> !word.equals("switch") && word.length() > 2)
                    .anyMatch(word -> words.stream().anyMatch(w -> alike(w, word)));
            List<String> in = new ArrayList<>();
            for (String position : each.getValue()) {
                if (words.contains(position.toLowerCase(java.util.Locale.ROOT))) {
                    in.add(position);
                }
            }
            if (named && in.isEmpty() && words.contains("on")) {
                // Of several positions that are not the rest, "on" is any.
                in.addAll(each.getValue()
                        .subList(
                                Math.min(1, each.getValue().size()),
                                each.getValue().size()));
            }
            if (named && !in.isEmpty()) {
                found.put(each.getKey(), in);
                return true;
            }
        }
        return false;
    }

    private static boolean alike(String one, String other) {
        String shorter = one.length() < other.length() ? one : other;
        String longer = one.length() < other.length() ? other : one;
        return longer.startsWith(shorter) && shorter.length() >= 3 && longer.length() - shorter.length() <= 3;
    }
}
