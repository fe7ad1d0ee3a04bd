package loomwright.circuit.fault;

import java.util.List;
import loomwright.circuit.Battery;
import loomwright.circuit.Plan;

/**
 * The batteries of a plan. They share one supply, so that what is wrong with it is wrong with all of them alike.
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

    /** Which wording is right of them: {@code one}, a {@code row} in series, or several {@code beside} each other. */
    String arrangement() {
        if (ids.size() == 1) {
            return "one";
        }
        return inSeries ? "row" : "beside";
    }
}
