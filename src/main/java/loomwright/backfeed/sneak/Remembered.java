package loomwright.backfeed.sneak;

import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.LongFunction;
import loomwright.operation.SolvedStep;

/** Settings solved in full, by their code: so many at most, those asked for longest ago are forgotten first. */
final class Remembered {
    private final LongFunction<List<SolvedStep>> solver;
    private final Map<Long, List<SolvedStep>> solved;

    Remembered(int most, LongFunction<List<SolvedStep>> solver) {
        this.solver = solver;
        this.solved = new LinkedHashMap<>(16, 0.75f, true) {
            private static final long serialVersionUID = 1L;

            @Override
            protected boolean removeEldestEntry(Map.Entry<Long, List<SolvedStep>> eldest) {
                return size() > most;
            }
        };
    }

    List<SolvedStep> at(long code) {
        return solved.computeIfAbsent(code, solver::apply);
    }

    Collection<List<SolvedStep>> all() {
        return solved.values();
    }
}
