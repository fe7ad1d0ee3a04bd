package loomwright.network;

/** For each node the branches at it: those of {@code node} are {@code branch[start[node]]} to before {@code start[node + 1]}. */
final class Adjacency {
    final int[] start;
    final int[] branch;

    /**
     * Sorts a selection of branches by node.
     *
     * @param selection indices of branches, the first {@code count} of them
     */
    Adjacency(int nodes, BranchLaw[] branches, int[] selection, int count) {
        start = new int[nodes + 1];
        branch = new int[2 * count];
        for (int k = 0; k < count; k++) {
            start[branches[selection[k]].from + 1]++;
            start[branches[selection[k]].to + 1]++;
        }
        for (int node = 0; node < nodes; node++) {
            start[node + 1] += start[node];
        }
        int[] next = start.clone();
        for (int k = 0; k < count; k++) {
            branch[next[branches[selection[k]].from]++] = selection[k];
            branch[next[branches[selection[k]].to]++] = selection[k];
        }
    }
}
