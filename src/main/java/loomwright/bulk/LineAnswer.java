package loomwright.bulk;

import java.util.List;
import loomwright.answer.Severity;
import org.jspecify.annotations.Nullable;

/** What one line is answered with. */
public final class LineAnswer {
    private final byte[] text;
    private final boolean problem;
    private final List<Found> findings;

    /**
     * What was found.
     *
     * @param text in a sentence; absent where the code says all
     * @param remedy what to do; absent where nothing is proposed
     */
    public record Found(
            Severity severity,
            String code,
            @Nullable String text,
            @Nullable String remedy) {
        public Found(Severity severity, String code) {
            this(severity, code, null, null);
        }
    }

    private LineAnswer(byte[] text, boolean problem, List<Found> findings) {
        this.text = text;
        this.problem = problem;
        this.findings = List.copyOf(findings);
    }

    /**
     * An answer.
     *
     * @param text what is written, its line end included; not copied
     */
    public static LineAnswer answer(byte[] text, List<Found> findings) {
        return new LineAnswer(text, false, findings);
    }

    /** A line that cannot be answered, with what is wrong with it. */
    public static LineAnswer problem(byte[] text) {
        return new LineAnswer(text, true, List.of());
    }

    byte[] text() {
        return text;
    }

    public boolean isProblem() {
        return problem;
    }

    List<Found> findings() {
        return findings;
    }
}
