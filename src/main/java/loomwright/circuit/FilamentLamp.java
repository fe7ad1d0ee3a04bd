package loomwright.circuit;

import com.fasterxml.jackson.annotation.JsonTypeName;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A filament lamp from a to b, whose resistance rises with its voltage.
 *
 * @param ratedV volts at which it takes {@code ratedW}
 * @param ratedW watts at {@code ratedV}
 * @param coldFraction cold resistance as a fraction of the hot one; unless said 0.073, 0.350 of 4.80 ohm (OpenStax College
 *     Physics, 20.2 and 20.4; 0.07 to 0.1 in lamp handbooks), and below 1 W 0.154: 6.4 and 6.6 times measured on two lamps of
 *     0.75 W (New Physics 73, 2023, table 2, and 74, 2024, table 2)
 * @param operateV volts from which it is plainly lit; absent: the usual figure
 * @param releaseV volts below which it is dark; absent: the usual figure
 * @param meantLive conditions in which it should be lit; absent where it is left unsaid
 * @param meantLiveWhen see {@link Consumer#meantLiveWhen()}
 */
@JsonTypeName("lamp")
public record FilamentLamp(
        String id,
        @Nullable String label,
        Double ratedV,
        Double ratedW,
        Double coldFraction,
        @Nullable Double operateV,
        @Nullable Double releaseV,
        @Nullable List<Condition> meantLive,
        List<LiveAlternative> meantLiveWhen)
        implements LightingConsumer {
    private static final double COLD_FRACTION = 0.350 / 4.80;
    private static final double SMALL_COLD_FRACTION = 1 / 6.5;
    private static final double SMALL_W = 1;

    public FilamentLamp {
        var faults = Bounds.part(id, label).required("/ratedV", ratedV).required("/ratedW", ratedW);
        Bounds.voltage(faults, "/ratedV", ratedV);
        Bounds.power(faults, "/ratedW", ratedW).range("/coldFraction", coldFraction, 0.01, 1);
        TwoEndedConsumer.check(faults, null, meantLive, meantLiveWhen, operateV, releaseV)
                .reject();
        coldFraction = Bounds.orElse(coldFraction, ratedW < SMALL_W ? SMALL_COLD_FRACTION : COLD_FRACTION);
        meantLive = Consumer.conditions(meantLive);
        meantLiveWhen = Consumer.alternatives(meantLiveWhen);
    }

    @Override
    public FilamentLamp withMeantLive(List<Condition> conditions, List<LiveAlternative> when) {
        return new FilamentLamp(id, label, ratedV, ratedW, coldFraction, operateV, releaseV, conditions, when);
    }
}
