package loomwright.judgement.ignition;

import java.util.List;
import loomwright.answer.Basis;
import loomwright.judgement.Level;
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

    /** The mistakes, by the names under which callers know them. */
    public enum Kind implements MessageCode {
        BYPASS_LEFT_ON,
        NO_CURRENT_LIMIT,
        COIL_OVERHEATS,
        BALLAST_TOO_SMALL,
        COIL_WEAK,
        CONTACTS_OVERLOADED,
        MODULE_OVERLOADED,
        LIMIT_NOT_REACHED,
        COIL_OF_LITTLE_USE
    }
}
