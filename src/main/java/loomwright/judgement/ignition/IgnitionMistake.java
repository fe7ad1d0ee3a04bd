package loomwright.judgement.ignition;

import static loomwright.message.Arg.arg;

import java.util.List;
import loomwright.answer.Basis;
import loomwright.answer.Finding;
import loomwright.answer.Severity;
import loomwright.judgement.Level;
import loomwright.message.Message;
import loomwright.message.MessageCode;

/**
 * One thing that is judged about an ignition's primary circuit and is not as it should be.
 *
 * @param kind which
 * @param level how serious
 * @param value what was judged: amperes, watts or ohms
 * @param limit what it was held to, in the same unit
 * @param basis where the limit comes from
 * @param remedies what cures it, the simplest first; each was judged and leaves nothing as serious
 */
public record IgnitionMistake(
        Kind kind, Level level, double value, double limit, Basis basis, List<IgnitionRemedy> remedies) {
    public IgnitionMistake {
        remedies = List.copyOf(remedies);
    }

    /** How several remedies are joined. */
    enum Remedies implements MessageCode {
        CHOICE
    }

    /**
     * It as a finding: the same wherever it is asked.
     *
     * @param loop the circuit that was judged
     */
    public Finding finding(PrimaryLoop loop) {
        String unit = switch (kind) {
            case COIL_OVERHEATS -> "W";
            case BALLAST_TOO_SMALL, BALLAST_TOO_LARGE -> "Ohm";
            default -> "A";
        };
        return Finding.of(
                        level.severity().orElse(Severity.NOTE),
                        kind.with(
                                arg("judged" + unit, value),
                                arg("limit" + unit, limit),
                                arg("decides", IgnitionRule.restDecides(loop) ? "rest" : "running"),
                                arg("closedA", loop.runningA()),
                                arg("coilHeatW", loop.restHeatW())),
                        basis)
                .remedy(remedies.stream()
                        .map(IgnitionMistake::message)
                        .reduce((before, next) -> Remedies.CHOICE.with(arg("first", before), arg("other", next)))
                        .orElse(null));
    }

    private static Message message(IgnitionRemedy remedy) {
        return remedy.ohm() > 0
                ? remedy.kind().with(arg("resistanceOhm", remedy.ohm()))
                : remedy.kind().with();
    }

    /** The mistakes, by the names under which callers know them. */
    public enum Kind implements MessageCode {
        BYPASS_LEFT_ON,
        NO_CURRENT_LIMIT,
        COIL_OVERHEATS,
        BALLAST_TOO_SMALL,
        BALLAST_TOO_LARGE,
        COIL_WEAK,
        CONTACT_OVERLOADED,
        MODULE_OVERLOADED,
        LIMIT_NOT_REACHED,
        COIL_OF_LITTLE_USE
    }
}
