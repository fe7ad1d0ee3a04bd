package loomwright.circuit;

import com.fasterxml.jackson.annotation.JsonTypeName;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Contact points: 1 to 31. While the engine turns they are taken as closed, which is when current flows.
 *
 * @param closedWhenStopped whether the engine happens to have stopped with the contacts closed; true unless said
 * @param contactResistanceOhm of the closed contacts; 0.03 unless said: 0.1 V at 3.5 A (common practice for sound ones)
 * @param ratingA what they may carry
 */
@JsonTypeName("contact-breaker")
public record ContactBreaker(
        String id,
        @Nullable String label,
        Boolean closedWhenStopped,
        Double contactResistanceOhm,
        @Nullable Double ratingA)
        implements Part {
    public static final String SWITCHED = "1";
    public static final String RETURN = "31";
    private static final List<String> TERMINALS = List.of(SWITCHED, RETURN);

    public ContactBreaker {
        var faults = Bounds.part(id, label);
        Bounds.current(faults, "/ratingA", ratingA);
        Bounds.resistance(faults, "/contactResistanceOhm", contactResistanceOhm).reject();
        closedWhenStopped = orTrue(closedWhenStopped);
        contactResistanceOhm = Bounds.orElse(contactResistanceOhm, 0.03);
    }

    private static boolean orTrue(@Nullable Boolean value) {
        return value == null || value;
    }

    /** The same, its contacts closed or open while the engine stands. */
    public ContactBreaker whenStopped(boolean closed) {
        return new ContactBreaker(id, label, closed, contactResistanceOhm, ratingA);
    }

    @Override
    public List<String> terminals() {
        return TERMINALS;
    }
}
