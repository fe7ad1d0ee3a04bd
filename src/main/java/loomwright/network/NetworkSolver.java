package loomwright.network;

import static loomwright.message.Arg.arg;

import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import loomwright.answer.Accepted;
import loomwright.answer.InputError;
import loomwright.answer.InputErrors;
import loomwright.answer.Progress;

/**
 * Solves networks of linear and nonlinear two-terminal elements.
 *
 * <p>Kirchhoff's laws with the law of each element; nodal analysis on supernodes (see {@link Contraction}). Ideal
 * branches have no equation: their currents follow afterwards. Nonlinear elements by Newton's method (see {@link
 * NewtonLoop}); the states of one-way elements are then fixed and solved once more, so that a blocking element is open
 * and an ideal one has no resistance. Every solution is checked before it is handed out: the currents at each node add
 * up to zero within 1e-9 of the largest current, and power given equals power taken.
 *
 * <p>Cost: near-linear on harnesses and ladders, the power 1.5 of the size on grids.
 *
 * <p>Holds work space, so an instance is for one thread at a time.
 *
 * <p>Source: general circuit theory, from memory; see the package.
 */
public final class NetworkSolver {
    private static final double CHECKED = 1e-9;

    private final NetworkLimits limits;
    private final Progress progress;
    private final Eliminations eliminations = new Eliminations();
    private final Eliminations leaks = new Eliminations();

    public NetworkSolver(NetworkLimits limits) {
        this(limits, Progress.UNWATCHED);
    }

    /**
     * A solver that can be stopped.
     *
     * @param progress hears of each Newton step; what it throws ends the solution
     */
    public NetworkSolver(NetworkLimits limits, Progress progress) {
        this.limits = limits;
        this.progress = progress;
    }

    /**
     * Solves a network.
     *
     * @return figures per node and element, or the findings that say why there are none
     * @throws loomwright.answer.RejectedInput OVER_LIMIT if it is larger than the limits
     * @throws NoConvergence if the nonlinear elements do not settle within the limits
     */
    public Solution solve(Network network) {
        checkSize(network);
        return RemoteSensing.solve(network, this::solveOnce);
    }

    private Solution solveOnce(Network network) {
        boolean constantPower = network.elements().stream().anyMatch(PowerLoad.class::isInstance);
        if (!constantPower) {
            return new Run(network, PowerStart.IDLE).solve();
        }
        NoConvergence failed = null;
        Solution solution = null;
        try {
            solution = new Run(network, PowerStart.IDLE).solve();
        } catch (NoConvergence none) {
            failed = none;
        }
        if (solution != null && solution.solved()) {
            return solution;
        }
        try {
            Solution other = new Run(network, PowerStart.BELOW_MINIMUM).solve();
            if (other.solved() || solution == null) {
                return other;
            }
        } catch (NoConvergence none) {
            if (failed != null) {
                throw failed;
            }
        }
        return Objects.requireNonNull(solution);
    }

    /** What constant-power loads take where Newton's method begins. */
    private enum PowerStart {
        /** Next to nothing, so that of several solutions that of higher voltage is found. */
        IDLE,
        /** What they take as resistors below their minimum: some networks, such as a source of current, have no other solution. */
        BELOW_MINIMUM
    }

    private void checkSize(Network network) {
        InputErrors faults = new InputErrors();
        checkSize(faults, "nodes", network.nodes().size(), limits.maxNodes());
        checkSize(faults, "elements", network.elements().size(), limits.maxElements());
        faults.reject();
    }

    private static void checkSize(InputErrors faults, String what, int count, int most) {
        if (count > most) {
            faults.check(
                    false, InputError.Code.OVER_LIMIT, "/" + what, count, Accepted.ENTRIES_AT_MOST, arg("max", most));
        }
    }

    /** One solution in the making. */
    private final class Run {
        private final Network network;
        private final BranchLaw[] branches;
        private final Findings findings;
        private final PowerStart start;
        private final double[] idleV;
        private int iterations;

        Run(Network network, PowerStart start) {
            this.network = network;
            this.start = start;
            this.findings = new Findings(network);
            branches = new BranchLaw[network.elements().size()];
            for (int b = 0; b < branches.length; b++) {
                branches[b] = BranchLaw.of(network.elements().get(b));
            }
            idleV = new double[branches.length];
        }

        Solution solve() {
            Contraction contraction = contract(branches);
            if (findings.prevent()) {
                return Solution.none(iterations, findings.list());
            }
            double[] guess = firstGuess();
            if (has(BranchLaw.ConstantPower.class::isInstance)) {
                NewtonLoop linear = settle(contract(withLinearLoads(softened())), guess);
                if (findings.prevent()) {
                    return Solution.none(iterations, findings.list());
                }
                guess = linear.point.nodeV();
                if (start == PowerStart.IDLE) {
                    System.arraycopy(linear.point.voltage, 0, idleV, 0, idleV.length);
                } else {
                    Arrays.fill(idleV, Element.MAXIMUM_V);
                }
            }
            if (has(BranchLaw.OneWayBranch.class::isInstance)) {
                return solveOneWays(guess);
            }
            NewtonLoop settled = settle(contraction, guess);
            return finish(settled, findings.prevent() ? Outcome.NONE : new Outcome(settled));
        }

        /**
         * Potentials to start from: none, or where there are sources behind a rectifier one step towards what they would
         * be if these gave current without limit. From 0 V they are at their limit and pull the network far to the other
         * side.
         */
        private double[] firstGuess() {
            double[] nodeV = new double[network.nodes().size()];
            if (!has(Run::isRectifiedSource)) {
                return nodeV;
            }
            BranchLaw[] guess = withLinearLoads(softened());
            for (int b = 0; b < guess.length; b++) {
                if (isRectifiedSource(branches[b]) && guess[b] instanceof BranchLaw.OneWayBranch source) {
                    guess[b] = new BranchLaw.Linear(source.from, source.to, source.biasV, 1 / source.slopeOhm, 0);
                }
            }
            NewtonLoop loop = new NewtonLoop(new OperatingPoint(contract(guess), nodeV), eliminations);
            loop.run(1, progress);
            iterations += loop.iterations;
            return loop.point.nodeV();
        }

        private static boolean isRectifiedSource(BranchLaw branch) {
            return branch instanceof BranchLaw.OneWayBranch && branch.biasV > 0;
        }

        private boolean has(Predicate<BranchLaw> kind) {
            for (BranchLaw branch : branches) {
                if (kind.test(branch)) {
                    return true;
                }
            }
            return false;
        }

        /**
         * Finds the states with slopes that are not ideal; unless these were the true ones, then fixes the states and
         * corrects those that prove wrong.
         */
        private Solution solveOneWays(double[] start) {
            BranchLaw[] soft = softened();
            // States that are not yet right are corrected below.
            NewtonLoop settled = approach(new OperatingPoint(contract(soft), start));
            if (findings.prevent()) {
                return Solution.none(iterations, findings.list());
            }
            OneWayStates states = new OneWayStates(network, soft, settled.point.drive);
            boolean inLaw = settled.settled && states.asInLaw();
            double[] currentA = settled.point.current;
            List<Integer> wrong = List.of();
            for (int round = 0; round < limits.maxIterations(); round++) {
                NewtonLoop loop = inLaw && round == 0 ? settled : clean(states, settled, currentA);
                if (findings.prevent()) {
                    return Solution.none(iterations, findings.list());
                }
                Outcome outcome = new Outcome(loop);
                double scaleV = scale(loop.point.voltage);
                double scaleA = scale(outcome.currentA);
                wrong = states.contradicted(outcome, loop.point.voltage, scaleV, scaleA);
                if (wrong.isEmpty() && !states.mayHang(outcome, loop.point.voltage, scaleA, scaleV)) {
                    return finish(loop, outcome);
                }
                if (wrong.isEmpty()) {
                    FloatingNodePlacement leak = new FloatingNodePlacement(
                            network, loop.point, states, outcome, scaleV, scaleA, leaks, progress);
                    iterations += leak.iterations;
                    if (leak.violated.isEmpty()) {
                        return finish(loop, new Outcome(loop, leak));
                    }
                    wrong = leak.violated;
                }
                // All at once is quick but may go round in circles; the first alone does not in regular networks
                // (K. G. Murty's least-index rule for complementarity problems, from memory).
                for (int b : round < 5 ? wrong : wrong.subList(0, 1)) {
                    states.change(b, outcome);
                }
                settled = loop;
                currentA = outcome.currentA;
            }
            throw new NoConvergence(iterations, 0, ids(wrong));
        }

        /**
         * Solves with the states fixed.
         *
         * @param currentA as they were last, to tell which of several conducting elements is the first to give way
         */
        private NewtonLoop clean(OneWayStates states, NewtonLoop settled, double[] currentA) {
            while (true) {
                Contraction fixed = checked(withoutFalseLoops(states, currentA));
                NewtonLoop loop = new NewtonLoop(new OperatingPoint(fixed, settled.point.nodeV()), eliminations);
                if (findings.prevent()) {
                    return loop;
                }
                run(loop);
                // Had the network itself no return for a current, the search for the states would have shown it.
                if (loop.withoutReturn < 0 || !states.releaseLimits(loop)) {
                    return settled(withReturn(loop));
                }
            }
        }

        /** With the states corrected where ideal branches and conducting ideal elements make a loop that cannot be. */
        private Contraction withoutFalseLoops(OneWayStates states, double[] currentA) {
            while (true) {
                Contraction fixed = new Contraction(network.nodes().size(), network.reference(), states.fixed());
                boolean changed = false;
                for (int k = 0; !changed && k < fixed.closing.length; k++) {
                    changed = fixed.conflicts(fixed.closing[k])
                            && states.resolveConflict(fixed, fixed.closing[k], currentA);
                }
                if (!changed) {
                    return fixed;
                }
            }
        }

        /** One-way elements with a slope that is small, but not so small that the matrix suffers. */
        private BranchLaw[] softened() {
            double largestS = 0;
            for (BranchLaw branch : branches) {
                if (branch instanceof BranchLaw.Linear linear) {
                    largestS = Math.max(largestS, linear.conductanceS);
                }
            }
            double leastOhm = largestS == 0 ? 1e-3 : 1e-3 / largestS;
            BranchLaw[] soft = branches.clone();
            for (int b = 0; b < soft.length; b++) {
                if (network.elements().get(b) instanceof UnidirectionalElement oneWay) {
                    soft[b] = new BranchLaw.OneWayBranch(oneWay, Math.max(leastOhm, oneWay.slopeOhm()));
                }
            }
            return soft;
        }

        private BranchLaw[] withLinearLoads(BranchLaw[] all) {
            BranchLaw[] linear = all.clone();
            for (int b = 0; b < linear.length; b++) {
                if (linear[b] instanceof BranchLaw.ConstantPower load) {
                    linear[b] = start == PowerStart.IDLE ? load.idle() : load.belowMinimum();
                }
            }
            return linear;
        }

        private Contraction contract(BranchLaw[] all) {
            return checked(new Contraction(network.nodes().size(), network.reference(), all));
        }

        private Contraction checked(Contraction contraction) {
            for (int closing : contraction.closing) {
                if (contraction.conflicts(closing)) {
                    findings.conflict(contraction, closing);
                }
            }
            return contraction;
        }

        private NewtonLoop settle(Contraction contraction, double[] start) {
            return settle(new OperatingPoint(contraction, start));
        }

        private NewtonLoop settle(OperatingPoint point) {
            return settled(approach(point));
        }

        private NewtonLoop settled(NewtonLoop loop) {
            if (!findings.prevent() && !loop.settled) {
                throw new NoConvergence(iterations, loop.point.residual(), nonlinear());
            }
            return loop;
        }

        /** Goes as near to rest as the limits allow. */
        private NewtonLoop approach(OperatingPoint point) {
            NewtonLoop loop = new NewtonLoop(point, eliminations);
            if (!findings.prevent()) {
                run(loop);
            }
            return withReturn(loop);
        }

        private NewtonLoop withReturn(NewtonLoop loop) {
            if (loop.withoutReturn >= 0) {
                findings.noReturn(loop);
            }
            return loop;
        }

        private void run(NewtonLoop loop) {
            loop.run(limits.maxIterations(), progress);
            iterations += loop.iterations;
        }

        private Solution finish(NewtonLoop settled, Outcome outcome) {
            if (findings.prevent()) {
                return Solution.none(iterations, findings.list());
            }
            if (outcome.kirchhoffResidual > CHECKED || outcome.powerResidual > CHECKED) {
                throw new NoConvergence(
                        iterations, Math.max(outcome.kirchhoffResidual, outcome.powerResidual), nonlinear());
            }
            findings.undetermined(settled.point.contraction);
            findings.floating(outcome);
            for (int b = 0; b < branches.length; b++) {
                if (branches[b] instanceof BranchLaw.ConstantPower load) {
                    findings.load(b, load.minimumV, Math.abs(idleV[b]), Math.abs(settled.point.voltage[b]));
                }
            }
            return Solution.of(outcome, iterations, findings.list());
        }

        private List<String> nonlinear() {
            return ids(IntStream.range(0, branches.length)
                    .filter(b -> !(branches[b] instanceof BranchLaw.Linear || branches[b] instanceof BranchLaw.Ideal))
                    .boxed()
                    .toList());
        }

        private List<String> ids(List<Integer> elements) {
            return elements.stream().map(b -> network.elements().get(b).id()).toList();
        }

        private static double scale(double[] values) {
            double largest = 1e-3;
            for (double value : values) {
                largest = Math.max(largest, Math.abs(value));
            }
            return largest;
        }
    }
}
