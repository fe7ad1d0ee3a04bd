package loomwright.bulk;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;

/** A stream is taken apart into lines, whatever the pieces in which it arrives, and never held whole. */
class B01_LineReaderTest {
    private static final int LONGEST = 100;

    private static LineReader reader(String text) {
        return new LineReader(new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8)), LONGEST);
    }

    /** Each line as number and text; a line that is too long as number and "too long". */
    private static List<String> all(LineReader reader) throws IOException {
        List<String> lines = new ArrayList<>();
        for (Line line = reader.next(); line != null; line = reader.next()) {
            lines.add(line.number() + " "
                    + (line.isTooLong() ? "too long" : new String(line.text(), StandardCharsets.UTF_8)));
        }
        return lines;
    }

    @Test
    void aStreamWithoutBytesHasNoLine() throws IOException {
        assertThat(all(reader(""))).isEmpty();
    }

    @Test
    void aLineEndsWithLfOrCrLfAndTheLastOneWithTheStream() throws IOException {
        assertThat(all(reader("a\nb\r\nc"))).containsExactly("1 a", "2 b", "3 c");
        assertThat(all(reader("a\n"))).containsExactly("1 a");
    }

    @Test
    void aCrWithinALineBelongsToIt() throws IOException {
        assertThat(all(reader("a\rb\r\r\n"))).containsExactly("1 a\rb\r");
    }

    @Test
    void blankLinesAreLines() throws IOException {
        assertThat(all(reader("\n \n\r\na"))).containsExactly("1 ", "2  ", "3 ", "4 a");
        assertThat(Line.of(1, " \t\r".getBytes(StandardCharsets.UTF_8)).isBlank())
                .isTrue();
        assertThat(Line.of(1, "\u0000\u000b".getBytes(StandardCharsets.UTF_8)).isBlank())
                .isFalse();
        assertThat(Line.of(1, "\u00a0".getBytes(StandardCharsets.UTF_8)).isBlank())
                .isFalse();
    }

    @Test
    void aByteOrderMarkAtTheBeginningIsPassedOverAndNowhereElse() throws IOException {
        assertThat(all(reader("\uFEFFa\n\uFEFFb"))).containsExactly("1 a", "2 \uFEFFb");
        assertThat(all(reader("\uFEFF"))).isEmpty();
        assertThat(all(reader("\uFEFF\n"))).containsExactly("1 ");
    }

    @Test
    void aLineThatIsTooLongIsToldAndTheNextOneRead() throws IOException {
        String longest = "x".repeat(LONGEST);
        assertThat(all(reader(longest + "\r\n" + longest + "x\n" + longest + "x\r\nb\n" + longest + "xx")))
                .containsExactly("1 " + longest, "2 too long", "3 too long", "4 b", "5 too long");
    }

    @Test
    void ofALineWithoutEndNoMoreThanABufferIsHeld() throws IOException {
        long gigabyte = 1_000_000_000;
        LineReader reader = new LineReader(
                new InputStream() {
                    private long left = gigabyte;

                    @Override
                    public int read() {
                        throw new AssertionError("bytes must pass in blocks, not one by one");
                    }

                    @Override
                    public int read(byte[] to, int offset, int length) {
                        // The room offered is the free part of the buffer.
                        assertThat(to.length).isLessThanOrEqualTo(65_536);
                        int count = (int) Math.min(left, length);
                        Arrays.fill(to, offset, offset + count, (byte) 'x');
                        left -= count;
                        return count == 0 ? -1 : count;
                    }
                },
                LONGEST);
        assertThat(all(reader)).containsExactly("1 too long");
    }

    @Test
    void countingMayGoOnFromAnotherNumber() throws IOException {
        LineReader reader = reader("a\nb");
        reader.numberFrom(41);
        assertThat(all(reader)).containsExactly("41 a", "42 b");
    }

    @Test
    void itIsReadyWhenAWholeLineHasArrivedAndNotBefore() throws IOException {
        Pieces in = new Pieces();
        LineReader reader = new LineReader(in, LONGEST);
        assertThat(reader.isReady()).isFalse();
        in.arrives("ab");
        assertThat(reader.isReady()).isFalse();
        in.arrives("c\nd");
        assertThat(reader.isReady()).isTrue();
        assertThat(new String(Objects.requireNonNull(reader.next()).text(), StandardCharsets.UTF_8))
                .isEqualTo("abc");
        assertThat(reader.isReady()).isFalse();
    }

    @Property(seed = "20261125", tries = 300)
    void thePiecesInWhichAStreamArrivesMakeNoDifference(
            @ForAll @Size(max = 40) List<@IntRange(max = 130) Integer> lengths, @ForAll long seed) throws IOException {
        Random random = new Random(seed);
        StringBuilder text = new StringBuilder();
        List<String> expected = new ArrayList<>();
        for (int length : lengths) {
            String line = "y".repeat(length);
            text.append(line).append(random.nextBoolean() ? "\n" : "\r\n");
            expected.add(expected.size() + 1 + " " + (length > LONGEST ? "too long" : line));
        }
        Pieces in = new Pieces();
        byte[] bytes = text.toString().getBytes(StandardCharsets.UTF_8);
        for (int at = 0; at < bytes.length; ) {
            int end = Math.min(bytes.length, at + 1 + random.nextInt(60));
            in.arrives(new String(bytes, at, end - at, StandardCharsets.UTF_8));
            at = end;
        }
        in.ends();
        assertThat(all(new LineReader(in, LONGEST))).isEqualTo(expected);
    }

    /** Gives one piece at each read, as a connection does. */
    private static final class Pieces extends InputStream {
        private final List<byte[]> pieces = new ArrayList<>();
        private boolean ended;

        void arrives(String piece) {
            pieces.add(piece.getBytes(StandardCharsets.UTF_8));
        }

        void ends() {
            ended = true;
        }

        @Override
        public int available() {
            return pieces.isEmpty() ? 0 : pieces.get(0).length;
        }

        @Override
        public int read() {
            throw new AssertionError("bytes must pass in blocks, not one by one");
        }

        @Override
        public int read(byte[] to, int offset, int length) {
            if (pieces.isEmpty()) {
                assertThat(ended).as("reading now would wait").isTrue();
                return -1;
            }
            byte[] piece = pieces.remove(0);
            int count = Math.min(length, piece.length);
            System.arraycopy(piece, 0, to, offset, count);
            if (count < piece.length) {
                pieces.add(0, Arrays.copyOfRange(piece, count, piece.length));
            }
            return count;
        }
    }
}
