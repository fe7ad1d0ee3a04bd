package loomwright.circuit;

import com.fasterxml.jackson.annotation.JsonTypeName;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A change-over relay: coil 86 to 85, contact 30 to 87 when pulled in and to 87a when not.
 *
 * @param coilResistanceOhm of the coil at its working temperature
 * @param pullInV from this voltage it surely pulls in; absent: 8 V at 12 V, in proportion otherwise
 * @param dropOutV below this voltage it surely lets go; absent: 1.5 V at 12 V, in proportion otherwise
 * @param contactResistanceOhm of the closed contact; 0.0015 unless said
 * @param ratingA what the contacts may carry
 * @param meantLive conditions in which its coil should be fed; absent where it is left unsaid
 * @param meantLiveWhen see {@link Consumer#meantLiveWhen()}
 */
@JsonTypeName("relay")
public record Relay(
        String id,
        @Nullable String label,
        Double coilResistanceOhm,
        @Nullable Double pullInV,
        @Nullable Double dropOutV,
        Double contactResistanceOhm,
        @Nullable Double ratingA,
        @Nullable List<Condition> meantLive,
        List<LiveAlternative> meantLiveWhen)
        implements Electromagnet {
    public static final String COIL_FEED = "86";
    public static final String COIL_RETURN = "85";
    public static final String COMMON = "30";
    public static final String MAKE = "87";
    public static final String BREAK = "87a";
    private static final List<String> TERMINALS = List.of(COIL_FEED, COIL_RETURN, COMMON, MAKE, BREAK);

    public Relay {
        var faults = Bounds.part(id, label).required("/coilResistanceOhm", coilResistanceOhm);
        Bounds.resistance(faults, "/coilResistanceOhm", coilResistanceOhm);
        Bounds.resistance(faults, "/contactResistanceOhm", contactResistanceOhm);
        Bounds.current(faults, "/ratingA", ratingA);
        Consumer.check(faults, meantLive, meantLiveWhen, pullInV, dropOutV, "pullInV", "dropOutV")
                .reject();
        contactResistanceOhm = Bounds.orElse(contactResistanceOhm, Switch.CONTACT_OHM);
        meantLive = Consumer.conditions(meantLive);
        meantLiveWhen = Consumer.alternatives(meantLiveWhen);
    }

    @Override
    public Relay withMeantLive(List<Condition> conditions, List<LiveAlternative> when) {
        return new Relay(
                id, label, coilResistanceOhm, pullInV, dropOutV, contactResistanceOhm, ratingA, conditions, when);
    }

    @Override
    public List<String> terminals() {
        return TERMINALS;
    }

    @Override
    public @Nullable Double operateV() {
        return pullInV;
    }

    @Override
    public @Nullable Double releaseV() {
        return dropOutV;
    }

    @Override
    public String feedTerminal() {
        return COIL_FEED;
    }

    @Override
    public String returnTerminal() {
        return COIL_RETURN;
    }
}
