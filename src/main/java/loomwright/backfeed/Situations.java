package loomwright.backfeed;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import loomwright.answer.InputError;
import loomwright.answer.RejectedInput;
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
     * Lists the combinations.
     *
     * @throws RejectedInput OVER_LIMIT if there are more than {@code limit}
     */
    public static List<Situation> list(Plan plan, int limit) {
        List<List<Part>> open = open(plan);
        return IntStream.range(0, count(open, limit))
                .mapToObj(number -> get(plan, open, number))
                .toList();
    }

    /**
     * How many combinations there are.
     *
     * @throws RejectedInput OVER_LIMIT if there are more than {@code limit}
     */
    static int count(List<List<Part>> open, int limit) {
        int all = 1;
        for (List<Part> settings : open) {
            long count = (long) all * settings.size();
            if (count > limit) {
                throw new RejectedInput(new InputError(
                        InputError.Code.OVER_LIMIT,
                        "/parts",
                        count + " combinations or more",
                        "a plan whose free switches and breakers make at most " + limit
                                + " combinations; tie switches to the condition that do not matter here"));
            }
            all = (int) count;
        }
        return all;
    }

    /** The combination of a number from 0; the setting of the first open part changes with each. */
    static Situation get(Plan plan, List<List<Part>> open, int number) {
        Map<String, String> positions = new LinkedHashMap<>();
        Map<String, String> changed = new LinkedHashMap<>();
        Map<String, Part> set = new HashMap<>();
        List<Integer> places = new ArrayList<>();
        int rest = number;
        for (List<Part> settings : open) {
            int chosen = rest % settings.size();
            rest /= settings.size();
            places.add(chosen);
            Part setting = settings.get(chosen);
            positions.put(setting.id(), position(setting));
            if (chosen > 0) {
                changed.put(setting.id(), position(setting));
                set.put(setting.id(), setting);
            }
        }
        List<Part> parts = plan.parts().stream()
                .map(part -> set.getOrDefault(part.id(), part))
                .toList();
        return new Situation(set.isEmpty() ? plan : plan.with(parts, plan.wires()), positions, changed, places);
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
