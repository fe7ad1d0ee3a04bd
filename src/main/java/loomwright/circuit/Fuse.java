package loomwright.circuit;

import com.fasterxml.jackson.annotation.JsonTypeName;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A fuse from a to b.
 *
 * @param ratingA its rating
 * @param resistanceOhm cold resistance with its holder; 0.005 unless said (an assumption of this service)
 */
@JsonTypeName("fuse")
public record Fuse(String id, @Nullable String label, Double ratingA, Double resistanceOhm) implements Part {
    public Fuse {
        var faults = Bounds.part(id, label).required("/ratingA", ratingA).range("/ratingA", ratingA, 0.1, 500);
        Bounds.resistance(faults, "/resistanceOhm", resistanceOhm).reject();
        resistanceOhm = Bounds.orElse(resistanceOhm, 0.005);
    }

    @Override
    public List<String> terminals() {
        return TwoEnds.TERMINALS;
    }
}
