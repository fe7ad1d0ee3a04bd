package loomwright.circuit;

import com.fasterxml.jackson.annotation.JsonTypeName;
import java.util.List;
import loomwright.answer.InputErrors;
import org.jspecify.annotations.Nullable;

/**
 * A splice, stud or crimp that joins its terminals; with one terminal an insulated end.
 *
 * @param terminals their names
 * @param resistanceOhm from each terminal to the middle of the joint; absent, or below 1e-6, for a sound joint
 */
@JsonTypeName("joint")
public record Joint(String id, @Nullable String label, List<String> terminals, Double resistanceOhm) implements Part {
    public Joint {
        InputErrors faults = Bounds.part(id, label).range("/resistanceOhm", resistanceOhm, 0, Wire.MAX_JOINT_OHM);
        Switch.terminalNames(faults, terminals, 1);
        faults.reject();
        terminals = List.copyOf(terminals);
        resistanceOhm = Bounds.soundIfTiny(resistanceOhm);
    }
}
