package loomwright.circuit;

import com.fasterxml.jackson.annotation.JsonTypeName;
import java.util.List;
import loomwright.answer.InputError;
import org.jspecify.annotations.Nullable;

/**
 * A battery with terminals {@code plus} and {@code minus}. Its EMF is that of the condition, in proportion to its share
 * of the system voltage.
 *
 * @param nominalVoltageV 2 to 24, for a battery that is only a part of the system's (two of 12 V in series); absent: the
 *     system's
 */
@JsonTypeName("battery")
public record Battery(
        String id, @Nullable String label, @Nullable Double nominalVoltageV) implements Part {
    public static final String PLUS = "plus";
    public static final String MINUS = "minus";
    private static final List<String> TERMINALS = List.of(PLUS, MINUS);

    public Battery {
        Bounds.part(id, label)
                .check(
                        nominalVoltageV == null || (nominalVoltageV >= 2 && nominalVoltageV <= 24),
                        InputError.Code.OUT_OF_RANGE,
                        "/nominalVoltageV",
                        nominalVoltageV,
                        "a number from 2 to 24")
                .reject();
    }

    /** What of the system's supply it is: a half for one of two 6 V batteries of a 12 V system. */
    public double share(VehicleSystem system) {
        return nominalVoltageV == null ? 1 : nominalVoltageV / system.nominalVoltageV();
    }

    @Override
    public List<String> terminals() {
        return TERMINALS;
    }
}
