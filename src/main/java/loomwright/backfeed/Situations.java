package loomwright.backfeed;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.operation.SwitchSettings;

/**
 * All combinations of what the plan leaves open: each free switch in each of its positions, each breaker stopped with its
 * contacts closed or open. The plan as it stands comes first.
 */
public final class Situations {
    private Situations() {}

    /**
     * A plan with everything set.
     *
     * @param positions of switches and breakers, by id
     * @param changed those of them that differ from the plan as it stands
     * @param setting of each open part, its place among its settings, see {@link Situations#open}
     */
    public record Situation(
            Plan plan, Map<String, String> positions, Map<String, String> changed, List<Integer> setting) {

        /** How many of them differ from the plan as it stands. */
        public int changes() {
            return changed.size();
        }
    }

    /**
     * Lists combinations: all of them, or, where there are more than a limit, those in which the fewest switches stand otherwise
     * than in the plan.
     *
     * @param limit of how many are listed
     */
    public static List<Situation> list(Plan plan, int limit) {
        return list(plan, limit, List.of());
    }

    /**
     * Lists combinations as {@link #list(Plan, int)}, and among them those wanted, as many as the limit leaves room for beside
     * the plan as it stands and each of its switches moved alone.
     *
     * @param wanted those of most use first, each as the places of its open parts
     */
    static List<Situation> list(Plan plan, int limit, List<List<Integer>> wanted) {
        List<List<Part>> open = open(plan);
        List<List<Integer>> fewest = new ArrayList<>();
        for (int changes = 0; changes <= open.size() && fewest.size() < limit; changes++) {
            choose(open, new ArrayList<>(), changes, limit, fewest);
        }
        List<List<Integer>> simple =
                fewest.stream().filter(places -> changes(places) <= 1).toList();
        Set<List<Integer>> chosen = new LinkedHashSet<>(simple);
        wanted.stream().limit(Math.max(0, limit - simple.size())).forEach(chosen::add);
        fewest.stream().takeWhile(places -> chosen.size() < limit).forEach(chosen::add);
        return chosen.stream()
                .sorted(Comparator.<List<Integer>>comparingInt(Situations::changes)
                        .thenComparing(Situations::compareInTurn))
                .map(places -> at(plan, open, places))
                .toList();
    }

    private static int changes(List<Integer> places) {
        return (int) places.stream().filter(place -> place > 0).count();
    }

    private static int compareInTurn(List<Integer> places, List<Integer> others) {
        return Arrays.compare(
                places.stream().mapToInt(Integer::intValue).toArray(),
                others.stream().mapToInt(Integer::intValue).toArray());
    }

    /** Adds the settings in which so many of the parts from the next on do not stand as in the plan. */
    private static void choose(
            List<List<Part>> open, List<Integer> places, int changes, int limit, List<List<Integer>> settings) {
        int next = places.size();
        if (settings.size() >= limit || changes > open.size() - next) {
            return;
        } else if (next == open.size()) {
            settings.add(List.copyOf(places));
            return;
        }
        for (int place = 0; place < (changes == 0 ? 1 : open.get(next).size()); place++) {
            places.add(place);
            choose(open, places, place == 0 ? changes : changes - 1, limit, settings);
            places.remove(next);
        }
    }

    /** The combination in which each open part has one of its settings, by their places. */
    static Situation at(Plan plan, List<List<Part>> open, List<Integer> setting) {
        Map<String, String> positions = new LinkedHashMap<>();
        Map<String, String> changed = new LinkedHashMap<>();
        Map<String, Part> set = new HashMap<>();
        for (int p = 0; p < open.size(); p++) {
            int chosen = setting.get(p);
            Part part = open.get(p).get(chosen);
            positions.put(part.id(), position(part));
            if (chosen > 0) {
                changed.put(part.id(), position(part));
                set.put(part.id(), part);
            }
        }
        List<Part> parts = plan.parts().stream()
                .map(part -> set.getOrDefault(part.id(), part))
                .toList();
        return new Situation(
                set.isEmpty() ? plan : plan.with(parts, plan.wires()), positions, changed, List.copyOf(setting));
    }

    /** The parts that are left open, each in all its settings, that of the plan first. */
    public static List<List<Part>> open(Plan plan) {
        return SwitchSettings.of(plan).open();
    }

    /** Where an open part stands. */
    public static String position(Part part) {
        return SwitchSettings.position(part);
    }
}
