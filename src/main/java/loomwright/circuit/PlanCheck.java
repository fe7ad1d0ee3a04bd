package loomwright.circuit;

import static loomwright.message.Arg.arg;

import java.util.List;
import loomwright.answer.InputError;
import loomwright.answer.InputErrors;

/**
 * What is wrong with a plan as a circuit, though each of its parts is well formed, so that it cannot be calculated with. A
 * fault of the vehicle, such as a lead that is off, is none: that is what a person asks about.
 */
public final class PlanCheck {
    /** A threshold above this multiple of the nominal voltage can never be reached: surely a slip. */
    private static final double HIGHEST_THRESHOLD = 1.5;

    private PlanCheck() {}

    /** All faults found, in the order of the document; empty for a sound plan. */
    public static List<InputError> check(Plan plan) {
        InputErrors faults = new InputErrors();
        if (plan.listParts(Battery.class).isEmpty()
                && plan.listParts(Generator.class).isEmpty()) {
            faults.add(new InputError(InputError.Code.MISSING, "/parts", null, AcceptedPlan.SOURCE.with())
                    .at(PlanPlace.SOURCE.text()));
        }
        for (int i = 0; i < plan.parts().size(); i++) {
            Part part = plan.parts().get(i);
            String at = "/parts/" + i;
            checkThresholds(faults, at, part, plan.system());
        }
        return faults.list();
    }

    private static void checkThresholds(InputErrors faults, String at, Part part, VehicleSystem system) {
        if (part instanceof Consumer consumer) {
            Double operateV = consumer.operateV();
            double highestV = HIGHEST_THRESHOLD * system.nominalVoltageV();
            faults.check(
                    operateV == null || operateV <= highestV,
                    InputError.Code.CONTRADICTION,
                    at + (part instanceof Relay ? "/pullInV" : "/operateV"),
                    operateV,
                    AcceptedPlan.WITHIN_SYSTEM,
                    arg("highestV", highestV),
                    arg("nominalV", (double) system.nominalVoltageV()));
        }
    }
}
