package loomwright.operation;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import loomwright.circuit.Consumer;
import loomwright.circuit.Electromagnet;
import loomwright.circuit.Part;
import loomwright.circuit.VehicleSystem;
import loomwright.network.NetworkScan;
import loomwright.network.Resistor;
import org.jspecify.annotations.Nullable;

/**
 * One step of a plan for all settings of its open parts, solved well enough to decide: what parts with a threshold sense and
 * how strongly consumers are fed. Where a figure is too close to a limit it says so, and the step is for {@link ReportCircuit}
 * to solve. Not thread safe.
 */
final class DecisionCircuit implements StateSearch.Circuit {
    /** A figure closer than this to a limit is not decided here, as a share of the limit. */
    private static final double TOO_CLOSE = 1e-6;

    private final StepElements elements;
    private final NetworkScan network;
    private final VehicleSystem system;
    private final StateSearch search;
    private final List<Sensor> sensors = new ArrayList<>();
    private final List<Gauge> gauges = new ArrayList<>();
    private final Leads leads = new Leads();
    /** By id of a part that was asked about. */
    private final Map<String, Integer> firstOf = new HashMap<>();
    /** Which of the settings of each open part is there. */
    private final int[] setting;

    /** What the network is solved in; null if not at rest. */
    private @Nullable StableState rest;

    private BitSet before = new BitSet();

    /** A threshold and the nodes its sense touches, in the order it asks for them. */
    @SuppressWarnings("ArrayRecordComponent") // never compared
    private record Sensor(Threshold threshold, int[] inactiveLeads, int[] activeLeads) {}

    /** A consumer, its limits, its leads, the bit of its threshold or −1, and the elements between its ends. */
    @SuppressWarnings("ArrayRecordComponent") // never compared
    private record Gauge(
            Consumer consumer,
            int feed,
            int back,
            FeedStrength.Limits limits,
            Threshold.Sense sense,
            int[] inactiveLeads,
            int[] activeLeads,
            int bit,
            int[] inactive,
            int[] active) {}

    /** A meter whose leads were put where they belong beforehand. */
    private final class Leads implements Threshold.Meter {
        private int[] nodes = {};
        private int next;

        Leads at(int[] placed) {
            nodes = placed;
            next = 0;
            return this;
        }

        @Override
        public double acrossV(String terminal, String other) {
            next += 2;
            return network.acrossV(nodes[next - 2], nodes[next - 1]);
        }
    }

    DecisionCircuit(
            Wiring wiring, StepElements elements, Thresholds thresholds, List<Consumer> consumers, boolean changeable) {
        this.elements = elements;
        this.network = elements.network(changeable);
        this.system = wiring.plan().system();
        this.setting = new int[elements.choices()];
        this.search = new StateSearch(this, thresholds.memory());
        for (Threshold threshold : thresholds.list()) {
            sensors.add(new Sensor(
                    threshold,
                    place(wiring, threshold.part(), threshold.sense(), false),
                    place(wiring, threshold.part(), threshold.sense(), true)));
        }
        for (Consumer consumer : consumers) {
            int bit = thresholds.bitOf(consumer.id());
            Threshold.Sense sense = Threshold.senseOf(consumer);
            gauges.add(new Gauge(
                    consumer,
                    wiring.node(consumer, consumer.feedTerminal()),
                    wiring.node(consumer, consumer.returnTerminal()),
                    FeedStrength.limits(consumer, system),
                    sense,
                    place(wiring, consumer, sense, false),
                    place(wiring, consumer, sense, true),
                    bit,
                    bit < 0 ? elements.between(consumer) : elements.between(consumer, bit, false),
                    bit < 0 ? new int[0] : elements.between(consumer, bit, true)));
        }
    }

    /** The nodes that a sense asks for, pair after pair. */
    private static int[] place(Wiring wiring, Part part, Threshold.Sense sense, boolean active) {
        List<Integer> asked = new ArrayList<>();
        sense.effectiveV(
                (terminal, other) -> {
                    asked.add(wiring.node(part, terminal));
                    asked.add(wiring.node(part, other));
                    return 1;
                },
                active);
        return asked.stream().mapToInt(Integer::intValue).toArray();
    }

    /** Whether a step of the same plan with these elements is electrically the same. */
    boolean hasElements(StepElements others) {
        return elements.isSameAs(others);
    }

    /**
     * The state in which the parts come to rest, and with it the solution.
     *
     * @param set of each open part, and which addition is there, 0 for none
     * @param began the parts that were active when the step began
     */
    StableState settle(int[] set, BitSet began) {
        StableState known = rest;
        boolean sameSetting = Arrays.equals(set, setting);
        if (known != null && sameSetting && (began.equals(before) || isAtRest(known, began))) {
            return known;
        }
        System.arraycopy(set, 0, setting, 0, set.length);
        StableState found = search.settle(began);
        rest = found.outcome() == StableState.Outcome.UNDECIDED ? null : found;
        before = (BitSet) began.clone();
        return found;
    }

    /** Forgets what was settled before: no digit of the next figures depends on it. */
    void forget() {
        rest = null;
        network.forget();
    }

    private static boolean isAtRest(StableState known, BitSet began) {
        return known.outcome() == StableState.Outcome.SETTLED && known.active().equals(began);
    }

    @Override
    public StateSearch.Verdict probe(BitSet active, BitSet changes) {
        rest = null;
        network.clear();
        for (int p = 0; p < setting.length; p++) {
            network.add(elements.inSetting(p, setting[p]));
        }
        for (int t = 0; t < sensors.size(); t++) {
            network.add(elements.inState(t, active.get(t)));
        }
        changes.clear();
        if (!network.solve()) {
            return StateSearch.Verdict.UNDECIDED;
        }
        for (int t = 0; t < sensors.size(); t++) {
            Sensor sensor = sensors.get(t);
            Threshold threshold = sensor.threshold();
            boolean was = active.get(t);
            double effectiveV =
                    threshold.sense().effectiveV(leads.at(was ? sensor.activeLeads() : sensor.inactiveLeads()), was);
            double limitV = was ? threshold.releaseV() : threshold.operateV();
            if (isClose(effectiveV, limitV) || isClose(effectiveV, threshold.maximumV())) {
                return StateSearch.Verdict.UNDECIDED;
            }
            if (threshold.activeAt(effectiveV, was) != was) {
                changes.set(t);
            }
        }
        return StateSearch.Verdict.TOLD;
    }

    private static boolean isClose(double figure, double limit) {
        return limit > 0 && Math.abs(figure - limit) <= TOO_CLOSE * limit;
    }

    /**
     * Takes elements away and adds resistances, in place of the change before, see {@link NetworkScan#change}.
     *
     * @param parts whose elements are taken away
     * @param branches of wires and connectors, likewise
     */
    boolean change(List<String> parts, List<Integer> branches, List<Resistor> more) {
        rest = null;
        IntStream ofParts = parts.stream().flatMapToInt(elements::alwaysOf);
        return network.change(
                IntStream.concat(branches.stream().mapToInt(b -> b), ofParts).toArray(), more);
    }

    /** How many settings and additions there are to choose. */
    int choices() {
        return setting.length;
    }

    /** See {@link NetworkScan#islands}. */
    int[] islands(boolean oneWays) {
        return network.islands(oneWays);
    }

    /** Voltage of one node against another in the solution, V. */
    double acrossV(int node, int other) {
        return network.acrossV(node, other);
    }

    /** Current of the branch of a wire or connector in the solution, A. */
    double currentA(int branch) {
        return network.currentA(branch);
    }

    /** Current of the first element of a part that nothing changes, A. */
    double currentA(String part) {
        return network.currentA(firstOf.computeIfAbsent(part, elements::firstOf));
    }

    /** Voltage from a consumer's feed to its return in the solution, V. */
    double acrossV(int consumer) {
        Gauge gauge = gauges.get(consumer);
        return network.acrossV(gauge.feed(), gauge.back());
    }

    /** Current between a consumer's ends in the solution, its amount, A. */
    double consumerA(int consumer, BitSet active) {
        Gauge gauge = gauges.get(consumer);
        return largestA(isActive(gauge, active) ? gauge.active() : gauge.inactive());
    }

    /** The voltage a consumer acts on in the solution, V. */
    double effectiveV(int consumer, BitSet active) {
        Gauge gauge = gauges.get(consumer);
        boolean on = isActive(gauge, active);
        return gauge.sense().effectiveV(leads.at(on ? gauge.activeLeads() : gauge.inactiveLeads()), on);
    }

    /**
     * How strongly a consumer is fed in the solution.
     *
     * @return null if too close to a limit to tell
     */
    @Nullable
    FeedStrength activity(int consumer, BitSet active) {
        Gauge gauge = gauges.get(consumer);
        double currentA = consumerA(consumer, active);
        if (currentA < 0.5 * FeedStrength.TRICKLE_A) {
            return FeedStrength.DEAD;
        }
        double effectiveV = effectiveV(consumer, active);
        boolean close = isClose(currentA, FeedStrength.TRICKLE_A)
                || isClose(effectiveV, FeedStrength.deadV(gauge.consumer(), system))
                || isClose(effectiveV, gauge.limits().operateV())
                || isClose(effectiveV, gauge.limits().releaseV());
        return close ? null : FeedStrength.of(gauge.consumer(), gauge.limits(), system, effectiveV, currentA);
    }

    /** Whether a consumer is a relay or solenoid that is pulled in. */
    boolean isPulledIn(int consumer, BitSet active) {
        Gauge gauge = gauges.get(consumer);
        boolean magnet = gauge.consumer() instanceof Electromagnet;
        return magnet && isActive(gauge, active);
    }

    private static boolean isActive(Gauge gauge, BitSet active) {
        return gauge.bit() >= 0 && active.get(gauge.bit());
    }

    private double largestA(int[] between) {
        double largest = 0;
        for (int element : between) {
            largest = Math.max(largest, Math.abs(network.currentA(element)));
        }
        return largest;
    }
}
