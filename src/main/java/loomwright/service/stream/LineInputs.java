package loomwright.service.stream;

import java.io.IOException;
import loomwright.bulk.Line;

/** How the lines of a bulk run are read. */
@FunctionalInterface
public interface LineInputs {
    /** Takes a line apart. What is wrong with it is reported by its input; it does not throw on account of the line. */
    BulkItem read(Line line) throws IOException;
}
