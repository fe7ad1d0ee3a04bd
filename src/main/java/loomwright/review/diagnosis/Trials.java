package loomwright.review.diagnosis;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import loomwright.operation.fault.BadJoint;
import loomwright.operation.fault.SingleFault;

/** Puts faults into the plan and compares what a meter would show with what it showed. */
final class Trials {
    private final Bench bench;
    private final Likelihood likelihood;
    private int unsolved;

    Trials(Bench bench, Likelihood likelihood) {
        this.bench = bench;
        this.likelihood = likelihood;
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
    Optional<Candidate> of(List<SingleFault> faults, Set<String> fusesBlown) {
        Optional<Candidate> tried = bench.measure(faults, fusesBlown, likelihood.measurements())
                .map(measured -> weighed(faults, fusesBlown, measured));
        if (tried.isEmpty()) {
            unsolved++;
        }
        return tried;
    }

    private Candidate weighed(List<SingleFault> faults, Set<String> fusesBlown, Bench.Measured measured) {
        Figures figures = measured.figures();
        Fit fit = likelihood.of(figures);
        long fitted = faults.stream().filter(BadJoint.class::isInstance).count();
        double logWeight = Priors.log(faults) + fit.logLikelihood() - fitted * Math.log(figures.count()) / 2;
        return new Candidate(faults, fusesBlown, measured.opening(), figures, fit, logWeight);
    }
}
