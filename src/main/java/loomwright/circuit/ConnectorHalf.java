package loomwright.circuit;

import static loomwright.message.Arg.arg;

import com.fasterxml.jackson.annotation.JsonProperty;
import com.fasterxml.jackson.annotation.JsonTypeName;
import java.util.ArrayList;
import java.util.List;
import loomwright.answer.InputErrors;
import loomwright.message.Arg;
import loomwright.message.Message;
import loomwright.message.MessageCode;
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
    public enum Form implements MessageCode {
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
    public enum Gender implements MessageCode {
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

    /** Why the two cannot be joined: other form or width, same gender, other ways; empty if they can. */
    public List<Message> obstacles(ConnectorHalf other) {
        List<Message> obstacles = new ArrayList<>();
        if (form != other.form) {
            obstacles.add(ConnectorObstacle.OTHER_FORM.with(arg("form", form), arg("otherForm", other.form)));
        } else if (!widthMm.equals(other.widthMm)) {
            obstacles.add(
                    ConnectorObstacle.OTHER_WIDTH.with(arg("widthMm", widthMm), arg("otherWidthMm", other.widthMm)));
        }
        boolean bolted = form == Form.RING && other.form == Form.RING;
        if (gender == other.gender && !bolted) {
            obstacles.add(ConnectorObstacle.SAME_GENDER.with(arg("gender", gender)));
        }
        if (!terminals.equals(other.terminals)) {
            obstacles.add(ConnectorObstacle.OTHER_WAYS.with(
                    Arg.texts("ways", terminals), Arg.texts("otherWays", other.terminals)));
        }
        return obstacles;
    }
}
