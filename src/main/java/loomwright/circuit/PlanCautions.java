package loomwright.circuit;

import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import loomwright.answer.Caution;

/** The cautions that the parts of a plan call for. */
public final class PlanCautions {
    private PlanCautions() {}

    /** Those that apply, in the order in which they are best read. */
    public static List<Caution> of(Plan plan) {
        Set<Caution> cautions = EnumSet.of(Caution.LOCAL_CODES);
        for (Part part : plan.parts()) {
            if (part instanceof Battery) {
                cautions.add(Caution.DISCONNECT_BATTERY);
                cautions.add(Caution.HIGH_CURRENT);
                cautions.add(Caution.FUEL_VAPOUR);
            } else if (part instanceof Coil) {
                cautions.add(Caution.HIGH_TENSION);
                cautions.add(Caution.MOVING_PARTS);
            } else if (part instanceof Solenoid || part instanceof Motor || part instanceof Generator) {
                cautions.add(Caution.MOVING_PARTS);
            } else if (part instanceof Ballast) {
                cautions.add(Caution.HOT_BALLAST);
            } else if (part instanceof ContactBreaker) {
                cautions.add(Caution.KEY_LEFT_ON);
            }
        }
        return List.copyOf(cautions);
    }
}
