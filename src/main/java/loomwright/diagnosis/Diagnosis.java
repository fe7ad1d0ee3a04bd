package loomwright.diagnosis;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import loomwright.circuit.fault.SingleFault;
import loomwright.operation.Probe;
import org.jspecify.annotations.Nullable;

/** What was found by trying faults: groups that the readings cannot tell apart, likeliest first, with their probabilities. */
final class Diagnosis {
    /** Explanations that are reported. */
    private static final int MOST_REPORTED = 20;
    /** Below this a fault counts as excluded. */
    static final double EXCLUDED = 1e-3;
    /** No part is accused with more before something was measured across it, or with a reading left unexplained. */
    static final double MOST_UNCONFIRMED = 0.89;
    /** From this probability on an explanation leads. */
    static final double LEADS = 0.5;
    /** From this probability on an explanation takes the place of "no fault" if a sign contradicts that. */
    private static final double COMPLAINED = 0.05;
    /** Candidates that the next readings are to tell apart, and groups they are taken from. */
    private static final int MOST_LEADING = 16;

    private static final int LEADING_GROUPS = 8;
    /** Candidates of about this logarithm of weight below the best are weighed with all tolerances, at most so many. */
    private static final double IN_THE_RUNNING = 12;

    private static final int MOST_CLOSER = 60;

    private final DiagnosisQuestion question;
    private final Bench bench;
    private final Trials trials;
    private final @Nullable FaultCandidate sound;
    private final List<List<FaultCandidate>> groups = new ArrayList<>();
    private final List<List<FaultCandidate>> reported = new ArrayList<>();
    private final int singles;
    private final int pairs;
    private final int notShown;
    private final double unexplainedLog;
    private double highest;
    private double total;

    /**
     * Tries.
     *
     * @param bench of the question's plan
     */
    Diagnosis(DiagnosisQuestion question, DiagnosisLimits limits, Bench bench) {
        this.question = question;
        this.bench = bench;
        this.trials = new Trials(bench, new Likelihood(question, Unsaid.of(question, bench)));
        FaultSearch search = new FaultSearch(trials, limits);
        this.sound = trials.sound();
        List<FaultCandidate> all = search.singles();
        this.singles = all.size();
        Likelihood likelihood = trials.likelihood();
        List<FaultCandidate> shown = all.stream()
                .filter(c -> sound == null || !likelihood.alike(c.figures(), sound.figures()))
                .toList();
        this.notShown = singles - shown.size();
        List<FaultCandidate> closer = closer(shown);
        double prior = Math.log(Priors.UNEXPLAINED);
        this.unexplainedLog = prior + likelihood.ofUnexplained(sound == null ? null : sound.figures());
        weigh(closer, List.of());
        boolean oneIsEnough = groups.get(0).get(0).fit().explains();
        List<FaultCandidate> both = oneIsEnough ? List.of() : closer(search.pairs(shown));
        this.pairs = search.pairs();
        if (!both.isEmpty()) {
            weigh(closer, both);
        }
        for (List<FaultCandidate> group : groups) {
            if (reported.size() < MOST_REPORTED && (probability(group) >= EXCLUDED || reported.isEmpty())) {
                reported.add(group);
            }
        }
    }

    private List<FaultCandidate> closer(List<FaultCandidate> rough) {
        double least = Stream.concat(Stream.ofNullable(trials.roughlySound()), rough.stream())
                        .mapToDouble(FaultCandidate::logWeight)
                        .max()
                        .orElse(0)
                - IN_THE_RUNNING;
        return rough.stream()
                .filter(c -> c.logWeight() > least)
                .limit(MOST_CLOSER)
                .map(trials::closer)
                .sorted(FaultSearch.LIKELIEST_FIRST)
                .toList();
    }

    private void weigh(List<FaultCandidate> single, List<FaultCandidate> both) {
        groups.clear();
        if (sound != null) {
            groups.add(List.of(sound));
        }
        groups.addAll(Ties.of(single, trials.likelihood()));
        groups.addAll(Ties.of(both, trials.likelihood()));
        sum();
        groups.sort(Comparator.comparingDouble((List<FaultCandidate> g) -> Math.rint(1e9 * weight(g) / total))
                .reversed());
        // Many things that fit no better than no fault at all are no reason to accuse anything.
        if (sound != null && sound.fit().explains()) {
            boolean none = groups.stream().flatMap(List::stream).allMatch(c -> c.logWeight() <= sound.logWeight());
            if (none) {
                groups.remove(List.of(sound));
                groups.add(0, List.of(sound));
            }
        }
        // What somebody complains of is so: "no fault" is no answer to it as long as a fault is.
        if (sound != null
                && contradictedBySigns(sound)
                && groups.stream().anyMatch(g -> g.get(0).fit().explains() && weight(g) / total >= COMPLAINED)) {
            groups.remove(List.of(sound));
            sum();
        }
    }

    /** What probabilities are shares of. */
    private void sum() {
        highest = Stream.concat(
                        groups.stream().flatMap(List::stream).map(FaultCandidate::logWeight), Stream.of(unexplainedLog))
                .mapToDouble(w -> w)
                .max()
                .orElse(0);
        total = Math.exp(unexplainedLog - highest)
                + groups.stream().mapToDouble(this::weight).sum();
    }

    private boolean contradictedBySigns(FaultCandidate candidate) {
        return !candidate.fit().explains()
                && candidate.fit().wrong().stream()
                        .allMatch(i -> trials.likelihood().measurements().get(i).part() != null);
    }

    private double weight(List<FaultCandidate> group) {
        return group.stream()
                .mapToDouble(c -> Math.exp(c.logWeight() - highest))
                .sum();
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

    /** What is worth reporting, likeliest first; the candidates of a group are tied. */
    List<List<FaultCandidate>> groups() {
        return reported;
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
        double p = Math.exp(candidate.logWeight() - highest) / total;
        List<FaultCandidate> first = groups.get(0);
        return first.contains(candidate) ? p * capped() : p;
    }

    double probability(List<FaultCandidate> group) {
        return group.stream().mapToDouble(this::probability).sum();
    }

    /** By what the likeliest explanation has to be made less likely, because nobody measured where it is. */
    private double capped() {
        List<FaultCandidate> first = groups.get(0);
        boolean open = !first.get(0).sound()
                && (!first.get(0).fit().explains() || (first.size() == 1 && !confirmed(first.get(0))));
        double p = weight(first) / total;
        return open && p > MOST_UNCONFIRMED ? MOST_UNCONFIRMED / p : 1;
    }

    /** Probability that it is something that was not tried. */
    double unexplained() {
        double told = Math.exp(unexplainedLog - highest) / total;
        return told + weight(groups.get(0)) / total * (1 - capped());
    }

    /** Whether something was measured across all that a candidate accuses. */
    boolean confirmed(FaultCandidate candidate) {
        return candidate.faults().stream()
                .allMatch(f -> Confirmation.across(f, question.plan())
                        .map(across ->
                                Confirmation.taken(across, trials.likelihood().measurements()))
                        .orElse(true));
    }

    /** Across the first fault of a candidate that has not been measured at. */
    Optional<Probe> toConfirm(FaultCandidate candidate) {
        for (SingleFault fault : candidate.faults()) {
            Optional<Probe> across = Confirmation.across(fault, question.plan());
            if (across.isPresent()
                    && !Confirmation.taken(across.get(), trials.likelihood().measurements())) {
                return across;
            }
        }
        return Optional.empty();
    }

    /** Some of each of the first groups, in turn. */
    List<FaultCandidate> leading() {
        List<FaultCandidate> leading = new ArrayList<>();
        List<List<FaultCandidate>> from =
                reported.stream().limit(LEADING_GROUPS).toList();
        for (int k = 0; k < MOST_LEADING && leading.size() < MOST_LEADING; k++) {
            for (List<FaultCandidate> group : from) {
                if (k < group.size() && leading.size() < MOST_LEADING) {
                    leading.add(group.get(k));
                }
            }
        }
        return leading;
    }

    Bench bench() {
        return bench;
    }
}
