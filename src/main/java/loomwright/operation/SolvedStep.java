package loomwright.operation;

import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import loomwright.circuit.Consumer;
import loomwright.circuit.Load;
import loomwright.circuit.Motor;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.TerminalRef;
import loomwright.circuit.Wire;
import loomwright.network.Linearisation;
import loomwright.network.Network;
import loomwright.network.NetworkFinding;
import loomwright.network.Solution;

/**
 * A plan solved in one step. Voltages are to the chassis, currents positive from a branch's {@code from} to its
 * {@code to}.
 */
public final class SolvedStep implements StepFigures {
    private final Wiring wiring;
    private final Step step;
    private final Thresholds thresholds;
    private final StableState state;
    private final StepNetwork network;
    private final Solution solution;
    private final BitSet before;

    /**
     * What came out of a step.
     *
     * @param before the parts that were active when it began
     */
    SolvedStep(
            Wiring wiring,
            Step step,
            Thresholds thresholds,
            StableState state,
            StepNetwork network,
            Solution solution,
            BitSet before) {
        this.wiring = wiring;
        this.step = step;
        this.thresholds = thresholds;
        this.state = state;
        this.network = network;
        this.solution = solution;
        this.before = before;
    }

    @Override
    public Step step() {
        return step;
    }

    @Override
    public Plan plan() {
        return wiring.plan();
    }

    /** Whether there are figures at all. */
    @Override
    public boolean solved() {
        return state.outcome() != StableState.Outcome.UNSOLVABLE;
    }

    /** Whether relays and the like find no rest; the figures are then those of one moment. */
    public boolean oscillating() {
        return state.outcome() == StableState.Outcome.OSCILLATING;
    }

    /** Whether which of several states it comes to rest in depends on which part is quicker. */
    public boolean isRace() {
        return state.outcome() == StableState.Outcome.RACE;
    }

    /** Of a race, the states in which it may end, as the parts that are active then; that of the figures first. */
    public List<Set<String>> raceOutcomes() {
        return state.rests().stream().map(thresholds::ids).toList();
    }

    /** Whether every order of a race was looked at. */
    public boolean raceComplete() {
        return state.complete();
    }

    /** The parts that keep changing, or that race each other, by id. */
    public Set<String> movingParts() {
        return thresholds.ids(state.moving());
    }

    /** Whether a relay or solenoid is pulled in, a module works, a load is within its voltage limits. */
    public boolean isActive(Part part) {
        int bit = thresholds.bitOf(part.id());
        return bit >= 0 && state.active().get(bit);
    }

    /** Whether a consumer should be live, see {@link Intent#meantLive}. */
    public boolean isMeant(Consumer consumer) {
        return Intent.meantLive(consumer, plan(), step, wiring::chargeLamps);
    }

    /** Whether a consumer is a load that its own voltage limits keep off. */
    @Override
    public boolean isOff(Consumer consumer) {
        return consumer instanceof Load load && load.switches(plan().system()) && !isActive(load);
    }

    /** Whether a part was active already when the step began. */
    public boolean wasActive(Part part) {
        int bit = thresholds.bitOf(part.id());
        return bit >= 0 && before.get(bit);
    }

    /** The parts that are active, by id. */
    public Set<String> active() {
        return thresholds.ids(state.active());
    }

    StableState.Outcome outcome() {
        return state.outcome();
    }

    BitSet activeBits() {
        return state.active();
    }

    /** All branches, in a fixed order; the index is that of {@link #currentA(int)}. */
    public List<Branch> branches() {
        return network.branches();
    }

    /** Where the branches of a part begin, which stand together; those of wires and connectors come before all of these. */
    public int firstBranchOf(String partId) {
        return network.firstBranchOf(partId);
    }

    /** Where the branches of a part end: the first that is not one of them. */
    public int endBranchOf(String partId) {
        return network.endBranchOf(partId);
    }

    /** The part that a branch belongs to; empty for that of a wire or connector. */
    public Optional<Part> partOf(int branch) {
        Branch b = branches().get(branch);
        return b.owner() == Branch.Owner.PART ? Optional.of(wiring.partAt(wiring.placeOf(b.id()))) : Optional.empty();
    }

    Wiring.Run run(Wire wire) {
        return wiring.run(wire.id());
    }

    /** Current of a wire, A; 0 if both ends are one node, so that nothing can flow in it. */
    @Override
    public double currentA(Wire wire) {
        int branch = run(wire).branch();
        return branch < 0 ? 0 : currentA(branch);
    }

    @Override
    public double mostA(Part part) {
        double mostA = 0;
        for (int i = firstBranchOf(part.id()); solved() && i < endBranchOf(part.id()); i++) {
            mostA = Math.max(mostA, Math.abs(currentA(i)));
        }
        return mostA;
    }

    @Override
    public OptionalDouble volts(Probe probe) {
        return Meter.volts(this, probe);
    }

    public double currentA(int branch) {
        return solution.currentA(branch);
    }

    /**
     * Current of a branch in the direction of feed, A: positive when it takes the branch's {@code from} as the end nearer
     * the live pole, whichever pole that is.
     */
    public double feedA(int branch) {
        return plan().system().earthPolarity().feedSign() * currentA(branch);
    }

    /** Whether a branch is a directed wire that carries current against its feed direction. */
    public boolean isAgainstFeed(int branch) {
        Branch b = branches().get(branch);
        return b.owner() == Branch.Owner.WIRE
                && feedA(branch) < -FeedStrength.TRICKLE_A
                && wiring.run(b.id()).wire().directed();
    }

    /** Power a branch takes up, W; negative if it delivers. */
    public double powerW(int branch) {
        return solution.powerW(branch);
    }

    /** Names of the nodes: {@code chassis}, or the first of the terminals joined there. */
    public List<String> nodeNames() {
        return wiring.nodeNames();
    }

    public int node(TerminalRef terminal) {
        return wiring.node(terminal);
    }

    public int node(Point point) {
        return wiring.node(point);
    }

    /** Whether something that conducts joins two nodes, so that one has a voltage against the other. */
    public boolean joined(int node, int other) {
        return solution.island(node) == solution.island(other);
    }

    /** Whether a node is the chassis, or joined to it without resistance. */
    public boolean isChassis(int node) {
        return node == Wiring.CHASSIS_NODE;
    }

    /** The terminals that are joined at a node. */
    public List<String> terminalsOf(int node) {
        return wiring.terminalsOf(node);
    }

    /** Voltage of a node to the chassis, V; empty where nothing joins it to the chassis. */
    public OptionalDouble voltageV(int node) {
        return solution.floating(node) ? OptionalDouble.empty() : OptionalDouble.of(solution.voltageV(node));
    }

    /** Voltage of one terminal against another, V; 0 where nothing joins them. */
    public double acrossV(TerminalRef terminal, TerminalRef other) {
        return acrossV(wiring.node(terminal), wiring.node(other));
    }

    /** Voltage of one node against another, V; 0 where nothing joins them. */
    public double acrossV(int node, int other) {
        return NodeVoltages.across(solution, node, other);
    }

    /** Voltage from a consumer's feed to its return, V. */
    public double acrossV(Consumer consumer) {
        return acrossV(
                wiring.node(consumer, consumer.feedTerminal()), wiring.node(consumer, consumer.returnTerminal()));
    }

    /** Current from a consumer's feed to its return, A; 0 if it is switched off by its own voltage limits. */
    public double currentA(Consumer consumer) {
        int branch = findBranch(consumer);
        return branch < 0 ? 0 : currentA(branch);
    }

    /**
     * The voltage that a consumer acts on, V, not negative: that across it, but for a solenoid with two windings, where
     * it is the voltage that would pull as hard.
     */
    @Override
    public double effectiveV(Consumer consumer) {
        return Threshold.senseOf(consumer)
                .effectiveV(NodeVoltages.meterAt(consumer, wiring, solution), isActive(consumer));
    }

    /** How strongly a consumer is fed. */
    @Override
    public FeedStrength activity(Consumer consumer) {
        return FeedStrength.of(consumer, plan().system(), effectiveV(consumer), Math.abs(currentA(consumer)));
    }

    /**
     * The branch from a consumer's feed to its return; -1 if there is none in this state, or it is a motor that generates. Of a load
     * that takes constant current either way, the one that carries it.
     */
    public int findBranch(Consumer consumer) {
        String from = wiring.end(consumer, consumer.feedTerminal()).name();
        String to = wiring.end(consumer, consumer.returnTerminal()).name();
        if (generates(consumer)) {
            return -1;
        }
        int found = -1;
        for (int i = firstBranchOf(consumer.id()); i < endBranchOf(consumer.id()); i++) {
            Branch branch = branches().get(i);
            boolean between = (branch.from().equals(from) && branch.to().equals(to))
                    || (branch.from().equals(to) && branch.to().equals(from));
            if (between && (found < 0 || Math.abs(currentA(i)) > Math.abs(currentA(found)))) {
                found = i;
            }
        }
        return found;
    }

    /** Whether it is a motor that runs down and generates. */
    public boolean generates(Consumer consumer) {
        return consumer instanceof Motor && step == Step.OFF_ENGINE_TURNING && isActive(consumer);
    }

    public List<NetworkFinding> networkFindings() {
        return solution.findings();
    }

    /** Largest sum of currents at a node as a fraction of the largest current. */
    public double kirchhoffResidual() {
        return solution.kirchhoffResidual();
    }

    /** Sum of all powers as a fraction of the sum of their amounts. */
    public double powerResidual() {
        return solution.powerResidual();
    }

    /** How its voltages move when the figures of the plan are off by their tolerances. */
    public ReadingSpread spread() {
        Network solvedNetwork = network.network();
        return new ReadingSpread(this, Linearisation.of(solvedNetwork, solution), solvedNetwork.elements());
    }
}
