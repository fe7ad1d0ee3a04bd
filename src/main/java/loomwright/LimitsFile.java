package loomwright;

import static loomwright.message.Arg.texts;

import java.io.IOException;
import java.io.Reader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Properties;
import java.util.TreeMap;
import java.util.TreeSet;
import loomwright.answer.Accepted;
import loomwright.answer.InputError;
import loomwright.answer.InputErrors;
import loomwright.answer.RejectedInput;

/**
 * The limits that few operators ever change. The file {@code docs/limits.properties} says what each is and holds
 * the usual values; an operator may hand in one of his own, which need not name all.
 */
final class LimitsFile {
    private final Map<String, Integer> values = new TreeMap<>();
    private final TreeSet<String> names = new TreeSet<>();

    /** A file that names none. */
    LimitsFile() {}

    /**
     * Reads a file.
     *
     * @throws RejectedInput if a limit is no whole number
     */
    static LimitsFile read(Path path) throws IOException {
        try (Reader reader = Files.newBufferedReader(path)) {
            return read(reader);
        }
    }

    static LimitsFile read(Reader reader) throws IOException {
        Properties properties = new Properties();
        properties.load(reader);
        LimitsFile file = new LimitsFile();
        InputErrors faults = new InputErrors();
        for (String name : new TreeSet<>(properties.stringPropertyNames())) {
            String value = properties.getProperty(name).strip();
            if (value.matches("-?\\d{1,9}")) {
                file.values.put(name, Integer.valueOf(value));
            } else {
                faults.check(false, InputError.Code.WRONG_TYPE, name, value, Accepted.WHOLE_NUMBER);
            }
        }
        faults.reject();
        return file;
    }

    /** A limit by its name in the file; {@code usual} if the file does not name it. */
    int get(String name, int usual) {
        names.add(name);
        return values.getOrDefault(name, usual);
    }

    /**
     * Ends the reading, when all limits have been asked for.
     *
     * @throws RejectedInput if the file names others
     */
    void rejectOthers() {
        InputErrors faults = new InputErrors();
        for (String name : values.keySet()) {
            faults.check(
                    names.contains(name),
                    InputError.Code.UNKNOWN_NAME,
                    name,
                    null,
                    Accepted.ONE_OF,
                    texts("names", names));
        }
        faults.reject();
    }
}
