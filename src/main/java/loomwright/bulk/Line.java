package loomwright.bulk;

import org.jspecify.annotations.Nullable;

/** One line as it was read. */
public final class Line {
    private final @Nullable String file;
    private final long number;
    private final byte[] text;
    private final boolean tooLong;
    private final Form form;

    /** What it is a line of. */
    private enum Form {
        LINE,
        /** All of a file, and so a plan, however empty. */
        WHOLE_FILE,
        /** One car of a list. */
        CAR
    }

    private Line(@Nullable String file, long number, byte[] text, boolean tooLong, Form form) {
        this.file = file;
        this.number = number;
        this.text = text;
        this.tooLong = tooLong;
        this.form = form;
    }

    /** A line without its end. The array is not copied: hand over one that nobody changes. */
    public static Line of(long number, byte[] text) {
        return new Line(null, number, text, false, Form.LINE);
    }

    /** A line of more bytes than may be; they are not kept. */
    public static Line tooLong(long number) {
        return new Line(null, number, new byte[0], true, Form.LINE);
    }

    /** All of a file that holds one plan. The array is not copied. */
    static Line wholeFile(byte[] text) {
        return new Line(null, 1, text, false, Form.WHOLE_FILE);
    }

    /** A car of a list, in the order of its cars. The array is not copied. */
    public static Line car(long number, byte[] text) {
        return new Line(null, number, text, false, Form.CAR);
    }

    /** Whether it is a car of a list. */
    public boolean isCar() {
        return form == Form.CAR;
    }

    Line in(String name) {
        return new Line(name, number, text, tooLong, form);
    }

    /** The file it stands in; absent for the lines of a request. */
    public @Nullable String file() {
        return file;
    }

    /** Counted as an editor does: blank lines too, and the header of a table. */
    public long number() {
        return number;
    }

    public byte[] text() {
        return text;
    }

    public boolean isTooLong() {
        return tooLong;
    }

    boolean isBlank() {
        for (byte b : text) {
            if (b != ' ' && b != '\t' && b != '\r') {
                return false;
            }
        }
        return !tooLong && form == Form.LINE;
    }
}
