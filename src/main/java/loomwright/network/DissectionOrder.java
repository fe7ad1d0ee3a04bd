package loomwright.network;

import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Deque;

/**
 * A numbering of the unknowns that keeps the fill of a sparse Cholesky factorisation small: automatic nested dissection
 * by level structures. A set of unknowns is cut by the thinnest breadth-first level near its middle, the cut is
 * numbered last, and the two sides are treated likewise.
 *
 * <p>Cost n·log n. Source: A. George and J. W. H. Liu, "Computer Solution of Large Sparse Positive Definite Systems",
 * 1981, chapter 8 (from memory).
 */
final class DissectionOrder {
    private static final int LEAF = 12;

    private final int[] start;
    private final int[] neighbour;
    private final int[] position;
    /** The set an unknown belongs to at present. */
    private final int[] member;
    /** The walk that reached an unknown last. */
    private final int[] seen;

    private final int[] level;
    private int walks;
    private int last;

    DissectionOrder(ConductanceMatrix matrix) {
        int n = matrix.size;
        start = new int[n + 1];
        for (int k = 0; k < matrix.count; k++) {
            if (matrix.from[k] >= 0 && matrix.to[k] >= 0) {
                start[matrix.from[k] + 1]++;
                start[matrix.to[k] + 1]++;
            }
        }
        for (int i = 0; i < n; i++) {
            start[i + 1] += start[i];
        }
        neighbour = new int[start[n]];
        int[] next = start.clone();
        for (int k = 0; k < matrix.count; k++) {
            if (matrix.from[k] >= 0 && matrix.to[k] >= 0) {
                neighbour[next[matrix.from[k]]++] = matrix.to[k];
                neighbour[next[matrix.to[k]]++] = matrix.from[k];
            }
        }
        position = new int[n];
        member = new int[n];
        seen = new int[n];
        level = new int[n];
        last = n;
        dissect(n);
    }

    /** By unknown: its place in the elimination. */
    int[] position() {
        return position;
    }

    private void dissect(int n) {
        int[] all = new int[n];
        Arrays.setAll(all, i -> i);
        Deque<int[]> open = new ArrayDeque<>();
        open.push(all);
        int sets = 0;
        while (!open.isEmpty()) {
            int[] set = open.pop();
            sets++;
            for (int i : set) {
                member[i] = sets;
            }
            if (set.length <= LEAF) {
                number(set, 0, set.length);
                continue;
            }
            int[] walk = walk(set[0], sets, set.length);
            if (walk.length < set.length) {
                open.push(walk);
                open.push(Arrays.stream(set).filter(i -> seen[i] != walks).toArray());
            } else {
                walk = walk(walk[walk.length - 1], sets, set.length);
                cut(walk(walk[walk.length - 1], sets, set.length), open);
            }
        }
    }

    /** Those of a set that hang together with one of them, in breadth-first order. */
    private int[] walk(int from, int set, int setLength) {
        walks++;
        int[] queue = new int[setLength];
        int queued = 0;
        queue[queued++] = from;
        seen[from] = walks;
        level[from] = 0;
        for (int read = 0; read < queued; read++) {
            int i = queue[read];
            for (int k = start[i]; k < start[i + 1]; k++) {
                int j = neighbour[k];
                if (member[j] == set && seen[j] != walks) {
                    seen[j] = walks;
                    level[j] = level[i] + 1;
                    queue[queued++] = j;
                }
            }
        }
        return queued == setLength ? queue : Arrays.copyOf(queue, queued);
    }

    /** Numbers the thinnest level between the first and the last third; the middle level if there is none. */
    private void cut(int[] walk, Deque<int[]> open) {
        int n = walk.length;
        int bestStart = -1;
        int bestEnd = n + 1;
        for (int a = 0; a < n; ) {
            int b = a;
            while (b < n && level[walk[b]] == level[walk[a]]) {
                b++;
            }
            boolean nearMiddle = b > n / 3 && a < n - n / 3;
            if (nearMiddle && (bestStart < 0 || b - a < bestEnd - bestStart)) {
                bestStart = a;
                bestEnd = b;
            }
            a = b;
        }
        number(walk, bestStart, bestEnd);
        if (bestStart > 0) {
            open.push(Arrays.copyOf(walk, bestStart));
        }
        if (bestEnd < n) {
            open.push(Arrays.copyOfRange(walk, bestEnd, n));
        }
    }

    private void number(int[] set, int begin, int end) {
        for (int k = begin; k < end; k++) {
            position[set[k]] = --last;
        }
    }
}
