package loomwright.circuit.fault;

import java.util.List;
import loomwright.circuit.Battery;
import loomwright.circuit.Condition;
import loomwright.circuit.Plan;
import loomwright.circuit.ResolvedSupply;

/**
 * Batteries of a plan: all of them, which share one supply, so that what is wrong with it is wrong with all of them alike; or one of
 * several.
 *
 * @param ids of the batteries
 * @param inSeries whether several make up the system's voltage together, so that a fault of one is a fault of the row; if not,
 *     there is one, or several side by side, each with the whole voltage
 */
public record Batteries(List<String> ids, boolean inSeries) {
    public Batteries {
        ids = List.copyOf(ids);
    }

    public static Batteries of(Plan plan) {
        List<Battery> all = plan.listParts(Battery.class);
        double rows = all.stream().mapToDouble(b -> b.share(plan.system())).sum();
        return new Batteries(all.stream().map(Battery::id).toList(), all.size() > 1 && Math.round(rows) <= 1);
    }

    /** Each by itself; none where there is only one, which is all of them. */
    static List<Batteries> each(Plan plan) {
        List<Battery> all = plan.listParts(Battery.class);
        return all.size() < 2
                ? List.of()
                : all.stream().map(b -> new Batteries(List.of(b.id()), false)).toList();
    }

    /** Whether they are some of a plan's batteries and not all. */
    boolean isSomeOf(Plan plan) {
        return ids.size() < plan.listParts(Battery.class).size();
    }

    /** What feeds at rest: of a battery that states figures of its own, those. */
    ResolvedSupply restSupply(Plan plan) {
        return isSomeOf(plan)
                ? plan.listParts(Battery.class).stream()
                        .filter(b -> ids.contains(b.id()))
                        .findFirst()
                        .orElseThrow()
                        .in(Condition.OFF, plan)
                : plan.supply(Condition.OFF);
    }

    /** Which wording is right of them: {@code one}, a {@code row} in series, or several {@code beside} each other. */
    String arrangement() {
        if (ids.size() == 1) {
            return "one";
        }
        return inSeries ? "row" : "beside";
    }
}
