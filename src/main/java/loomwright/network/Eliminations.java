package loomwright.network;

import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Deque;

/** The eliminations planned last: networks solved one after the other are often the same but for their figures. */
final class Eliminations {
    private static final int KEPT = 6;

    private final Deque<Planned> planned = new ArrayDeque<>();

    @SuppressWarnings("ArrayRecordComponent") // compared by fits
    private record Planned(int nodes, int[] from, int[] to, StarElimination elimination) {
        boolean fits(int otherNodes, int[] otherFrom, int[] otherTo) {
            return nodes == otherNodes && Arrays.equals(from, otherFrom) && Arrays.equals(to, otherTo);
        }
    }

    /** The elimination for these branches, see {@link StarElimination}; good until this is asked for the same again. */
    StarElimination of(int nodes, int[] from, int[] to) {
        for (Planned known : planned) {
            if (known.fits(nodes, from, to)) {
                planned.remove(known);
                planned.addFirst(known);
                return known.elimination();
            }
        }
        if (planned.size() == KEPT) {
            planned.removeLast();
        }
        planned.addFirst(new Planned(nodes, from.clone(), to.clone(), new StarElimination(nodes, from, to)));
        return planned.element().elimination();
    }
}
