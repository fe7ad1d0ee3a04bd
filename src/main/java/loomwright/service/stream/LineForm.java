package loomwright.service.stream;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import loomwright.bulk.Line;
import loomwright.bulk.Summary;
import loomwright.service.endpoint.Calculation.Worked;
import loomwright.service.problem.Problem;
import org.jspecify.annotations.Nullable;

/** How the answers of a bulk run are written, each with its line end. */
public interface LineForm {
    /** What stands before the first answer. */
    byte[] head();

    byte[] answer(Line line, @Nullable JsonNode key, Worked worked) throws IOException;

    byte[] problem(Line line, @Nullable JsonNode key, Problem problem) throws IOException;

    /** What tells the problem of a line from those of others, behind the id of the run. */
    default String suffix(Line line) {
        return ":line:" + line.number();
    }

    /** What whatever is answered to a line begins with. */
    byte[] beginning(Line line);

    /** The last line. */
    byte[] summary(Ended ended) throws IOException;

    /**
     * The end of a run.
     *
     * @param problem why it ended early
     */
    record Ended(
            String operation, Summary summary, @Nullable Problem problem) {}
}
