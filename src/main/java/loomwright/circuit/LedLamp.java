package loomwright.circuit;

import static loomwright.message.Arg.arg;
import static loomwright.message.Arg.plain;

import com.fasterxml.jackson.annotation.JsonTypeName;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.util.List;
import loomwright.answer.Accepted;
import loomwright.answer.InputError;
import org.jspecify.annotations.Nullable;

/**
 * A lamp of light-emitting diodes from a to b: nothing below the volts of its diodes, then a current that rises in proportion
 * (a series resistor) or stays where it is (constant current). It conducts one way only and is judged by its current.
 *
 * @param plus the terminal that must be positive, a or b; a unless said
 * @param operateV volts from which it is plainly lit; absent: at half its current
 * @param releaseV volts below which it is dim; absent: at a tenth of its current
 * @param meantLive conditions in which it should be lit; absent where it is left unsaid
 * @param meantLiveWhen see {@link Consumer#meantLiveWhen()}
 */
@JsonTypeName("led")
public record LedLamp(
        String id,
        @Nullable String label,
        @JsonUnwrapped LedCurve curve,
        String plus,
        @Nullable Double operateV,
        @Nullable Double releaseV,
        @Nullable List<Condition> meantLive,
        List<LiveAlternative> meantLiveWhen)
        implements LightingConsumer {
    /** What the diodes of a replacement bulb take of its rated volts. */
    private static final double DIODES_SHARE = 6.5 / 12;

    public LedLamp {
        var faults = Bounds.part(id, label).required("/currentA", curve.currentA());
        Bounds.voltage(faults, "/ratedV", curve.ratedV());
        Bounds.current(faults, "/currentA", curve.currentA());
        Bounds.voltage(faults, "/minimumV", curve.minimumV());
        faults.check(
                curve.ratedV() == null || curve.minimumV() == null || curve.minimumV() < curve.ratedV(),
                InputError.Code.CONTRADICTION,
                "/minimumV",
                curve.minimumV(),
                Accepted.LESS_THAN,
                arg("name", "ratedV"),
                plain("limit", Bounds.orElse(curve.ratedV(), 0)));
        TwoEndedConsumer.check(faults, plus, meantLive, meantLiveWhen, operateV, releaseV)
                .reject();
        plus = orFeed(plus);
        meantLive = Consumer.conditions(meantLive);
        meantLiveWhen = Consumer.alternatives(meantLiveWhen);
    }

    private static String orFeed(@Nullable String stated) {
        return stated == null ? TwoEnds.A : stated;
    }

    @Override
    public LedLamp withMeantLive(List<Condition> conditions, List<LiveAlternative> when) {
        return new LedLamp(id, label, curve, plus, operateV, releaseV, conditions, when);
    }

    @Override
    public String minus() {
        return plus.equals(TwoEnds.A) ? TwoEnds.B : TwoEnds.A;
    }

    public double ratedV(VehicleSystem system) {
        double leastV = Bounds.orElse(curve.minimumV(), 0);
        return Bounds.orElse(curve.ratedV(), Math.max(system.nominalVoltageV(), 2 * leastV));
    }

    /** Below the rated volts in any case. */
    public double minimumV(VehicleSystem system) {
        return Bounds.orElse(curve.minimumV(), DIODES_SHARE * ratedV(system));
    }

    /** By how much its volts rise with its current. */
    public double slopeOhm(VehicleSystem system) {
        return (ratedV(system) - minimumV(system)) / curve.currentA();
    }

    /** The volts at which it takes a share of its current. */
    public double voltsAt(double share, VehicleSystem system) {
        return minimumV(system) + share * (ratedV(system) - minimumV(system));
    }

    /**
     * Its current over its volts.
     *
     * @param ratedV volts at which it takes {@code currentA}; absent: the nominal voltage
     * @param currentA at {@code ratedV}
     * @param minimumV where it begins to conduct; absent: 6.5 of 12 parts of its rated volts (practice of replacement bulbs: nothing
     *     below 6 to 7 V)
     * @param constantCurrent whether it takes no more above {@code ratedV}; false unless said
     */
    public record LedCurve(
            @Nullable Double ratedV,
            Double currentA,
            @Nullable Double minimumV,
            Boolean constantCurrent) {
        public LedCurve {
            constantCurrent = Bounds.orFalse(constantCurrent);
        }
    }
}
