package loomwright.circuit;

import com.fasterxml.jackson.annotation.JsonTypeName;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A direct-current motor: 33 (main connection) to 32 (return).
 *
 * @param resistanceOhm what it looks like to the supply while it works: volts over amps, not the winding's ohms
 * @param operateV volts from which it turns; absent: the usual figure
 * @param releaseV volts below which it stops; absent: the usual figure
 * @param meantLive conditions in which it is meant to turn; absent where it is left unsaid
 * @param meantLiveWhen see {@link Consumer#meantLiveWhen()}
 */
@JsonTypeName("motor")
public record Motor(
        String id,
        @Nullable String label,
        Double resistanceOhm,
        @Nullable Double operateV,
        @Nullable Double releaseV,
        @Nullable List<Condition> meantLive,
        List<LiveAlternative> meantLiveWhen)
        implements Consumer {
    public static final String FEED = "33";
    public static final String RETURN = "32";
    private static final List<String> TERMINALS = List.of(FEED, RETURN);

    public Motor {
        var faults = Bounds.part(id, label).required("/resistanceOhm", resistanceOhm);
        Bounds.resistance(faults, "/resistanceOhm", resistanceOhm);
        Consumer.check(faults, meantLive, meantLiveWhen, operateV, releaseV, "operateV", "releaseV")
                .reject();
        meantLive = Consumer.conditions(meantLive);
        meantLiveWhen = Consumer.alternatives(meantLiveWhen);
    }

    @Override
    public Motor withMeantLive(List<Condition> conditions, List<LiveAlternative> when) {
        return new Motor(id, label, resistanceOhm, operateV, releaseV, conditions, when);
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
        return RETURN;
    }
}
