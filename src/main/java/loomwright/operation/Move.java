package loomwright.operation;

import java.util.ArrayList;
import java.util.List;
import loomwright.answer.InputError;
import loomwright.answer.InputErrors;
import loomwright.answer.RejectedInput;

/**
 * One thing done to a vehicle: a switch set to a position, breaker contacts opened or closed, or the key turned.
 *
 * @param what the id of a switch or of breaker contacts, or {@link #KEY}
 * @param to the position, or the step that the key leads to, as it is written: {@code run}
 */
public record Move(String what, String to) {
    /** In the place of an id; no switch can be meant by it, since it stands for the ignition switch. */
    public static final String KEY = "key";

    private static final char SEPARATOR = ':';

    /** Turns the key. */
    public static Move key(Step step) {
        return new Move(KEY, step.code());
    }

    /**
     * Reads {@code lights:head} or {@code key:run}.
     *
     * @throws RejectedInput MALFORMED if it is neither
     */
    public static Move parse(String text) {
        int end = text.indexOf(SEPARATOR);
        if (end <= 0 || end == text.length() - 1) {
            throw new RejectedInput(new InputError(InputError.Code.MALFORMED, "", text, AcceptedMove.MOVE.with()));
        }
        return new Move(text.substring(0, end), text.substring(end + 1));
    }

    /**
     * Reads a list of moves.
     *
     * @throws RejectedInput with the place of each that cannot be read, as {@code /after/0}
     */
    public static List<Move> parse(List<String> texts) {
        InputErrors errors = new InputErrors();
        List<Move> moves = new ArrayList<>();
        for (int i = 0; i < texts.size(); i++) {
            try {
                moves.add(parse(texts.get(i)));
            } catch (RejectedInput rejected) {
                for (InputError error : rejected.faults()) {
                    errors.add(error.under("/after/" + i));
                }
            }
        }
        errors.reject();
        return moves;
    }

    /** Whether it turns the key. A free switch that is called {@code key} cannot be moved by this. */
    public boolean turnsKey() {
        return what.equals(KEY);
    }

    @Override
    public String toString() {
        return what + SEPARATOR + to;
    }
}
