package loomwright.bulk;

import java.io.IOException;
import java.util.List;
import loomwright.answer.Severity;
import org.jspecify.annotations.Nullable;

/**
 * What a run did.
 *
 * @param complete whether the lines were read to their end
 * @param answers lines answered
 * @param problems lines that could not be answered
 * @param blank lines with nothing in them
 * @param passedOver lines before the one to begin with
 * @param nextLine where to take it up again: number of the line after the last one read
 * @param findings by severity and code, worst first
 * @param broken why reading ended early; absent if it ended in order
 */
public record Summary(
        boolean complete,
        long answers,
        long problems,
        long blank,
        long passedOver,
        long nextLine,
        List<Count> findings,
        @Nullable IOException broken) {
    public Summary {
        findings = List.copyOf(findings);
    }

    /**
     * One kind of finding.
     *
     * @param count how many there are
     * @param lines on how many lines
     */
    public record Count(Severity severity, String code, long count, long lines) {}
}
