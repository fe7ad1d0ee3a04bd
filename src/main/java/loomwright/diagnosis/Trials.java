package loomwright.diagnosis;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import loomwright.circuit.fault.SingleFault;
import org.jspecify.annotations.Nullable;

/** Puts faults into the plan and compares what a meter would show with what it showed. */
final class Trials {
    /** In a vehicle within tolerance less may flow than the plan has it (common practice, no source). */
    private static final double MELTS_FOR_SURE = 1.25;

    private final Bench bench;
    private final Likelihood likelihood;
    private final @Nullable FaultCandidate sound;
    private final @Nullable FaultCandidate roughlySound;
    private int unsolved;

    Trials(Bench bench, Likelihood likelihood) {
        this.bench = bench;
        this.likelihood = likelihood;
        this.sound = bench.measureWithSpread(List.of(), Set.of(), likelihood.predicted())
                .map(measured -> weighed(List.of(), Set.of(), measured))
                .orElse(null);
        this.roughlySound = bench.measure(List.of(), Set.of(), likelihood.predicted())
                .map(measured -> weighed(List.of(), Set.of(), measured))
                .orElse(null);
    }

    /** The plan as drawn, weighed as roughly as faults are at first, to be compared with those; null if it has no solution. */
    @Nullable
    FaultCandidate roughlySound() {
        return roughlySound;
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
     * Weighs faults: prior odds times likelihood.
     *
     * @return empty if the plan has no solution with them
     */
    Optional<FaultCandidate> of(List<SingleFault> faults, Set<String> fusesBlown) {
        Optional<FaultCandidate> tried = bench.measure(faults, fusesBlown, likelihood.predicted())
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

    /** Whether no fuse opens and no wire melts before a reading could be taken. */
    boolean lasts(FaultCandidate candidate) {
        return !candidate.melts()
                && (sound == null || sound.openingBeforeAReading().containsAll(candidate.openingBeforeAReading()));
    }

    /** The same candidate weighed with what every tolerance does to its own figures; itself if there is no solution. */
    FaultCandidate closer(FaultCandidate candidate) {
        return bench.measureWithSpread(candidate.faults(), candidate.fusesBlown(), likelihood.predicted())
                .map(measured -> weighed(candidate.faults(), candidate.fusesBlown(), measured))
                .orElse(candidate);
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
        FaultCandidate plain = roughlySound;
        boolean byMeter = plain == null || likelihood.toldByMeter(fit, plain.fit());
        double logWeight = Priors.log(faults, byMeter) + fit.logLikelihood();
        return new FaultCandidate(
                faults,
                fusesBlown,
                measured.opening(),
                measured.openingBeforeAReading(),
                measured.melting() >= MELTS_FOR_SURE,
                figures,
                fit,
                logWeight);
    }
}
