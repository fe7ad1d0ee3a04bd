package loomwright.circuit;

import com.fasterxml.jackson.annotation.JsonProperty;
import com.fasterxml.jackson.annotation.JsonTypeName;
import java.util.List;
import loomwright.answer.Faults;
import org.jspecify.annotations.Nullable;

/**
 * One half of a connector; two halves are joined by a {@link Connector}.
 *
 * @param terminals names of its ways
 * @param form of its contacts
 * @param widthMm of a blade, or diameter of a bullet, pin or ring hole
 * @param gender whether its contacts enter the other half's
 * @param ratingA what one way may carry
 */
@JsonTypeName("connector-half")
public record ConnectorHalf(
        String id,
        @Nullable String label,
        List<String> terminals,
        Form form,
        Double widthMm,
        Gender gender,
        @Nullable Double ratingA)
        implements Part {

    /** Form of a contact. */
    public enum Form {
        @JsonProperty("blade")
        BLADE,
        @JsonProperty("ring")
        RING,
        @JsonProperty("bullet")
        BULLET,
        @JsonProperty("pin")
        PIN
    }

    /** Which of two contacts enters the other. */
    public enum Gender {
        @JsonProperty("male")
        MALE,
        @JsonProperty("female")
        FEMALE
    }

    public ConnectorHalf {
        Faults faults = Bounds.part(id, label)
                .required("/form", form)
                .required("/widthMm", widthMm)
                .required("/gender", gender)
                .range("/widthMm", widthMm, 0.5, 30);
        Switch.terminalNames(faults, terminals, 1);
        Bounds.current(faults, "/ratingA", ratingA).reject();
        terminals = List.copyOf(terminals);
    }

    /** Whether the two can be pushed together: same form and width, opposite gender, same ways. */
    public boolean matesWith(ConnectorHalf other) {
        return form == other.form
                && widthMm.equals(other.widthMm)
                && gender != other.gender
                && terminals.equals(other.terminals);
    }
}
