package loomwright.bulk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.PipedInputStream;
import java.io.PipedOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Scanner;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Test;

/** Answers go out while lines come in; neither side can make the run hold more than its window. */
class B05_StreamingTest {
    private static final int LINE_BYTES = 900;

    /** Gives one line at each read, and counts them. */
    private static class Lines extends InputStream {
        private final long count;
        final AtomicLong given = new AtomicLong();

        Lines(long count) {
            this.count = count;
        }

        @Override
        public int available() {
            return given.get() < count ? LINE_BYTES : 0;
        }

        @Override
        public int read() {
            throw new AssertionError("bytes must pass in blocks, not one by one");
        }

        @Override
        public int read(byte[] to, int offset, int length) throws IOException {
            if (given.get() == count) {
                return -1;
            }
            byte[] line = ("x".repeat(LINE_BYTES - 1) + "\n").getBytes(StandardCharsets.UTF_8);
            int size = Math.min(length, line.length);
            System.arraycopy(line, line.length - size, to, offset, size);
            given.incrementAndGet();
            return size;
        }
    }

    @Test
    void aLineIsAnsweredWhileTheNextIsStillToCome() throws Exception {
        PipedOutputStream sender = new PipedOutputStream();
        PipedInputStream reader = new PipedInputStream();
        try (PipedInputStream in = new PipedInputStream(sender);
                PipedOutputStream out = new PipedOutputStream(reader)) {
            CompletableFuture<Summary> run = CompletableFuture.supplyAsync(() -> {
                try {
                    return Runs.run(in, Runs::echo, out);
                } catch (IOException e) {
                    throw new IllegalStateException(e);
                }
            });
            Scanner answers = new Scanner(reader, StandardCharsets.UTF_8);
            for (int i = 1; i <= 3; i++) {
                sender.write("line\npart of ".getBytes(StandardCharsets.UTF_8));
                sender.flush();
                assertThat(answers.nextLine()).startsWith(i + ":");
            }
            sender.close();
            assertThat(run.get().answers()).isEqualTo(4);
        }
    }

    @Test
    void noMoreThanTheWindowIsReadAheadOfTheAnswers() throws IOException {
        long lines = 20_000;
        Lines in = new Lines(lines);
        AtomicLong written = new AtomicLong();
        AtomicLong furthest = new AtomicLong();
        Summary summary = Runs.run(
                in,
                line -> {
                    furthest.accumulateAndGet(in.given.get() - written.get(), Math::max);
                    return Runs.echo(line);
                },
                new OutputStream() {
                    @Override
                    public void write(int b) {
                        throw new AssertionError("bytes must pass in blocks, not one by one");
                    }

                    @Override
                    public void write(byte[] bytes) {
                        written.incrementAndGet();
                    }
                });
        assertThat(summary.answers()).isEqualTo(lines);
        // The window, and the line that is read to see that it is full.
        assertThat(furthest.get()).isBetween(2L, Runs.LIMITS.windowLines() + 1L);
    }

    @Test
    void aReaderWhoDoesNotReadHoldsUpTheSender() throws Exception {
        Lines in = new Lines(Long.MAX_VALUE);
        CountDownLatch full = new CountDownLatch(1);
        CountDownLatch goOn = new CountDownLatch(1);
        OutputStream stalled = new OutputStream() {
            @Override
            public void write(int b) throws IOException {
                full.countDown();
                try {
                    goOn.await();
                } catch (InterruptedException e) {
                    throw new IOException(e);
                }
                throw new IOException("gone");
            }
        };
        CompletableFuture<Void> run = CompletableFuture.runAsync(() ->
                assertThatThrownBy(() -> Runs.run(in, Runs::echo, stalled)).hasMessage("gone"));
        assertThat(full.await(30, TimeUnit.SECONDS)).isTrue();
        long atFirst = in.given.get();
        assertThat(atFirst).isLessThanOrEqualTo(Runs.LIMITS.windowLines() + 1L);
        for (int i = 0; i < 1_000_000; i++) {
            Thread.onSpinWait();
        }
        assertThat(in.given.get()).isEqualTo(atFirst);
        goOn.countDown();
        run.get();
    }

    @Test
    void aReaderWhoIsGoneEndsReadingAndWhatIsWaiting() throws Exception {
        Lines in = new Lines(Long.MAX_VALUE);
        AtomicInteger begun = new AtomicInteger();
        assertThatThrownBy(() -> Runs.run(
                        in,
                        line -> {
                            begun.incrementAndGet();
                            return Runs.echo(line);
                        },
                        new OutputStream() {
                            private int left = 50;

                            @Override
                            public void write(int b) {
                                throw new AssertionError("bytes must pass in blocks, not one by one");
                            }

                            @Override
                            public void write(byte[] bytes) throws IOException {
                                if (left-- == 0) {
                                    throw new IOException("broken pipe");
                                }
                            }
                        }))
                .isInstanceOf(IOException.class)
                .hasMessage("broken pipe");
        assertThat(in.given.get()).isLessThanOrEqualTo(51L + Runs.LIMITS.windowLines());
        assertThat(begun.get()).isLessThanOrEqualTo(51 + Runs.LIMITS.windowLines());
    }

    @Test
    void aSenderWhoBreaksOffGetsTheAnswersToItsWholeLinesAndIsToldWhereToGoOn() throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        InputStream broken = new InputStream() {
            private boolean first = true;

            @Override
            public int read() {
                throw new AssertionError("bytes must pass in blocks, not one by one");
            }

            @Override
            public int read(byte[] to, int offset, int length) throws IOException {
                if (!first) {
                    throw new IOException("connection reset");
                }
                first = false;
                byte[] text = "a\nb\nhalf a li".getBytes(StandardCharsets.UTF_8);
                System.arraycopy(text, 0, to, offset, text.length);
                return text.length;
            }
        };
        Summary summary = Runs.run(broken, Runs::echo, out);
        assertThat(out.toString(StandardCharsets.UTF_8)).isEqualTo("1:a\n2:b\n");
        assertThat(summary.complete()).isFalse();
        assertThat(summary.broken()).hasMessage("connection reset");
        assertThat(summary.nextLine()).isEqualTo(3);
    }
}
