package loomwright.answer;

/** Somebody who is told how far a long calculation is, between its batches, and may stop it. */
@FunctionalInterface
public interface Progress {
    /** Nobody watches. */
    Progress UNWATCHED = (done, of) -> {};

    /**
     * Tells how far it is. What this throws ends the calculation.
     *
     * @param done how much of the work is done
     * @param of all the work, in the same measure
     */
    void at(long done, long of);

    /**
     * The progress of one of several equal parts of the work, told in thousandths.
     *
     * @param index which of them, from 0
     * @param parts how many
     */
    default Progress part(int index, int parts) {
        return (done, of) -> at(1000L * index + 1000 * done / of, 1000L * parts);
    }
}
