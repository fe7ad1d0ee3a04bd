package loomwright.circuit;

import com.fasterxml.jackson.annotation.JsonProperty;
import com.fasterxml.jackson.annotation.JsonTypeName;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import loomwright.answer.InputErrors;
import org.jspecify.annotations.Nullable;

/**
 * One half of a connector; two halves are joined by a {@link Connector}.
 *
 * @param terminals names of its ways
 * @param form of its contacts
 * @param widthMm of a blade, or diameter of a bullet, pin or ring hole
 * @param gender whether its contacts enter the other half's; of rings, which are bolted on one stud, of no matter
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
        InputErrors faults = Bounds.part(id, label)
                .required("/form", form)
                .required("/widthMm", widthMm)
                .required("/gender", gender)
                .range("/widthMm", widthMm, 0.5, 30);
        Switch.terminalNames(faults, terminals, 1);
        Bounds.current(faults, "/ratingA", ratingA).reject();
        terminals = List.copyOf(terminals);
    }

    /** Whether the two can be pushed together, or bolted on one stud. */
    public boolean matesWith(ConnectorHalf other) {
        return obstacles(other).isEmpty();
    }

    /** Why the two cannot be joined, in words: other form or width, same gender, other ways; empty if they can. */
    public List<String> obstacles(ConnectorHalf other) {
        List<String> obstacles = new ArrayList<>();
        if (form != other.form) {
            obstacles.add("one has " + contacts() + ", the other " + other.contacts());
        } else if (!widthMm.equals(other.widthMm)) {
            obstacles.add("one is " + mm(widthMm) + " mm wide, the other " + mm(other.widthMm) + " mm");
        }
        boolean bolted = form == Form.RING && other.form == Form.RING;
        if (gender == other.gender && !bolted) {
            obstacles.add("both are " + gender.name().toLowerCase(Locale.ROOT));
        }
        if (!terminals.equals(other.terminals)) {
            obstacles.add("one has the ways " + String.join(", ", terminals) + ", the other "
                    + String.join(", ", other.terminals));
        }
        return obstacles;
    }

    private String contacts() {
        return form.name().toLowerCase(Locale.ROOT) + " contacts";
    }

    private static String mm(double widthMm) {
        return BigDecimal.valueOf(widthMm).stripTrailingZeros().toPlainString();
    }
}
