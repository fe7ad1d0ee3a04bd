package loomwright.diagnosis;

import java.util.Map;
import loomwright.answer.InputError;
import loomwright.answer.InputErrors;
import loomwright.answer.RejectedInput;
import loomwright.circuit.Condition;
import loomwright.circuit.Plan;
import loomwright.circuit.Switch;
import loomwright.operation.Point;
import loomwright.operation.Probe;
import loomwright.operation.Quantity;
import org.jspecify.annotations.Nullable;

/**
 * What a meter showed; one of {@code voltageV}, {@code resistanceOhm} and {@code open}.
 *
 * @param from where the red lead was: {@code part.terminal} or {@code earth}
 * @param to where the black lead was; earth unless said
 * @param condition the key, and whether the engine runs; off unless said for ohms, to be said for volts
 * @param switches free switches that were not as the plan draws them, id to position
 * @param voltageV what it showed, -100 to 100 V
 * @param resistanceOhm what it showed with the battery disconnected, 0 to 1e9 ohm
 * @param open true if it showed an open circuit on ohms
 * @param meter how far it may be off; as stated for all readings unless said
 */
public record MeterReading(
        String from,
        String to,
        Condition condition,
        Map<String, String> switches,
        @Nullable Double voltageV,
        @Nullable Double resistanceOhm,
        @Nullable Boolean open,
        @Nullable MeterAccuracy meter) {
    private static final double MAX_V = 100;
    private static final double MAX_OHM = 1e9;
    private static final int MAX_SWITCHES = 100;

    public MeterReading {
        InputErrors faults = new InputErrors().required("/from", from);
        to = orEarth(to);
        switches = orNone(switches);
        boolean ohmmeter = resistanceOhm != null || open != null;
        faults.check(
                        (voltageV != null ? 1 : 0) + (resistanceOhm != null ? 1 : 0) + (open != null ? 1 : 0) == 1,
                        InputError.Code.CONTRADICTION,
                        "",
                        null,
                        "exactly one of voltageV, resistanceOhm and open")
                .check(open == null || open, InputError.Code.NOT_ONE_OF, "/open", open, "true, or left out")
                .range("/voltageV", voltageV, -MAX_V, MAX_V)
                .range("/resistanceOhm", resistanceOhm, 0, MAX_OHM)
                .check(
                        switches.size() <= MAX_SWITCHES,
                        InputError.Code.OUT_OF_RANGE,
                        "/switches",
                        switches.size(),
                        "at most " + MAX_SWITCHES + " switches");
        if (!ohmmeter) {
            faults.required("/condition", condition);
        }
        point(from, "/from", faults);
        point(to, "/to", faults);
        faults.reject();
        condition = orOff(condition);
    }

    private static String orEarth(@Nullable String to) {
        return to == null ? Point.EARTH_WORD : to;
    }

    private static Map<String, String> orNone(@Nullable Map<String, String> switches) {
        return switches == null ? Map.of() : Map.copyOf(switches);
    }

    private static Condition orOff(@Nullable Condition condition) {
        return condition == null ? Condition.OFF : condition;
    }

    private static void point(@Nullable String text, String pointer, InputErrors faults) {
        try {
            if (text != null) {
                Point.parse(text);
            }
        } catch (RejectedInput rejected) {
            rejected.faults().forEach(f -> faults.add(f.under(pointer)));
        }
    }

    /** What was measured. */
    Measurement measurement() {
        return new Measurement(
                Probe.of(from, to), voltageV == null ? Quantity.OHMS : Quantity.VOLTS, condition, switches);
    }

    /** The figure, V or ohm; for an open circuit {@link Bench#OPEN_OHM}. */
    double figure() {
        if (voltageV != null) {
            return voltageV;
        }
        return resistanceOhm == null ? Bench.OPEN_OHM : Math.min(resistanceOhm, Bench.OPEN_OHM);
    }

    /** Notes what does not go with a plan. */
    void check(Plan plan, String pointer, InputErrors faults) {
        Probe probe = Probe.of(from, to);
        probe.from().check(plan, pointer + "/from", faults);
        probe.to().check(plan, pointer + "/to", faults);
        switches.forEach((id, position) -> {
            Switch found = plan.listParts(Switch.class).stream()
                    .filter(s -> s.id().equals(id) && s.free())
                    .findFirst()
                    .orElse(null);
            String at = pointer + "/switches/" + id;
            faults.check(found != null, InputError.Code.UNKNOWN_REFERENCE, at, id, "a free switch of this plan");
            if (found != null) {
                faults.check(
                        found.positions().stream().anyMatch(p -> p.name().equals(position)),
                        InputError.Code.UNKNOWN_REFERENCE,
                        at,
                        position,
                        "a position of this switch");
            }
        });
    }
}
