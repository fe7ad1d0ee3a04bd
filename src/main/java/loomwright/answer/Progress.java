package loomwright.answer;

/** Somebody who hears how far a long calculation is, between its batches, and may stop it. */
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

    /** Ends the calculation if it has gone on for too long, and tells nobody anything. Cheap: to be asked often. */
    default void check() {}

    /** How long the calculation may still take, in ms; 0 or less if its time is up. */
    default long leftMs() {
        return Long.MAX_VALUE;
    }

    /**
     * The progress of one of several equal parts of the work, told in thousandths.
     *
     * @param index which of them, from 0
     * @param parts how many
     */
    default Progress part(int index, int parts) {
        return new Within(this, (done, of) -> at(1000L * index + 1000 * done / of, 1000L * parts));
    }

    /** One that ends the calculation when this does, and tells nothing: for what is done within a step of the work. */
    default Progress untold() {
        return new Within(this, (done, of) -> check());
    }

    /** Ends when another does, and tells in its own way. */
    record Within(Progress whole, Progress told) implements Progress {
        @Override
        public void at(long done, long of) {
            told.at(done, of);
        }

        @Override
        public void check() {
            whole.check();
        }

        @Override
        public long leftMs() {
            return whole.leftMs();
        }
    }
}
