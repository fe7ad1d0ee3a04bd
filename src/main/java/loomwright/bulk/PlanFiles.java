package loomwright.bulk;

import java.io.BufferedInputStream;
import java.io.Closeable;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.concurrent.atomic.AtomicLong;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * The lines of files, one file after the other; a {@code .json} file counts as one line, whatever its layout, and a list as
 * one line for each of its cars.
 */
public final class PlanFiles implements LineSource, Closeable {
    private static final String ONE_VALUE = ".json";
    private static final List<String> SUFFIXES = List.of(ONE_VALUE, ".ndjson", ".jsonl");

    private final Deque<Path> waiting;
    private final ListFiles lists;
    private final int longest;
    private final long totalBytes;
    /** Files that were given by name, not found in a folder. */
    private final Set<Path> named;

    private final AtomicLong passedBytes = new AtomicLong();
    private @Nullable Opened open;
    /** The cars of the open file, if that is a list. */
    private @Nullable LineSource cars;

    /** The file being read line by line. */
    private record Opened(Path path, InputStream in, LineReader lines) {}

    private PlanFiles(List<Path> files, Set<Path> named, ListFiles lists, int longest, long totalBytes) {
        this.named = named;
        this.waiting = new ArrayDeque<>(files);
        this.lists = lists;
        this.longest = longest;
        this.totalBytes = totalBytes;
    }

    /**
     * Looks for files.
     *
     * @param given files of any name, and folders, of which all {@code .json}, {@code .ndjson} and {@code .jsonl} files and all
     *     lists are taken in the order of their names; texts without a table of wires are passed over there
     * @param lists knows which files are lists
     * @param longest most bytes of a line
     * @throws NoSuchFileException if one of them does not exist, or cannot be read
     */
    public static PlanFiles find(List<Path> given, ListFiles lists, int longest) throws IOException {
        List<Path> files = new ArrayList<>();
        for (Path path : given) {
            if (!Files.isReadable(path)) {
                throw new NoSuchFileException(path.toString());
            }
            if (Files.isDirectory(path)) {
                try (Stream<Path> found = Files.walk(path)) {
                    found.filter(Files::isRegularFile)
                            .filter(file -> hasSuffix(file) || isList(lists, file))
                            .sorted()
                            .forEach(files::add);
                }
            } else {
                files.add(path);
            }
        }
        long bytes = 0;
        for (Path file : files) {
            bytes += Files.size(file);
        }
        return new PlanFiles(files, Set.copyOf(given), lists, longest, bytes);
    }

    private static boolean hasSuffix(Path path) {
        String name = path.toString().toLowerCase(Locale.ROOT);
        return SUFFIXES.stream().anyMatch(name::endsWith);
    }

    private static boolean isList(ListFiles lists, Path path) {
        String name = path.getFileName().toString();
        // A spreadsheet program keeps such a file beside one that it has open.
        return !name.startsWith("~$") && !name.startsWith(".~lock") && lists.isNamedSo(name);
    }

    /** Whether a file is one of those still to be read. */
    public boolean awaits(Path file) throws IOException {
        for (Path path : waiting) {
            if (Files.exists(file) && Files.isSameFile(path, file)) {
                return true;
            }
        }
        return false;
    }

    /** Size of all files. */
    public long totalBytes() {
        return totalBytes;
    }

    /** How much of them has been read; may be asked by another thread. */
    public long passedBytes() {
        return passedBytes.get();
    }

    @Override
    public boolean isReady() throws IOException {
        if (cars != null) {
            return cars.isReady();
        }
        return open == null ? !waiting.isEmpty() : open.lines().isReady();
    }

    @Override
    public @Nullable Line next() throws IOException {
        while (true) {
            Opened file = open == null ? openNext() : open;
            if (file == null) {
                return null;
            }
            if (cars == null && isList(lists, file.path())) {
                cars = lists.cars(file.in(), longest, named.contains(file.path()));
                if (cars == null) {
                    close();
                    continue;
                }
            }
            Line line = cars != null
                    ? cars.next()
                    : file.path().toString().toLowerCase(Locale.ROOT).endsWith(ONE_VALUE)
                            ? whole(file)
                            : file.lines().next();
            if (line != null) {
                return line.in(file.path().toString());
            }
            close();
        }
    }

    private @Nullable Opened openNext() throws IOException {
        Path path = waiting.poll();
        if (path == null) {
            return null;
        }
        InputStream in = new BufferedInputStream(new Counted(Files.newInputStream(path)));
        open = new Opened(path, in, new LineReader(in, longest));
        return open;
    }

    private Line whole(Opened file) throws IOException {
        byte[] text = file.in().readNBytes(longest + 1);
        close();
        return text.length > longest ? Line.tooLong(1) : Line.wholeFile(text);
    }

    @Override
    public void close() throws IOException {
        if (open != null) {
            open.in().close();
            open = null;
            cars = null;
        }
    }

    private final class Counted extends java.io.FilterInputStream {
        Counted(InputStream in) {
            super(in);
        }

        @Override
        public int read() throws IOException {
            int one = super.read();
            count(one < 0 ? 0 : 1);
            return one;
        }

        @Override
        public int read(byte[] bytes, int offset, int length) throws IOException {
            int count = super.read(bytes, offset, length);
            count(Math.max(count, 0));
            return count;
        }

        private void count(int read) {
            passedBytes.addAndGet(read);
        }
    }
}
