package loomwright.circuit;

import static loomwright.message.Arg.arg;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import loomwright.answer.Accepted;
import loomwright.answer.InputError;
import loomwright.answer.InputErrors;
import org.jspecify.annotations.Nullable;

/**
 * One of the ways in which a consumer comes to be meant live: a heater fan by its thermostat, or by the switch that
 * overrides it.
 *
 * @param conditions those in which this way counts; absent for all in which the consumer should be live
 * @param switches switch id to the positions of which one must be chosen; all switches named must agree. Empty for no
 *     restriction.
 */
public record LiveAlternative(@Nullable List<Condition> conditions, Map<String, List<String>> switches) {
    static final int MAX_SWITCHES = 20;

    public LiveAlternative {
        InputErrors faults = new InputErrors().required("/switches", switches);
        if (conditions != null) {
            Bounds.size(faults, "/conditions", conditions, 1, Condition.values().length);
            Bounds.distinct(faults, "/conditions", conditions);
        }
        if (switches != null) {
            faults.check(
                    switches.size() <= MAX_SWITCHES,
                    InputError.Code.OUT_OF_RANGE,
                    "/switches",
                    switches.size(),
                    Accepted.ENTRIES_AT_MOST,
                    arg("max", MAX_SWITCHES));
            switches.forEach(
                    (id, positions) -> Bounds.size(faults, "/switches/" + id, positions, 1, Switch.MAX_POSITIONS));
        }
        faults.reject();
        conditions = conditions == null ? null : List.copyOf(conditions);
        Map<String, List<String>> ordered = new LinkedHashMap<>();
        switches.forEach((id, positions) -> ordered.put(id, List.copyOf(positions)));
        switches = Collections.unmodifiableMap(ordered);
    }

    /** A way that counts whenever the consumer should be live. */
    public static LiveAlternative of(Map<String, List<String>> switches) {
        return new LiveAlternative(null, switches);
    }

    /** Whether it counts in a condition. */
    public boolean countsIn(Condition condition) {
        return conditions == null || conditions.contains(condition);
    }
}
