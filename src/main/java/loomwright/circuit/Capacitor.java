package loomwright.circuit;

import com.fasterxml.jackson.annotation.JsonTypeName;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A capacitor from a to b; no steady current passes it.
 *
 * @param capacitanceUf microfarads
 */
@JsonTypeName("capacitor")
public record Capacitor(String id, @Nullable String label, Double capacitanceUf) implements Part {
    public Capacitor {
        Bounds.part(id, label)
                .required("/capacitanceUf", capacitanceUf)
                .range("/capacitanceUf", capacitanceUf, 1e-6, 1e6)
                .reject();
    }

    @Override
    public List<String> terminals() {
        return TwoEnds.TERMINALS;
    }
}
