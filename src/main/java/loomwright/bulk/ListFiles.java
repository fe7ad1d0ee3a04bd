package loomwright.bulk;

import java.io.IOException;
import java.io.InputStream;
import org.jspecify.annotations.Nullable;

/** Knows files that hold lists of wires, each of one car or of several. */
public interface ListFiles {
    /** Whether a file of this name is one. */
    boolean isNamedSo(String name);

    /**
     * The cars of a file, each a line. A text of any length is taken apart while it is read.
     *
     * @param in is read to its end while the lines are asked for
     * @param longest most bytes of what is read as a whole, and of a car
     * @param evenWithoutTable whether a text that holds no table of wires is a car all the same, which then has its faults told
     * @return null if there is no list in the file
     */
    @Nullable
    LineSource cars(InputStream in, int longest, boolean evenWithoutTable) throws IOException;
}
