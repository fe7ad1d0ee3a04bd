package loomwright.circuit;

import com.fasterxml.jackson.annotation.JsonTypeName;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A resistor from a to b.
 *
 * @param resistanceOhm its resistance
 * @param ratingW what it may turn into heat
 */
@JsonTypeName("resistor")
public record FixedResistor(
        String id,
        @Nullable String label,
        Double resistanceOhm,
        @Nullable Double ratingW) implements Part {
    public FixedResistor {
        var faults = Bounds.part(id, label).required("/resistanceOhm", resistanceOhm);
        Bounds.power(faults, "/ratingW", ratingW);
        Bounds.resistance(faults, "/resistanceOhm", resistanceOhm).reject();
    }

    @Override
    public List<String> terminals() {
        return TwoEnds.TERMINALS;
    }
}
