package loomwright.sizing;

import static loomwright.message.Arg.arg;

import java.util.List;
import java.util.Map;
import loomwright.answer.Assumption;
import loomwright.message.Arg;
import loomwright.message.MessageCode;

/** What is filled in where a question about a run, a wire or a fuse says nothing. */
enum SizingAssumption implements MessageCode {
    INSULATION,
    AMBIENT,
    BUNDLE,
    BUNDLE_NOT_APPLIED,
    CHASSIS,
    CIRCUIT,
    NOT_A_STARTER_CABLE,
    BREAKING_CAPACITY,
    FUSE_BOX;

    /**
     * The assumption.
     *
     * @param assumed names of properties with what was taken
     */
    Assumption of(Map<String, Object> assumed, Arg... arguments) {
        return new Assumption(code(), List.of(), assumed, with(arguments), List.of());
    }

    static Assumption chassis(double chassisOhm, double currentA, double poorOhm) {
        return CHASSIS.of(
                Map.of("chassisOhm", chassisOhm),
                arg("chassisOhm", chassisOhm),
                arg("poorOhm", poorOhm),
                arg("lostV", currentA * poorOhm));
    }
}
