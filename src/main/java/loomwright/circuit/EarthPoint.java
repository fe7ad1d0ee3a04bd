package loomwright.circuit;

import com.fasterxml.jackson.annotation.JsonTypeName;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A place where wires are bolted to the chassis: terminal 31.
 *
 * @param resistanceOhm from terminal to chassis; absent, or below 1e-6, for a sound one
 */
@JsonTypeName("earth")
public record EarthPoint(String id, @Nullable String label, Double resistanceOhm) implements Part {
    public static final String TERMINAL = "31";
    private static final List<String> TERMINALS = List.of(TERMINAL);

    public EarthPoint {
        Bounds.part(id, label)
                .range("/resistanceOhm", resistanceOhm, 0, Wire.MAX_JOINT_OHM)
                .reject();
        resistanceOhm = Bounds.soundIfTiny(resistanceOhm);
    }

    @Override
    public List<String> terminals() {
        return TERMINALS;
    }
}
