package loomwright.backfeed;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import loomwright.answer.Fault;
import loomwright.answer.RejectedInput;
import loomwright.circuit.Breaker;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.Switch;

/**
 * All combinations of what the plan leaves open: each free switch in each of its positions, each breaker stopped with its
 * contacts closed or open. The plan as it stands comes first.
 */
public final class Situations {
    static final String CLOSED = "closed";
    static final String OPEN = "open";

    private Situations() {}

    /**
     * A plan with everything set.
     *
     * @param positions of switches and breakers, by id
     * @param changed those of them that differ from the plan as it stands
     */
    public record Situation(Plan plan, Map<String, String> positions, Map<String, String> changed) {

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
        List<Situation> all = List.of(new Situation(plan, Map.of(), Map.of()));
        for (Part part : plan.parts()) {
            List<Part> settings = settings(part);
            if (settings.isEmpty()) {
                continue;
            }
            long count = (long) all.size() * settings.size();
            if (count > limit) {
                throw new RejectedInput(new Fault(
                        Fault.Code.OVER_LIMIT,
                        "/parts",
                        count + " combinations or more",
                        "a plan whose free switches and breakers make at most " + limit
                                + " combinations; tie switches to the condition that do not matter here"));
            }
            List<Situation> next = new ArrayList<>();
            for (Part setting : settings) {
                for (Situation situation : all) {
                    next.add(with(situation, part, setting));
                }
            }
            all = next;
        }
        return all;
    }

    private static Situation with(Situation situation, Part asDrawn, Part setting) {
        Map<String, String> positions = new LinkedHashMap<>(situation.positions());
        positions.put(setting.id(), position(setting));
        Map<String, String> changed = new LinkedHashMap<>(situation.changed());
        if (!position(asDrawn).equals(position(setting))) {
            changed.put(setting.id(), position(setting));
        }
        return new Situation(
                setting == asDrawn ? situation.plan() : situation.plan().withPart(setting), positions, changed);
    }

    /** The parts that are left open, each in all its settings, that of the plan first. */
    public static List<List<Part>> open(Plan plan) {
        return plan.parts().stream()
                .map(Situations::settings)
                .filter(settings -> !settings.isEmpty())
                .toList();
    }

    /** The part in each setting, the one in the plan first; empty if nothing is left open. */
    private static List<Part> settings(Part part) {
        List<Part> settings = new ArrayList<>();
        if (part instanceof Switch chosen && chosen.free()) {
            settings.add(chosen);
            for (Switch.Position position : chosen.positions()) {
                if (!position.name().equals(position(chosen))) {
                    settings.add(chosen.withPosition(position.name()));
                }
            }
        } else if (part instanceof Breaker breaker) {
            settings.add(breaker);
            settings.add(new Breaker(
                    breaker.id(),
                    breaker.label(),
                    !breaker.closedWhenStopped(),
                    breaker.contactResistanceOhm(),
                    breaker.ratingA()));
        }
        return settings;
    }

    /** Where an open part stands. */
    public static String position(Part part) {
        if (part instanceof Breaker breaker) {
            return breaker.closedWhenStopped() ? CLOSED : OPEN;
        }
        // A free switch stands the same in every condition.
        return ((Switch) part).in(loomwright.circuit.Condition.OFF).name();
    }
}
