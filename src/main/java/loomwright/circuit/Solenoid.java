package loomwright.circuit;

import com.fasterxml.jackson.annotation.JsonTypeName;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A starter solenoid: hold-in winding 50 to 31, pull-in winding (if any) 50 to 45, main contact 30 to 45, auxiliary
 * contact (for a bypass) 30 to 15a. Terminal 45 goes to the motor, through which the pull-in winding returns.
 *
 * @param holdInResistanceOhm of the hold-in winding, or of the only one
 * @param pullInResistanceOhm of the pull-in winding; absent where there is none
 * @param operateV volts from 50 to 31 at which it closes; absent: 8 V at 12 V, in proportion otherwise
 * @param releaseV volts below which it opens; absent: 3 V at 12 V, in proportion otherwise
 * @param contactResistanceOhm of each closed contact; 0.0005 unless said: 0.1 V at 200 A
 * @param ratingA what the main contact may carry
 * @param meantLive conditions in which it should be fed; absent where it is left unsaid
 * @param meantLiveWhen see {@link Consumer#meantLiveWhen()}
 */
@JsonTypeName("solenoid")
public record Solenoid(
        String id,
        @Nullable String label,
        Double holdInResistanceOhm,
        @Nullable Double pullInResistanceOhm,
        @Nullable Double operateV,
        @Nullable Double releaseV,
        Double contactResistanceOhm,
        @Nullable Double ratingA,
        @Nullable List<Condition> meantLive,
        List<LiveAlternative> meantLiveWhen)
        implements Electromagnet {
    public static final String CONTROL = "50";
    public static final String RETURN = "31";
    public static final String SUPPLY = "30";
    public static final String MOTOR = "45";
    public static final String BYPASS = "15a";
    private static final List<String> TERMINALS = List.of(CONTROL, RETURN, SUPPLY, MOTOR, BYPASS);
    private static final double CONTACT_OHM = 0.0005;

    public Solenoid {
        var faults = Bounds.part(id, label).required("/holdInResistanceOhm", holdInResistanceOhm);
        Bounds.resistance(faults, "/holdInResistanceOhm", holdInResistanceOhm);
        Bounds.resistance(faults, "/pullInResistanceOhm", pullInResistanceOhm);
        Bounds.resistance(faults, "/contactResistanceOhm", contactResistanceOhm);
        Bounds.current(faults, "/ratingA", ratingA);
        Consumer.check(faults, meantLive, meantLiveWhen, operateV, releaseV, "operateV", "releaseV")
                .reject();
        contactResistanceOhm = Bounds.orElse(contactResistanceOhm, CONTACT_OHM);
        meantLive = Consumer.conditions(meantLive);
        meantLiveWhen = Consumer.alternatives(meantLiveWhen);
    }

    @Override
    public Solenoid withMeantLive(List<Condition> conditions, List<LiveAlternative> when) {
        return new Solenoid(
                id,
                label,
                holdInResistanceOhm,
                pullInResistanceOhm,
                operateV,
                releaseV,
                contactResistanceOhm,
                ratingA,
                conditions,
                when);
    }

    @Override
    public List<String> terminals() {
        return TERMINALS;
    }

    @Override
    public String feedTerminal() {
        return CONTROL;
    }

    @Override
    public String returnTerminal() {
        return RETURN;
    }
}
