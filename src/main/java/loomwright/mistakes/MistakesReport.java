package loomwright.mistakes;

import java.util.List;
import loomwright.answer.Severity;
import loomwright.circuit.fault.SingleFault;
import loomwright.message.Argument.Instant;
import loomwright.message.Message;
import loomwright.message.MessageCode;
import org.jspecify.annotations.Nullable;

/**
 * What the plausible single mistakes of a plan do.
 *
 * @param plan its name
 * @param settings how many settings of the free switches each was solved in
 * @param left how many mistakes there was no time for
 * @param notListed how many were looked at and are not told, because they are beyond the limit or less serious than asked for
 * @param withoutMistake what the plan does wrong as it is; no mistake is blamed for it
 * @param mistakes worst first
 * @param keying how to make the harmful crossings of connectors impossible
 */
public record MistakesReport(
        String plan,
        int settings,
        int left,
        int notListed,
        WithoutMistake withoutMistake,
        List<Mistake> mistakes,
        List<KeyingAdvice> keying) {
    public MistakesReport {
        mistakes = List.copyOf(mistakes);
        keying = List.copyOf(keying);
    }

    /**
     * What a plan does wrong as it is.
     *
     * @param summary in sentences; empty if nothing is wrong
     * @param fusesBlown fuses and fusible links that open
     * @param notices loads that work when they should not, never work or chatter
     * @param overloads what carries more than it may
     */
    public record WithoutMistake(
            List<Message> summary, List<String> fusesBlown, List<Notice> notices, List<Overload> overloads) {
        static final WithoutMistake UNKNOWN = new WithoutMistake(List.of(), List.of(), List.of(), List.of());

        public WithoutMistake {
            summary = List.copyOf(summary);
        }
    }

    /**
     * One mistake.
     *
     * @param ids parts, wires and connectors that are not as they should be
     * @param description what is wrong
     * @param summary what comes of it, in sentences
     * @param fusesBlown fuses and fusible links that open; what the owner notices is with them open
     * @param notices what the owner notices; empty where no details are asked for, like the next two
     * @param overloads what carries more than it may, before a fuse opens
     * @param backfeeds wires that carry current against their feed direction, which they do not when all is well
     * @param notes what no reading shows, and the settings in which the circuit did not settle
     */
    public record Mistake(
            SingleFault.Kind kind,
            List<String> ids,
            Message description,
            Severity severity,
            List<Message> summary,
            List<String> fusesBlown,
            List<Notice> notices,
            List<Overload> overloads,
            List<Backfeed> backfeeds,
            List<Message> notes) {
        /** The same in sentences alone. */
        Mistake withoutDetails() {
            return new Mistake(
                    kind, ids, description, severity, summary, fusesBlown, List.of(), List.of(), List.of(), notes);
        }
    }

    /** What an owner notices at one load. */
    public enum Effect implements MessageCode {
        /** Works when it should not. */
        UNINTENDED,
        /** Does not work when it should. */
        STOPS,
        /** A lamp is lit weakly, when it should be off or in place of its full light. */
        GLOWS,
        /** Works with a tenth less voltage or worse. */
        UNDERVOLTAGE,
        /** Works with a tenth more voltage or worse. */
        OVERVOLTAGE,
        /** Switches on and off without end. */
        CHATTERS
    }

    /**
     * One thing noticed.
     *
     * @param id of the load
     * @param when steps, and switches where they are not as drawn
     * @param soundV what works on it when all is well, in the first of these
     * @param faultyV what works on it with the mistake, in the first of these
     */
    public record Notice(Effect effect, String id, String label, List<Instant> when, double soundV, double faultyV) {}

    /** What a figure is too large for, worst first. */
    public enum Limit {
        /** Electronics fed backwards let current through that nothing in them is made for. */
        REVERSED_ELECTRONICS,
        /** A battery shorted through next to nothing. */
        DEAD_SHORT,
        WIRE_AMPACITY,
        PART_RATING,
        FUSE_RATING
    }

    /**
     * One thing overloaded, at its worst.
     *
     * @param figure amperes, or watts for a resistor
     * @param limit what is allowed; 0 where nothing is
     * @param endedByFuse whether it is over once the fuses that blow are open
     */
    public record Overload(
            Limit kind, String id, Instant when, double figure, double limit, boolean endedByFuse, Message message) {}

    /** A wire that carries current against its feed direction, at its most. */
    public record Backfeed(String wire, Instant when, double currentA) {}

    /**
     * How to keep two connectors from being crossed.
     *
     * @param connectors the two
     * @param severity of the worst crossing
     * @param change what to fit; absent if no change of one connector helps
     * @param whyNotGender why turning the gender of one connector round is not enough
     */
    public record KeyingAdvice(
            List<String> connectors,
            Severity severity,
            @Nullable Message change,
            Message whyNotGender) {}
}
