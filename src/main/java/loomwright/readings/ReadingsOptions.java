package loomwright.readings;

import java.util.ArrayList;
import java.util.List;
import loomwright.answer.InputError;
import loomwright.answer.InputErrors;
import loomwright.circuit.Condition;
import loomwright.circuit.Plan;
import loomwright.readings.ReadingsQuestion.Tolerance;
import org.jspecify.annotations.Nullable;

/**
 * What sheet of a plan is asked for. What is left out is as in {@link ReadingsQuestion}.
 *
 * @param conditions in which volts are measured
 * @param load id of a load: only its circuit
 * @param tolerancePercent of everything in the plan but the supply, 0 to 50
 * @param tolerances for single parts, wires and connectors: an id, a colon, per cent from 0 to 50
 * @param meterAccuracyPercent of the reading, 0 to 10
 */
public record ReadingsOptions(
        @Nullable List<Condition> conditions,
        @Nullable String load,
        @Nullable Double tolerancePercent,
        @Nullable List<String> tolerances,
        @Nullable Double meterAccuracyPercent) {
    /** The whole plan in all conditions. */
    public static final ReadingsOptions USUAL = new ReadingsOptions(null, null, null, null, null);

    /**
     * The question about a plan.
     *
     * @throws loomwright.answer.RejectedInput with all options that cannot be read or are out of range
     */
    public ReadingsQuestion of(Plan plan) {
        return new ReadingsQuestion(
                plan,
                conditions == null ? List.of() : conditions,
                load,
                tolerancePercent,
                parsed(tolerances == null ? List.of() : tolerances),
                meterAccuracyPercent == null ? (Double) ReadingsQuestion.METER_PERCENT : meterAccuracyPercent);
    }

    private static List<Tolerance> parsed(List<String> texts) {
        InputErrors faults = new InputErrors();
        List<Tolerance> tolerances = new ArrayList<>();
        for (int i = 0; i < texts.size(); i++) {
            String text = texts.get(i);
            int colon = text.lastIndexOf(':');
            String percent = text.substring(colon + 1);
            boolean holds = colon > 0
                    && percent.matches("\\d{1,2}(\\.\\d{1,6})?")
                    && Double.parseDouble(percent) <= ReadingsQuestion.MAX_TOLERANCE_PERCENT;
            faults.check(holds, InputError.Code.MALFORMED, "/tolerances/" + i, text, AcceptedTolerance.TOLERANCE);
            if (holds) {
                tolerances.add(new Tolerance(text.substring(0, colon), Double.parseDouble(percent)));
            }
        }
        faults.reject();
        return tolerances;
    }
}
