package loomwright.diagnosis;

import static loomwright.message.Arg.arg;

import java.util.List;
import loomwright.answer.Accepted;
import loomwright.answer.InputError;
import loomwright.answer.InputErrors;
import loomwright.answer.RejectedInput;
import loomwright.circuit.Plan;
import loomwright.circuit.PlanCheck;
import loomwright.operation.Point;
import loomwright.operation.UsualIntent;
import org.jspecify.annotations.Nullable;

/**
 * A plan and what was measured on the vehicle.
 *
 * @param plan as it should be
 * @param readings 1 to 200
 * @param meterAccuracyPercent of the reading, 0 to 10; 1 unless said; two steps of the last digit come on top, as on the
 *     sheet of readings
 * @param outOfReach where no lead can be put: ids of parts, or terminals
 * @param procedure whether to plan the readings in advance
 */
public record DiagnosisQuestion(
        Plan plan,
        List<MeterReading> readings,
        Double meterAccuracyPercent,
        List<String> outOfReach,
        Boolean procedure) {
    static final int MAX_READINGS = 200;
    private static final int MAX_PLACES = 1000;
    /** Of a plain digital meter: common practice, no source. */
    static final double METER_PERCENT = 1;

    public DiagnosisQuestion {
        InputErrors faults = new InputErrors().required("/plan", plan).required("/readings", readings);
        faults.reject();
        outOfReach = orNone(outOfReach);
        procedure = orFalse(procedure);
        faults.check(
                        !readings.isEmpty() && readings.size() <= MAX_READINGS,
                        InputError.Code.OUT_OF_RANGE,
                        "/readings",
                        readings.size(),
                        Accepted.ENTRIES,
                        arg("min", 1),
                        arg("max", MAX_READINGS))
                .check(
                        outOfReach.size() <= MAX_PLACES,
                        InputError.Code.OUT_OF_RANGE,
                        "/outOfReach",
                        outOfReach.size(),
                        Accepted.ENTRIES_AT_MOST,
                        arg("max", MAX_PLACES))
                .range("/meterAccuracyPercent", meterAccuracyPercent, 0, 10)
                .reject();
        readings = List.copyOf(readings);
        meterAccuracyPercent = orUsual(meterAccuracyPercent);
    }

    /** Readings of a plain meter, every place within reach. */
    public static DiagnosisQuestion of(Plan plan, List<MeterReading> readings) {
        return new DiagnosisQuestion(plan, readings, METER_PERCENT, List.of(), false);
    }

    private static Double orUsual(@Nullable Double percent) {
        return percent == null ? (Double) METER_PERCENT : percent;
    }

    private static List<String> orNone(@Nullable List<String> places) {
        return places == null ? List.of() : List.copyOf(places);
    }

    private static Boolean orFalse(@Nullable Boolean given) {
        return given == null ? Boolean.FALSE : given;
    }

    double meterFraction() {
        return meterAccuracyPercent / 100;
    }

    /** Whether a lead can be put there. */
    boolean reaches(Point point) {
        return point.terminal() == null
                || (!outOfReach.contains(point.toString())
                        && !outOfReach.contains(point.terminal().part()));
    }

    /**
     * Refuses a plan that makes no sense, and readings that are not of this plan.
     *
     * @return the same with a plan that leaves nothing unsaid about when its consumers should be live
     * @throws RejectedInput with all faults
     */
    DiagnosisQuestion requireSound() {
        InputErrors faults = new InputErrors();
        PlanCheck.check(plan).forEach(f -> faults.add(f.under("/plan")));
        for (int i = 0; i < readings.size(); i++) {
            readings.get(i).check(plan, "/readings/" + i, faults);
        }
        for (int i = 0; i < outOfReach.size(); i++) {
            String place = outOfReach.get(i);
            faults.check(
                    plan.findPart(place.contains(".") ? place.substring(0, place.indexOf('.')) : place)
                            .isPresent(),
                    InputError.Code.UNKNOWN_REFERENCE,
                    "/outOfReach/" + i,
                    place,
                    AcceptedReading.PART_OR_TERMINAL);
        }
        faults.reject();
        return new DiagnosisQuestion(UsualIntent.complete(plan), readings, meterAccuracyPercent, outOfReach, procedure);
    }
}
