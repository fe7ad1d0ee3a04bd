package loomwright.answer;

/**
 * The source of a table or rule.
 *
 * @param rule what is taken from it, in a few words
 * @param source title, edition and section; or "common practice, no source"
 * @param status how far the figures were compared with the source
 */
public record Basis(String rule, String source, Status status) {

    /** How far a figure can be trusted to be what its source says. */
    public enum Status {
        /** Compared with the source or a reprint of it. */
        VERIFIED,
        /** Follows from a definition or a law of physics. */
        COMPUTED,
        /** Remembered, not compared with the source: look it up before relying on it. */
        FROM_MEMORY,
        /** A rule of the trade without a source. */
        COMMON_PRACTICE
    }

    /** For people: the rule, where it is from, and whether that was looked up. */
    public String inWords() {
        return rule + ": " + source + (status == Status.FROM_MEMORY ? " (from memory)" : "");
    }

    public static Basis verified(String rule, String source) {
        return new Basis(rule, source, Status.VERIFIED);
    }

    public static Basis computed(String rule, String source) {
        return new Basis(rule, source, Status.COMPUTED);
    }

    public static Basis fromMemory(String rule, String source) {
        return new Basis(rule, source, Status.FROM_MEMORY);
    }

    public static Basis commonPractice(String rule) {
        return new Basis(rule, "common practice, no source", Status.COMMON_PRACTICE);
    }
}
