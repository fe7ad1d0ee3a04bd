package loomwright.diagnosis;

import java.util.ArrayList;
import java.util.List;

/** Puts together what the readings cannot tell apart. */
final class Ties {
    private Ties() {}

    /**
     * Groups candidates. The likeliest one that is left begins a group, and all that a meter would show alike join it.
     *
     * @param candidates likeliest first
     * @return groups, the order within and of their first ones kept
     */
    static List<List<FaultCandidate>> of(List<FaultCandidate> candidates, Likelihood likelihood) {
        List<List<FaultCandidate>> groups = new ArrayList<>();
        for (FaultCandidate candidate : candidates) {
            List<FaultCandidate> group = groups.stream()
                    .filter(g -> likelihood.alike(g.get(0).figures(), candidate.figures()))
                    .findFirst()
                    .orElse(null);
            if (group == null) {
                group = new ArrayList<>();
                groups.add(group);
            }
            group.add(candidate);
        }
        return groups;
    }
}
