package loomwright.judgement;

import java.util.Optional;
import loomwright.answer.Severity;
import loomwright.message.MessageCode;

/** How a judged figure stands to its limit, best first. */
public enum Level implements MessageCode {
    FITS,
    NOTE,
    WARNING,
    DANGER;

    /** The severity of a finding of this level; empty if there is nothing to report. */
    public Optional<Severity> severity() {
        return switch (this) {
            case FITS -> Optional.empty();
            case NOTE -> Optional.of(Severity.NOTE);
            case WARNING -> Optional.of(Severity.WARNING);
            case DANGER -> Optional.of(Severity.DANGER);
        };
    }

    public Level worse(Level other) {
        return compareTo(other) >= 0 ? this : other;
    }
}
