package loomwright.circuit;

import com.fasterxml.jackson.annotation.JsonTypeName;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A direct-current motor: 33 (main connection) to 32 (return).
 *
 * @param resistanceOhm what it looks like to the supply while it works: volts over amps, not the winding's ohms
 * @param windingOhm what it is with its armature held fast: the ohms of its windings and brushes; absent: a quarter of
 *     {@code resistanceOhm} (common practice, no source)
 * @param stalled whether it is held fast, as a seized wiper or a starter that is jammed; false unless said
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
        @Nullable Double windingOhm,
        Boolean stalled,
        @Nullable Double operateV,
        @Nullable Double releaseV,
        @Nullable List<Condition> meantLive,
        List<LiveAlternative> meantLiveWhen)
        implements Consumer {
    public static final String FEED = "33";
    public static final String RETURN = "32";
    private static final List<String> TERMINALS = List.of(FEED, RETURN);

    private static final double STANDING_SHARE = 0.25;

    public Motor {
        var faults = Bounds.part(id, label).required("/resistanceOhm", resistanceOhm);
        Bounds.resistance(faults, "/resistanceOhm", resistanceOhm);
        Bounds.resistance(faults, "/windingOhm", windingOhm);
        Consumer.check(faults, meantLive, meantLiveWhen, operateV, releaseV, "operateV", "releaseV")
                .reject();
        stalled = Bounds.orFalse(stalled);
        meantLive = Consumer.conditions(meantLive);
        meantLiveWhen = Consumer.alternatives(meantLiveWhen);
    }

    @Override
    public Motor withMeantLive(List<Condition> conditions, List<LiveAlternative> when) {
        return new Motor(id, label, resistanceOhm, windingOhm, stalled, operateV, releaseV, conditions, when);
    }

    /** The same with its figure while it works multiplied, and its winding with it if that is not stated. */
    public Motor withResistanceOhm(double ohm) {
        return new Motor(id, label, ohm, windingOhm, stalled, operateV, releaseV, meantLive, meantLiveWhen);
    }

    /** What the supply sees: its windings alone while it is held fast. */
    public double loadOhm() {
        return stalled ? Bounds.orElse(windingOhm, STANDING_SHARE * resistanceOhm) : resistanceOhm;
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
