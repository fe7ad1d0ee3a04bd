package loomwright.answer;

import static loomwright.message.Arg.arg;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import loomwright.message.Argument.Quantity;
import loomwright.message.Message;
import loomwright.message.MessageCode;
import org.jspecify.annotations.Nullable;

/**
 * One result of a check: what was found, by what numbers, and what to do about it.
 * <pre>
 * Finding.warning(EARTH_DROP.with(arg("part", part.thing()), arg("dropV", 0.46)), PRACTICE).remedy(CLEAN_EARTH.with())
 * </pre>
 *
 * @param severity how serious it is
 * @param message what was found; its code is stable, callers may rely on it
 * @param ids the parts and wires concerned; empty where the question names none
 * @param basis where its limit comes from
 * @param remedy what to do; absent where there is nothing to be done
 * @param restsOn what was guessed or is still asked about these parts and wires, on which it may depend
 */
public record Finding(
        Severity severity,
        Message message,
        List<String> ids,
        Basis basis,
        @Nullable Message remedy,
        List<Message> restsOn) {
    public Finding {
        ids = List.copyOf(ids);
        restsOn = List.copyOf(restsOn);
    }

    /** A finding about the things of the plan that its message names. */
    public static Finding of(Severity severity, Message message, Basis basis) {
        return new Finding(severity, message, message.ids(), basis, null, List.of());
    }

    /** As {@link #of}. */
    public static Finding danger(Message message, Basis basis) {
        return of(Severity.DANGER, message, basis);
    }

    /** As {@link #of}. */
    public static Finding warning(Message message, Basis basis) {
        return of(Severity.WARNING, message, basis);
    }

    /** As {@link #of}. */
    public static Finding note(Message message, Basis basis) {
        return of(Severity.NOTE, message, basis);
    }

    /** The same finding with what to do about it. */
    public Finding remedy(@Nullable Message whatToDo) {
        return new Finding(severity, message, ids, basis, whatToDo, restsOn);
    }

    /** The same finding about other parts and wires than its message names. */
    public Finding about(List<String> concerned) {
        return new Finding(severity, message, concerned, basis, remedy, restsOn);
    }

    /** The same finding with what was guessed or is still asked about its parts and wires. */
    public Finding restingOn(List<Message> guesses) {
        return new Finding(severity, message, ids, basis, remedy, guesses);
    }

    public MessageCode kind() {
        return message.code();
    }

    public String code() {
        return message.code().code();
    }

    public String text() {
        return message.text();
    }

    /** What to do, in words; absent where there is nothing to be done. */
    public @Nullable String remedyText() {
        return remedy == null ? null : remedy.text();
    }

    /** What it is not certain on account of, in words; empty if it rests on no guess. */
    public String doubts() {
        return restsOn.isEmpty()
                ? ""
                : AnswerText.NOT_CERTAIN
                        .with(arg("guesses", restsOn.stream().map(Message::text).collect(Collectors.joining(" "))))
                        .text();
    }

    private enum AnswerText implements MessageCode {
        NOT_CERTAIN
    }

    /** The numbers of its message, in reading order. */
    public List<Figure> figures() {
        List<Figure> figures = new ArrayList<>();
        message.arguments().forEach((name, argument) -> {
            if (argument instanceof Quantity quantity) {
                figures.add(new Figure(name, quantity.value()));
            }
        });
        return figures;
    }

    /**
     * One number of a finding.
     *
     * @param name its name with the unit in it, as in the contract
     */
    public record Figure(String name, double value) {}
}
