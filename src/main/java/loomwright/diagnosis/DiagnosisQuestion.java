package loomwright.diagnosis;

import java.util.List;
import loomwright.answer.InputError;
import loomwright.answer.InputErrors;
import loomwright.answer.RejectedInput;
import loomwright.circuit.Plan;
import loomwright.circuit.PlanCheck;
import loomwright.operation.UsualIntent;
import org.jspecify.annotations.Nullable;

/**
 * A plan and what was measured on the vehicle.
 *
 * @param plan as it should be
 * @param readings 1 to 200
 * @param meter how far the meter may be off; a plain multimeter unless said
 */
public record DiagnosisQuestion(Plan plan, List<MeterReading> readings, MeterAccuracy meter) {
    static final int MAX_READINGS = 200;

    public DiagnosisQuestion {
        InputErrors faults = new InputErrors().required("/plan", plan).required("/readings", readings);
        faults.reject();
        faults.check(
                        !readings.isEmpty() && readings.size() <= MAX_READINGS,
                        InputError.Code.OUT_OF_RANGE,
                        "/readings",
                        readings.size(),
                        "1 to " + MAX_READINGS + " readings")
                .reject();
        readings = List.copyOf(readings);
        meter = orUsual(meter);
    }

    private static MeterAccuracy orUsual(@Nullable MeterAccuracy meter) {
        return meter == null ? MeterAccuracy.USUAL : meter;
    }

    MeterAccuracy meterOf(MeterReading reading) {
        MeterAccuracy own = reading.meter();
        return own == null ? meter : own;
    }

    /**
     * Refuses a plan that makes no sense, and readings that are not of this plan.
     *
     * @return the same with a plan that leaves nothing unsaid about when its consumers are meant to be live
     * @throws RejectedInput with all faults
     */
    DiagnosisQuestion requireSound() {
        InputErrors faults = new InputErrors();
        PlanCheck.check(plan).forEach(f -> faults.add(f.under("/plan")));
        for (int i = 0; i < readings.size(); i++) {
            readings.get(i).check(plan, "/readings/" + i, faults);
        }
        faults.reject();
        return new DiagnosisQuestion(UsualIntent.complete(plan), readings, meter);
    }
}
