package loomwright.circuit;

import com.fasterxml.jackson.annotation.JsonTypeName;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A meter that the current to and from the battery goes through: a on the side of the battery, b on the side of the charging and the
 * loads. It shows charge or discharge.
 *
 * @param fullScaleA the most it shows either way; 30 A unless said
 * @param resistanceOhm 0.002 unless said (common practice, no source)
 */
@JsonTypeName("ammeter")
public record Ammeter(String id, @Nullable String label, Double fullScaleA, Double resistanceOhm) implements Part {
    public Ammeter {
        var faults = Bounds.part(id, label);
        Bounds.current(faults, "/fullScaleA", fullScaleA);
        Bounds.resistance(faults, "/resistanceOhm", resistanceOhm).reject();
        fullScaleA = Bounds.orElse(fullScaleA, 30);
        resistanceOhm = Bounds.orElse(resistanceOhm, 0.002);
    }

    @Override
    public List<String> terminals() {
        return TwoEnds.TERMINALS;
    }
}
