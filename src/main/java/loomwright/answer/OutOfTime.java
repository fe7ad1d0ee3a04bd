package loomwright.answer;

/** A calculation reached its limit of time or steps before it had a result; says which limit. */
public final class OutOfTime extends RuntimeException {
    private static final long serialVersionUID = 1L;

    /**
     * Gives up.
     *
     * @param limit the limit that was reached and its value, as a sentence for the person who reads it
     */
    public OutOfTime(String limit) {
        super(limit);
    }
}
