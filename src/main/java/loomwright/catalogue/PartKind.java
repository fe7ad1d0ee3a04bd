package loomwright.catalogue;

import java.util.List;

/**
 * A kind of part of the plan document.
 *
 * @param kind the word of the document
 * @param name what to call it in a sentence
 * @param words what else an owner calls it
 * @param model how it is calculated, in one line
 * @param feed the terminal by which it is fed; empty for a kind without one
 * @param back the terminal by which the current leaves; empty likewise
 * @param ends what a wire without a terminal name means
 * @param needs the properties that are filled in with their usual values
 */
public record PartKind(
        String kind,
        String name,
        List<String> words,
        String model,
        String feed,
        String back,
        Ends ends,
        List<String> needs) {
    /** What the two ends of a part are to the wires that are joined to it. */
    public enum Ends {
        /** A wire goes in at one end and out at the other; it does not matter at which. */
        THROUGH,
        /** A wire goes in at one end and out at the other, and the ends are marked. */
        THROUGH_MARKED,
        /** One end is fed, the other is usually earthed. */
        TO_EARTH,
        /** The terminals differ from each other. */
        MARKED;

        public boolean isThrough() {
            return this == THROUGH || this == THROUGH_MARKED;
        }
    }

    public PartKind {
        words = List.copyOf(words);
        needs = List.copyOf(needs);
    }
}
