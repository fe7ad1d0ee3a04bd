package loomwright.circuit;

import com.fasterxml.jackson.annotation.JsonTypeName;
import java.util.List;
import loomwright.answer.Fault;
import org.jspecify.annotations.Nullable;

/**
 * A short length of thin wire from a to b that melts before the wire behind it.
 *
 * @param size conductor size such as "18 AWG"
 * @param lengthM length; 0.2 m unless said
 */
@JsonTypeName("fusible-link")
public record FusibleLink(String id, @Nullable String label, String size, Double lengthM) implements Part {
    public FusibleLink {
        Bounds.part(id, label)
                .required("/size", size)
                .check(
                        size == null || (!size.isEmpty() && size.length() <= Wire.MAX_SIZE_TEXT),
                        Fault.Code.OUT_OF_RANGE,
                        "/size",
                        size,
                        "1 to " + Wire.MAX_SIZE_TEXT + " characters")
                .range("/lengthM", lengthM, Bounds.MIN_LENGTH_M, 5)
                .reject();
        lengthM = Bounds.orElse(lengthM, 0.2);
    }

    @Override
    public List<String> terminals() {
        return TwoEnds.TERMINALS;
    }
}
