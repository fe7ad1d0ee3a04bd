package loomwright.diagnosis;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** What was found by trying faults: groups that the readings cannot tell apart, likeliest first, with their probabilities. */
final class Diagnosis {
    /** Explanations that are told. */
    private static final int MOST_TOLD = 10;
    /** Less likely ones are told only if they go with every reading. */
    private static final double WORTH_TELLING = 1e-3;
    /** Candidates that the next readings are to tell apart, and groups they are taken from. */
    private static final int MOST_LEADING = 16;

    private static final int LEADING_GROUPS = 6;

    private final DiagnosisQuestion question;
    private final Bench bench;
    private final Trials trials;
    private final @Nullable FaultCandidate sound;
    private final List<List<FaultCandidate>> told = new ArrayList<>();
    private final int singles;
    private final int pairs;
    private final int notShown;
    private final double highest;
    private final double total;

    /**
     * Tries.
     *
     * @param bench of the question's plan
     */
    Diagnosis(DiagnosisQuestion question, DiagnosisLimits limits, Bench bench) {
        this.question = question;
        this.bench = bench;
        this.trials = new Trials(bench, new Likelihood(question));
        FaultSearch search = new FaultSearch(trials, limits);
        this.sound = trials.sound();
        List<FaultCandidate> all = search.singles();
        this.singles = all.size();
        Likelihood likelihood = trials.likelihood();
        List<FaultCandidate> shown = all.stream()
                .filter(c -> sound == null || !likelihood.alike(c.figures(), sound.figures()))
                .toList();
        this.notShown = singles - shown.size();
        boolean oneIsEnough = Stream.concat(Stream.ofNullable(sound), shown.stream())
                .anyMatch(c -> c.fit().explains());
        List<FaultCandidate> both = oneIsEnough ? List.of() : search.pairs(shown);
        this.pairs = search.pairs();
        List<List<FaultCandidate>> groups = new ArrayList<>();
        if (sound != null) {
            groups.add(List.of(sound));
        }
        groups.addAll(Ties.of(shown, likelihood));
        groups.addAll(Ties.of(both, likelihood));
        this.highest = groups.stream()
                .flatMap(List::stream)
                .mapToDouble(FaultCandidate::logWeight)
                .max()
                .orElse(0);
        this.total = groups.stream()
                .flatMap(List::stream)
                .mapToDouble(c -> Math.exp(c.logWeight() - highest))
                .sum();
        groups.sort(Comparator.comparingDouble((List<FaultCandidate> g) -> Math.rint(1e9 * probability(g)))
                .reversed());
        tell(groups);
    }

    private void tell(List<List<FaultCandidate>> groups) {
        for (List<FaultCandidate> group : groups) {
            boolean worth = group.get(0).fit().explains() || probability(group) >= WORTH_TELLING || told.isEmpty();
            if (worth && told.size() < MOST_TOLD) {
                told.add(group);
            }
        }
    }

    DiagnosisQuestion question() {
        return question;
    }

    Trials trials() {
        return trials;
    }

    @Nullable
    FaultCandidate sound() {
        return sound;
    }

    /** What is worth telling, likeliest first; the candidates of a group are tied. */
    List<List<FaultCandidate>> groups() {
        return told;
    }

    int singles() {
        return singles;
    }

    int pairs() {
        return pairs;
    }

    /** Single faults that change none of the readings. */
    int notShown() {
        return notShown;
    }

    double probability(FaultCandidate candidate) {
        return Math.exp(candidate.logWeight() - highest) / total;
    }

    double probability(List<FaultCandidate> group) {
        return group.stream().mapToDouble(this::probability).sum();
    }

    /** Some of each of the first groups, in turn. */
    List<FaultCandidate> leading() {
        List<FaultCandidate> leading = new ArrayList<>();
        List<List<FaultCandidate>> from = told.stream()
                .limit(LEADING_GROUPS)
                .filter(g -> probability(g) >= WORTH_TELLING)
                .toList();
        for (int k = 0; k < MOST_LEADING && leading.size() < MOST_LEADING; k++) {
            for (List<FaultCandidate> group : from) {
                if (k < group.size() && leading.size() < MOST_LEADING) {
                    leading.add(group.get(k));
                }
            }
        }
        return leading;
    }

    List<NextReadings.Chosen> nextReadings(List<FaultCandidate> leading) {
        if (leading.size() < 2) {
            return List.of();
        }
        List<Double> weights = leading.stream().map(this::probability).toList();
        return new NextReadings(bench, question).of(leading, weights);
    }
}
