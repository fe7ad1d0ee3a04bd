package loomwright.circuit;

import java.util.List;

/** Terminal names of a part whose two ends are alike. */
final class TwoEnds {
    static final String A = "a";
    static final String B = "b";
    static final List<String> TERMINALS = List.of(A, B);

    private TwoEnds() {}
}
