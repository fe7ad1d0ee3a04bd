package loomwright.answer;

import static loomwright.message.Arg.arg;

import loomwright.message.Message;
import loomwright.message.MessageCode;

/** A calculation reached its limit of time or steps before it had a result; says which limit. */
public final class OutOfTime extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final transient Message limit;

    /**
     * Gives up.
     *
     * @param limit the limit that was reached and its value, as a sentence for the person who reads it
     */
    public OutOfTime(Message limit) {
        super(limit.text());
        this.limit = limit;
    }

    /** The time of a calculation is up. */
    public static OutOfTime afterMs(int timeMs) {
        return new OutOfTime(Code.OVER.with(arg("timeMs", timeMs)));
    }

    /** The time of a calculation is up, and so many of its steps were done. */
    public static OutOfTime afterMs(int timeMs, long done, long steps) {
        return new OutOfTime(Code.PARTLY_DONE.with(arg("timeMs", timeMs), arg("done", done), arg("steps", steps)));
    }

    private enum Code implements MessageCode {
        PARTLY_DONE,
        OVER
    }

    public Message limit() {
        return limit;
    }
}
