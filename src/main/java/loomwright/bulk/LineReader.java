package loomwright.bulk;

import java.io.IOException;
import java.io.InputStream;
import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * The lines of a stream, ended by LF or CR LF, the last one also by the end of the stream. A byte order mark at the
 * beginning is passed over. Of a line that is too long no more than the limit is ever held.
 */
public final class LineReader implements LineSource {
    private static final int FIRST_BYTES = 65_536;
    private static final int[] BYTE_ORDER_MARK = {0xEF, 0xBB, 0xBF};

    private final InputStream in;
    private final int longest;
    private byte[] buffer = new byte[FIRST_BYTES];
    /** What was read and not handed out, and how far no line end was found in it. */
    private int from;

    private int to;
    private int searched;
    private boolean tooLong;
    private boolean ended;
    private boolean begun;
    private long number = 1;

    /**
     * Reads a stream.
     *
     * @param in is read in large pieces; {@code available} must be truthful
     * @param longest most bytes of a line
     */
    public LineReader(InputStream in, int longest) {
        this.in = in;
        this.longest = longest;
    }

    /** Counts on from another number. */
    public void numberFrom(long next) {
        number = next;
    }

    /** The number of the line that comes next. */
    public long nextNumber() {
        return number;
    }

    @Override
    public boolean isReady() throws IOException {
        return findEnd(false);
    }

    @Override
    public @Nullable Line next() throws IOException {
        findEnd(true);
        if (!begun) {
            begun = true;
            passByteOrderMark();
        }
        boolean hasEnd = searched < to;
        if (!hasEnd && from == to && !tooLong) {
            return null;
        }
        int end = searched > from && buffer[searched - 1] == '\r' ? searched - 1 : searched;
        Line line = tooLong || end - from > longest
                ? Line.tooLong(number)
                : Line.of(number, Arrays.copyOfRange(buffer, from, end));
        number++;
        tooLong = false;
        from = hasEnd ? searched + 1 : to;
        searched = from;
        return line;
    }

    /** Reads until {@code searched} stands at a line end, or at {@code to} because the stream has ended. */
    private boolean findEnd(boolean wait) throws IOException {
        while (true) {
            while (searched < to && buffer[searched] != '\n') {
                searched++;
            }
            if (searched < to || ended) {
                return searched < to;
            }
            // One more for the CR of a line end.
            if (searched - from > longest + 1) {
                tooLong = true;
                from = searched;
            }
            if (!wait && in.available() <= 0) {
                return false;
            }
            fill();
        }
    }

    private void fill() throws IOException {
        if (to == buffer.length) {
            byte[] target = to - from > buffer.length / 2 ? new byte[buffer.length * 2] : buffer;
            System.arraycopy(buffer, from, target, 0, to - from);
            buffer = target;
            searched -= from;
            to -= from;
            from = 0;
        }
        int count = in.read(buffer, to, buffer.length - to);
        ended = count < 0;
        to += Math.max(count, 0);
    }

    private void passByteOrderMark() {
        int mark = 0;
        while (mark < BYTE_ORDER_MARK.length
                && from + mark < to
                && (buffer[from + mark] & 0xFF) == BYTE_ORDER_MARK[mark]) {
            mark++;
        }
        if (mark == BYTE_ORDER_MARK.length) {
            from += mark;
            searched = Math.max(searched, from);
        }
    }
}
