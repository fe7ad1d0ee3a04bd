package loomwright.diagnosis;

import java.util.List;
import loomwright.message.MessageCode;

/** What was seen of a part, without a meter. */
public enum Sign implements MessageCode {
    WORKS,
    /** A lamp that is dim, a motor that is slow. */
    WEAK,
    /** A lamp that only just glows, a relay that only holds. */
    GLOWS,
    DEAD,
    /** It works when it should not. */
    STAYS_ON,
    /** It blows the fuse that feeds it. */
    BLOWS_ITS_FUSE;

    private static final List<Sign> ALL = List.of(values());

    /** By which it stands among the figures of readings. */
    double figure() {
        return ALL.indexOf(this);
    }

    static Sign of(double figure) {
        return ALL.get((int) figure);
    }
}
