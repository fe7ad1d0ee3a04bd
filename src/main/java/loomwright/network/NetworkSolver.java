package loomwright.network;

import java.util.List;
import java.util.stream.IntStream;
import loomwright.answer.Fault;
import loomwright.answer.Faults;
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

    public NetworkSolver(NetworkLimits limits) {
        this(limits, Progress.UNWATCHED);
    }

    /**
     * A solver that can be stopped.
     *
     * @param progress is told each Newton step; what it throws ends the solution
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
        return new Run(network).solve();
    }

    private void checkSize(Network network) {
        int nodes = network.nodes().size();
        int elements = network.elements().size();
        new Faults()
                .check(
                        nodes <= limits.maxNodes(),
                        Fault.Code.OVER_LIMIT,
                        "/nodes",
                        nodes,
                        "at most " + limits.maxNodes() + " nodes")
                .check(
                        elements <= limits.maxElements(),
                        Fault.Code.OVER_LIMIT,
                        "/elements",
                        elements,
                        "at most " + limits.maxElements() + " elements")
                .reject();
    }

    /** One solution in the making. */
    private final class Run {
        private final Network network;
        private final Branch[] branches;
        private final Findings findings;
        private final double[] idleV;
        private int iterations;

        Run(Network network) {
            this.network = network;
            this.findings = new Findings(network);
            branches = new Branch[network.elements().size()];
            for (int b = 0; b < branches.length; b++) {
                branches[b] = Branch.of(network.elements().get(b));
            }
            idleV = new double[branches.length];
        }

        Solution solve() {
            Contraction contraction = contract(branches);
            if (findings.prevent()) {
                return Solution.none(iterations, findings.list());
            }
            double[] start = new double[network.nodes().size()];
            if (has(Branch.ConstantPower.class)) {
                NewtonLoop idle = settle(contract(idle(softened())), start);
                if (findings.prevent()) {
                    return Solution.none(iterations, findings.list());
                }
                start = idle.point.nodeV();
                System.arraycopy(idle.point.voltage, 0, idleV, 0, idleV.length);
            }
            if (has(Branch.OneWayBranch.class)) {
                return solveOneWays(start);
            }
            NewtonLoop settled = settle(contraction, start);
            return finish(settled, findings.prevent() ? Outcome.NONE : new Outcome(settled));
        }

        private boolean has(Class<? extends Branch> kind) {
            for (Branch branch : branches) {
                if (kind.isInstance(branch)) {
                    return true;
                }
            }
            return false;
        }

        /** Finds the states with slopes that are not ideal, then fixes them, and corrects those that prove wrong. */
        private Solution solveOneWays(double[] start) {
            Branch[] soft = softened();
            NewtonLoop settled = settle(contract(soft), start);
            if (findings.prevent()) {
                return Solution.none(iterations, findings.list());
            }
            OneWayStates states = new OneWayStates(soft, settled.point.drive);
            List<Integer> wrong = List.of();
            for (int round = 0; round < limits.maxIterations(); round++) {
                NewtonLoop clean = clean(states, settled);
                if (findings.prevent()) {
                    return Solution.none(iterations, findings.list());
                }
                Outcome outcome = new Outcome(clean);
                wrong = states.contradicted(
                        network, outcome, clean.point.voltage, scale(clean.point.voltage), scale(outcome.currentA));
                if (wrong.isEmpty()) {
                    return finish(clean, outcome);
                }
                // All at once is quick but may go round in circles; the first alone does not in regular networks
                // (K. G. Murty's least-index rule for complementarity problems, from memory).
                for (int b : round < 5 ? wrong : wrong.subList(0, 1)) {
                    states.change(b, outcome);
                }
                settled = clean;
            }
            throw new NoConvergence(iterations, 0, ids(wrong));
        }

        private NewtonLoop clean(OneWayStates states, NewtonLoop settled) {
            Contraction trial = new Contraction(network.nodes().size(), network.reference(), states.fixed(network));
            OperatingPoint point = settled.point;
            double[] nodeV = point.nodeV();
            Islands islands = new OperatingPoint(trial, nodeV).islands();
            boolean bridged = states.bridgeIslands(islands, trial, nodeV, point.voltage, scale(point.voltage));
            return settle(bridged ? contract(states.fixed(network)) : checked(trial), nodeV);
        }

        /** One-way elements with a slope that is small, but not so small that the matrix suffers. */
        private Branch[] softened() {
            double largestS = 0;
            for (Branch branch : branches) {
                if (branch instanceof Branch.Linear linear) {
                    largestS = Math.max(largestS, linear.conductanceS);
                }
            }
            double leastOhm = largestS == 0 ? 1e-3 : 1e-3 / largestS;
            Branch[] soft = branches.clone();
            for (int b = 0; b < soft.length; b++) {
                if (network.elements().get(b) instanceof OneWay oneWay) {
                    soft[b] = new Branch.OneWayBranch(oneWay, Math.max(leastOhm, oneWay.slopeOhm()));
                }
            }
            return soft;
        }

        private Branch[] idle(Branch[] all) {
            Branch[] idle = all.clone();
            for (int b = 0; b < idle.length; b++) {
                if (idle[b] instanceof Branch.ConstantPower load) {
                    idle[b] = load.idle();
                }
            }
            return idle;
        }

        private Contraction contract(Branch[] all) {
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
            OperatingPoint point = new OperatingPoint(contraction, start);
            NewtonLoop loop = new NewtonLoop(point, eliminations);
            if (findings.prevent()) {
                return loop;
            }
            boolean settled = loop.run(limits.maxIterations(), progress);
            iterations += loop.iterations;
            if (loop.withoutReturn >= 0) {
                findings.noReturn(loop);
            } else if (!settled) {
                throw new NoConvergence(iterations, point.residual(), nonlinear());
            }
            return loop;
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
                if (branches[b] instanceof Branch.ConstantPower load) {
                    findings.load(b, load.minimumV, Math.abs(idleV[b]), Math.abs(settled.point.voltage[b]));
                }
            }
            return Solution.of(outcome, iterations, findings.list());
        }

        private List<String> nonlinear() {
            return ids(IntStream.range(0, branches.length)
                    .filter(b -> !(branches[b] instanceof Branch.Linear || branches[b] instanceof Branch.Ideal))
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
