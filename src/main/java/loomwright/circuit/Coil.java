package loomwright.circuit;

import com.fasterxml.jackson.annotation.JsonProperty;
import com.fasterxml.jackson.annotation.JsonTypeName;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * An ignition coil's primary: 15 (feed) to 1 (breaker or module). The high-tension side takes no part in the plan.
 *
 * @param primaryResistanceOhm of the primary winding
 * @param inductanceMh of the primary winding, millihenries; for the spark, not for the plan's steady currents
 * @param turnsRatio secondary to primary turns
 * @param use whether it is made for use with a ballast
 * @param operateV volts across it from which it sparks; absent: the usual figure
 * @param releaseV volts below which it surely does not; absent: the usual figure
 * @param meantLive conditions in which it should be fed; absent where it is left unsaid
 * @param meantLiveWhen see {@link Consumer#meantLiveWhen()}
 */
@JsonTypeName("coil")
public record Coil(
        String id,
        @Nullable String label,
        Double primaryResistanceOhm,
        @Nullable Double inductanceMh,
        @Nullable Double turnsRatio,
        @Nullable Use use,
        @Nullable Double operateV,
        @Nullable Double releaseV,
        @Nullable List<Condition> meantLive,
        List<LiveAlternative> meantLiveWhen)
        implements Consumer {
    public static final String FEED = "15";
    public static final String SWITCHED = "1";
    private static final List<String> TERMINALS = List.of(FEED, SWITCHED);

    /** What feed the coil is made for. */
    public enum Use {
        @JsonProperty("with-ballast")
        WITH_BALLAST,
        @JsonProperty("direct")
        DIRECT
    }

    public Coil {
        var faults = Bounds.part(id, label).required("/primaryResistanceOhm", primaryResistanceOhm);
        Bounds.resistance(faults, "/primaryResistanceOhm", primaryResistanceOhm);
        faults.range("/inductanceMh", inductanceMh, 0.01, 1000).range("/turnsRatio", turnsRatio, 1, 1000);
        Consumer.check(faults, meantLive, meantLiveWhen, operateV, releaseV, "operateV", "releaseV")
                .reject();
        meantLive = Consumer.conditions(meantLive);
        meantLiveWhen = Consumer.alternatives(meantLiveWhen);
    }

    @Override
    public Coil withMeantLive(List<Condition> conditions, List<LiveAlternative> when) {
        return new Coil(
                id, label, primaryResistanceOhm, inductanceMh, turnsRatio, use, operateV, releaseV, conditions, when);
    }

    @Override
    public List<String> terminals() {
        return TERMINALS;
    }

    @Override
    public String feedTerminal() {
        return FEED;
    }

    @Override
    public String returnTerminal() {
        return SWITCHED;
    }
}
