package loomwright.readings;

import static loomwright.message.Arg.arg;

import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.stream.Collectors;
import loomwright.answer.Accepted;
import loomwright.answer.InputError;
import loomwright.answer.InputErrors;
import loomwright.answer.RejectedInput;
import loomwright.circuit.Condition;
import loomwright.circuit.Consumer;
import loomwright.circuit.Plan;
import loomwright.circuit.PlanCheck;
import loomwright.circuit.tolerance.Tolerances;
import loomwright.operation.UsualIntent;
import org.jspecify.annotations.Nullable;

/**
 * What sheet is asked for.
 *
 * @param plan to be measured
 * @param conditions in which volts are measured; all unless said
 * @param load id of a load: only its circuit; all unless said
 * @param tolerancePercent of everything in the plan but the supply, 0 to 50; absent: the usual one of each kind
 * @param tolerances for single parts, wires and connectors, before the others
 * @param meterAccuracyPercent of the reading, 0 to 10; 1 unless said; two steps of the last digit come on top
 */
public record ReadingsQuestion(
        Plan plan,
        List<Condition> conditions,
        @Nullable String load,
        @Nullable Double tolerancePercent,
        List<Tolerance> tolerances,
        Double meterAccuracyPercent) {
    static final double MAX_TOLERANCE_PERCENT = 50;
    private static final int MAX_TOLERANCES = 1000;
    /** Of a plain digital meter: common practice, no source. */
    static final double METER_PERCENT = 1;

    /** How far one part, wire or connector may be off, 0 to 50 per cent. */
    public record Tolerance(String id, double percent) {
        public Tolerance {
            new InputErrors()
                    .required("/id", id)
                    .range("/percent", percent, 0, MAX_TOLERANCE_PERCENT)
                    .reject();
        }
    }

    public ReadingsQuestion {
        InputErrors faults = new InputErrors()
                .required("/plan", plan)
                .range("/tolerancePercent", tolerancePercent, 0, MAX_TOLERANCE_PERCENT)
                .range("/meterAccuracyPercent", meterAccuracyPercent, 0, 10);
        conditions = orEmpty(conditions);
        tolerances = orEmpty(tolerances);
        noneMissing(faults, "/conditions", conditions, Condition.values().length);
        noneMissing(faults, "/tolerances", tolerances, MAX_TOLERANCES);
        faults.check(
                new HashSet<>(conditions).size() == conditions.size(),
                InputError.Code.DUPLICATE,
                "/conditions",
                conditions,
                Accepted.EACH_ONCE);
        faults.reject();
        conditions = conditions.isEmpty() ? Arrays.asList(Condition.values()) : List.copyOf(conditions);
        tolerances = List.copyOf(tolerances);
        meterAccuracyPercent = orUsual(meterAccuracyPercent);
    }

    public static ReadingsQuestion of(Plan plan) {
        return new ReadingsQuestion(plan, List.of(), null, null, List.of(), METER_PERCENT);
    }

    private static <T> List<T> orEmpty(@Nullable List<T> list) {
        return list == null ? List.of() : list;
    }

    private static Double orUsual(@Nullable Double percent) {
        return percent == null ? (Double) METER_PERCENT : percent;
    }

    private static void noneMissing(InputErrors faults, String pointer, List<?> list, int max) {
        faults.check(
                list.size() <= max,
                InputError.Code.OUT_OF_RANGE,
                pointer,
                list.size(),
                Accepted.ENTRIES_AT_MOST,
                arg("max", max));
        for (int i = 0; i < list.size(); i++) {
            faults.required(pointer + "/" + i, list.get(i));
        }
    }

    /**
     * Rejects a plan that cannot be solved, and ids that are not in it.
     *
     * @return the same with a plan that leaves nothing unsaid about when its consumers should be live
     * @throws RejectedInput with all faults
     */
    ReadingsQuestion requireSound() {
        InputErrors faults = new InputErrors();
        PlanCheck.check(plan).forEach(faults::add);
        faults.check(
                load == null
                        || plan.findPart(load).map(Consumer.class::isInstance).orElse(false),
                InputError.Code.UNKNOWN_REFERENCE,
                "/load",
                load,
                AcceptedTolerance.CONSUMER);
        for (int i = 0; i < tolerances.size(); i++) {
            String id = tolerances.get(i).id();
            boolean known = plan.findPart(id).isPresent()
                    || plan.findWire(id).isPresent()
                    || plan.connectors().stream().anyMatch(c -> c.id().equals(id));
            faults.check(known, InputError.Code.UNKNOWN_REFERENCE, "/tolerances/" + i, id, AcceptedTolerance.THING);
        }
        faults.reject();
        return new ReadingsQuestion(
                UsualIntent.complete(plan), conditions, load, tolerancePercent, tolerances, meterAccuracyPercent);
    }

    /** What is asked for, as fractions. */
    Tolerances asFractions() {
        Double percent = tolerancePercent;
        return new Tolerances(
                tolerances.stream()
                        .collect(Collectors.toMap(Tolerance::id, t -> t.percent() / 100, (first, again) -> again)),
                percent == null ? null : (Double) (percent / 100));
    }
}
