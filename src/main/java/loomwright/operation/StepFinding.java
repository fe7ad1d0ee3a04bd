package loomwright.operation;

import java.util.List;
import loomwright.answer.Severity;
import loomwright.message.Message;
import loomwright.message.MessageCode;

/**
 * Something about a step that a person should know beside its figures.
 *
 * @param message what was found; its code is a {@link Kind}
 * @param ids the parts and wires concerned
 */
public record StepFinding(Message message, List<String> ids) {

    /** What was found. */
    public enum Kind implements MessageCode {
        /** Ideal sources work against each other, or a current has no way back: no figures. */
        UNSOLVABLE(Severity.DANGER),
        /** A source is loaded by less resistance than it has itself. */
        DEAD_SHORT(Severity.DANGER),
        /** A circuit that undoes its own state: relays chatter. */
        OSCILLATING(Severity.WARNING),
        /** The state depends on which of several parts is quicker. */
        RELAY_RACE(Severity.NOTE),
        /** A load asks for more power than its feed can give. */
        OVERLOADED(Severity.WARNING);

        private final Severity severity;

        Kind(Severity severity) {
            this.severity = severity;
        }

        public Severity severity() {
            return severity;
        }
    }

    public Kind kind() {
        return (Kind) message.code();
    }

    public String text() {
        return message.text();
    }
}
