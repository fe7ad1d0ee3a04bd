package loomwright.operation;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import loomwright.circuit.Consumer;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.TerminalRef;
import loomwright.network.NetworkLimits;
import org.jspecify.annotations.Nullable;

/**
 * Goes through the settings of a plan's open switches and contacts, one step after another in any order, and tells where the
 * parts come to rest and how strongly each consumer is fed. It decides quickly and falls back on the solution that is reported
 * wherever a figure is too close to a limit, so its decisions are those of {@link PlanSolver}.
 *
 * <p>Cost on a harness of 60 nodes: a few microseconds for a step. Not thread safe.
 */
public final class SettingScan {
    private final SwitchSettings settings;
    private final Thresholds thresholds;
    private final List<Consumer> consumers;
    private final DecisionCircuits circuits;
    private final PlanSettings reported;
    private int undecided;

    // What was settled last.
    private int[] setting = {};
    private Step step = Step.OFF;
    private BitSet before = new BitSet();
    private BitSet active = new BitSet();
    /** The plan in the setting that was reported last, and that setting. */
    private Plan planSet;

    private int[] planSetting;
    /** Where the scan did not decide. */
    private @Nullable SolvedStep full;

    private StableState.Outcome outcome = StableState.Outcome.UNSOLVABLE;

    /**
     * Prepares a plan.
     *
     * @throws loomwright.answer.RejectedInput if a conductor size is not known
     */
    public SettingScan(SwitchSettings settings, PlanSolver solver) {
        this.settings = settings;
        this.planSet = settings.plan();
        this.planSetting = settings.drawn();
        this.reported = solver.settings(settings.plan());
        this.thresholds = reported.thresholds();
        this.consumers = settings.plan().listParts(Consumer.class);
        this.circuits =
                new DecisionCircuits(reported.wiring(), thresholds, settings.open(), List.of(), consumers, false);
    }

    /** As the other, with limits of its own. */
    public SettingScan(SwitchSettings settings, NetworkLimits limits) {
        this(settings, new PlanSolver(limits));
    }

    /** The consumers asked about by number. */
    public List<Consumer> consumers() {
        return consumers;
    }

    /**
     * Settles a step.
     *
     * @param set the setting of each open part, 0 as drawn
     * @param began the parts that were active when it began, as this returned them
     * @return the parts that are active in it; not to be changed
     */
    public BitSet settle(int[] set, Step at, BitSet began) {
        setting = set;
        step = at;
        before = began;
        StableState state = circuits.get(at).settle(set, began);
        full = null;
        outcome = state.outcome();
        active = state.active();
        // Of what has no stable state, and of a race, the figures of the one outcome that is reported.
        if (outcome != StableState.Outcome.SETTLED) {
            undecided += outcome == StableState.Outcome.UNDECIDED ? 1 : 0;
            SolvedStep solved = full();
            outcome = solved.outcome();
            active = solved.activeBits();
        }
        return active;
    }

    /** Forgets what was settled before: it was a start for the next figures, whose last digits depend on it. */
    public void forget() {
        full = null;
        circuits.forget();
    }

    /** The step settled last, as it is reported. */
    public SolvedStep report() {
        SolvedStep known = full;
        if (known != null) {
            return known;
        }
        if (!Arrays.equals(setting, planSetting)) {
            planSetting = setting.clone();
            planSet = settings.planAt(setting);
        }
        return outcome == StableState.Outcome.SETTLED
                ? reported.solve(planSet, step, before, active)
                : reported.solve(planSet, step, before);
    }

    /** All steps of a setting as they are reported, each beginning where the one before ended. */
    public List<SolvedStep> report(int[] set) {
        return report(set, step -> Optional.empty());
    }

    /**
     * As {@link #report(int[])}, but what is already known to be the same is taken over.
     *
     * @param same asked while this stands at each step
     */
    public List<SolvedStep> report(int[] set, Function<Step, Optional<SolvedStep>> same) {
        List<SolvedStep> steps = new ArrayList<>();
        BitSet began = new BitSet();
        for (Step at : Step.values()) {
            BitSet rests = settle(set, at, began);
            Optional<SolvedStep> known = same.apply(at);
            SolvedStep solved = known.orElseGet(this::report);
            steps.add(solved);
            began = known.isPresent() ? rests : solved.activeBits();
        }
        return steps;
    }

    /**
     * Whether the step settled last was decided quickly and comes to rest with the same parts active as another of a plan that differs
     * little from this.
     */
    public boolean restsLike(SolvedStep other) {
        return full == null
                && outcome == StableState.Outcome.SETTLED
                && other.outcome() == StableState.Outcome.SETTLED
                && thresholds.ids(active).equals(other.active());
    }

    /** The plan, for more to be solved of its settings. */
    public PlanSettings reported() {
        return reported;
    }

    /** The settings that it goes through. */
    public SwitchSettings settings() {
        return settings;
    }

    private SolvedStep full() {
        SolvedStep known = full;
        if (known == null) {
            known = report();
            full = known;
        }
        return known;
    }

    /** How many steps were too close to a limit to be decided quickly. */
    public int undecided() {
        return undecided;
    }

    /** Whether the step settled last has figures. */
    public boolean solved() {
        return outcome != StableState.Outcome.UNSOLVABLE;
    }

    /** Whether parts find no rest in the step settled last. */
    public boolean oscillating() {
        return outcome == StableState.Outcome.OSCILLATING;
    }

    /** How strongly a consumer is fed in the step settled last. */
    public FeedStrength activity(int consumer) {
        if (full == null) {
            FeedStrength decided = circuits.get(step).activity(consumer, active);
            if (decided != null) {
                return decided;
            }
            undecided++;
        }
        return full().activity(consumers.get(consumer));
    }

    /** The voltage a consumer acts on in the step settled last, V; to about eight digits. */
    public double effectiveV(int consumer) {
        return full == null
                ? circuits.get(step).effectiveV(consumer, active)
                : full().effectiveV(consumers.get(consumer));
    }

    /** Voltage from a consumer's feed to its return in the step settled last, V; to about eight digits. */
    public double acrossV(int consumer) {
        return full == null ? circuits.get(step).acrossV(consumer) : full().acrossV(consumers.get(consumer));
    }

    /** Current of the first branch of a part that has no states, such as a battery or a diode, in the step settled last, A. */
    public double currentA(String part) {
        return full == null ? circuits.get(step).currentA(part) : full().currentA(full().firstBranchOf(part));
    }

    /** Whether a part is active in the step settled last, see {@link SolvedStep#isActive}. */
    public boolean isActive(Part part) {
        int bit = thresholds.bitOf(part.id());
        return bit >= 0 && active.get(bit);
    }

    /** How many wires and ways of connectors there are that a current can flow in. */
    public int wires() {
        return reported.wiring().branches().size();
    }

    /** One of these, without its place in a step. */
    public Branch branch(int wire) {
        return reported.wiring().branches().get(wire);
    }

    /** Voltage of one terminal against another in the step settled last, V; to about eight digits, any where nothing joins them. */
    public double acrossV(TerminalRef terminal, TerminalRef other) {
        if (full != null) {
            return full.acrossV(terminal, other);
        }
        Wiring wiring = reported.wiring();
        return circuits.get(step).acrossV(wiring.node(terminal), wiring.node(other));
    }

    /** The current of one of these in the step settled last, A; to about eight digits. */
    public double currentA(int wire) {
        return full == null ? circuits.get(step).currentA(wire) : full().currentA(wire);
    }

    /** Whether a consumer is a relay or solenoid that is pulled in. */
    public boolean isPulledIn(int consumer) {
        return circuits.get(step).isPulledIn(consumer, active);
    }

    /** Of a state, only what has a memory: relays, solenoids, chargers. Loads and modules follow from it. */
    public BitSet memory(BitSet state) {
        BitSet memory = (BitSet) state.clone();
        memory.and(thresholds.memory());
        return memory;
    }

    /** The parts of a state, by id. */
    public Set<String> ids(BitSet state) {
        return thresholds.ids(state);
    }
}
