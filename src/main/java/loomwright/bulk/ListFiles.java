package loomwright.bulk;

import java.util.List;

/** Knows files that hold lists of wires, each of one car or of several. */
public interface ListFiles {
    /** Whether a file of this name is one. */
    boolean isNamedSo(String name);

    /** Whether there is a list in a file; of a text with such a name there may be none. */
    boolean hasTable(byte[] content);

    /** Takes a file apart, one piece a car; each is the text of a line. Does not throw on account of the file. */
    List<byte[]> cars(byte[] content);
}
