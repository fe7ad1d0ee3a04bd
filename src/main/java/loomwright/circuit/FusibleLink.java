package loomwright.circuit;

import com.fasterxml.jackson.annotation.JsonTypeName;
import java.util.List;
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
        var faults = Bounds.part(id, label).required("/size", size);
        Bounds.text(faults, "/size", size, 1, Wire.MAX_SIZE_TEXT)
                .range("/lengthM", lengthM, Bounds.MIN_LENGTH_M, 5)
                .reject();
        lengthM = Bounds.orElse(lengthM, 0.2);
    }

    @Override
    public List<String> terminals() {
        return TwoEnds.TERMINALS;
    }
}
