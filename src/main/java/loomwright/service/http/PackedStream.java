package loomwright.service.http;

import java.io.IOException;
import java.io.OutputStream;
import java.util.zip.GZIPOutputStream;
import org.jspecify.annotations.Nullable;

/**
 * What is written piece by piece, compressed with gzip. A flush sends all that was written so far, so that a reader has each line
 * when it is ready. Nothing is said or written before the first byte: what fails before that becomes a plain problem document.
 */
public final class PackedStream extends OutputStream {
    private final OutputStream out;
    private final Runnable atStart;
    private @Nullable GZIPOutputStream packed;

    /**
     * Compresses to a stream.
     *
     * @param out where to; not closed by this
     * @param atStart called before the first byte, to set the header that says that it is compressed
     */
    public PackedStream(OutputStream out, Runnable atStart) {
        this.out = out;
        this.atStart = atStart;
    }

    @Override
    public void write(int one) throws IOException {
        started().write(one);
    }

    @Override
    public void write(byte[] bytes, int offset, int length) throws IOException {
        started().write(bytes, offset, length);
    }

    @Override
    public void flush() throws IOException {
        if (packed != null) {
            packed.flush();
        }
    }

    /** Writes what is left and the sum at the end. */
    public void finish() throws IOException {
        if (packed != null) {
            packed.finish();
            packed.flush();
        }
    }

    private GZIPOutputStream started() throws IOException {
        GZIPOutputStream ready = packed;
        if (ready == null) {
            atStart.run();
            ready = new GZIPOutputStream(out, true);
            packed = ready;
        }
        return ready;
    }
}
