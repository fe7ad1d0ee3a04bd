package loomwright.diagnosis;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import loomwright.circuit.fault.SingleFault;
import loomwright.circuit.fault.SizedFault;
import org.jspecify.annotations.Nullable;

/** Puts faults into the plan and compares what a meter would show with what it showed. */
final class Trials {
    private final Bench bench;
    private final Likelihood likelihood;
    private final @Nullable FaultCandidate sound;
    private int unsolved;

    Trials(Bench bench, Likelihood likelihood) {
        this.bench = bench;
        this.likelihood = likelihood;
        this.sound = of(List.of(), Set.of()).orElse(null);
    }

    /** The plan as drawn; null if it has no solution. */
    @Nullable
    FaultCandidate sound() {
        return sound;
    }

    Bench bench() {
        return bench;
    }

    Likelihood likelihood() {
        return likelihood;
    }

    /** How many trials had no solution. */
    int unsolved() {
        return unsolved;
    }

    /**
     * Weighs faults: ln w = ln odds + ln L − k/2 · ln n for k fitted sizes and n readings (G. Schwarz, Estimating the
     * dimension of a model, 1978, from memory).
     *
     * @return empty if the plan has no solution with them
     */
    Optional<FaultCandidate> of(List<SingleFault> faults, Set<String> fusesBlown) {
        Optional<FaultCandidate> tried = bench.measure(faults, fusesBlown, likelihood.measurements())
                .map(measured -> weighed(faults, fusesBlown, measured));
        if (tried.isEmpty()) {
            unsolved++;
        }
        return tried;
    }

    /**
     * The same, of what lasts until a reading is taken.
     *
     * @return empty also if they open a fuse before a reading that is not among those blown
     */
    Optional<FaultCandidate> lasting(List<SingleFault> faults, Set<String> fusesBlown) {
        return of(faults, fusesBlown).filter(this::lasts);
    }

    /** Whether no fuse opens before a reading could be taken. */
    boolean lasts(FaultCandidate candidate) {
        return sound == null || sound.openingBeforeAReading().containsAll(candidate.openingBeforeAReading());
    }

    /** The fuses that these faults open; not those that the plan as drawn opens. */
    Set<String> opening(FaultCandidate candidate) {
        Set<String> opening = new LinkedHashSet<>(candidate.opening());
        Set<String> soonest = new LinkedHashSet<>(candidate.openingBeforeAReading());
        if (sound != null) {
            opening.removeAll(sound.opening());
            soonest.removeAll(sound.openingBeforeAReading());
        }
        opening.addAll(soonest);
        return opening;
    }

    private FaultCandidate weighed(List<SingleFault> faults, Set<String> fusesBlown, Bench.Measured measured) {
        PredictedFigures figures = measured.figures();
        Fit fit = likelihood.of(figures);
        long fitted = faults.stream().filter(SizedFault.class::isInstance).count();
        double logWeight = Priors.log(faults) + fit.logLikelihood() - fitted * Math.log(figures.count()) / 2;
        return new FaultCandidate(
                faults, fusesBlown, measured.opening(), measured.openingBeforeAReading(), figures, fit, logWeight);
    }
}
