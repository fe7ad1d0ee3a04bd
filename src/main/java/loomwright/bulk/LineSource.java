package loomwright.bulk;

import java.io.IOException;
import org.jspecify.annotations.Nullable;

/** Where lines come from. Reads no further than it is asked to, but for one buffer. */
public interface LineSource {
    /** Whether a whole line has arrived, so that {@link #next} does not wait; may be false at the end. */
    boolean isReady() throws IOException;

    /** The next line, waited for; null at the end. */
    @Nullable
    Line next() throws IOException;
}
