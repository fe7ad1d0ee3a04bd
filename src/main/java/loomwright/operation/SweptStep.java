package loomwright.operation;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import loomwright.circuit.Consumer;
import loomwright.circuit.Load;
import loomwright.circuit.Part;
import loomwright.circuit.VehicleSystem;
import loomwright.network.Element;
import loomwright.network.SwitchedNetwork;
import org.jspecify.annotations.Nullable;

/**
 * One step of a plan for all settings of its switches: settles as {@link Settling} does, on a {@link SwitchedNetwork}.
 *
 * <p>Sets of active parts are bits of a long, in the order of the thresholds.
 */
final class SweptStep {
    /** No state, because the quick way cannot be relied on here. */
    static final long UNCERTAIN = -1;

    /** A figure closer than this to a limit is left to the full solver, as a share of the limit. */
    private static final double TOO_CLOSE = 1e-6;

    private static final int MOST_ROUNDS = 64;

    private final SwitchedNetwork network;
    private final List<Element> elements;
    /** By open part and setting, the elements that are there then. */
    private final List<List<int[]>> bySetting = new ArrayList<>();
    /** By threshold: the elements while inactive, and while active. */
    private final List<List<int[]>> byState = new ArrayList<>();

    private final List<Sensor> sensors = new ArrayList<>();
    private final List<Gauge> gauges = new ArrayList<>();
    private final VehicleSystem system;
    private final Leads leads = new Leads();
    private final long[] seen = new long[MOST_ROUNDS];
    private int seenCount;
    private long restless;
    /** Whether the network is at rest in a state, and in which. */
    private boolean rested;

    private long rest;
    private final int[] restSetting;

    /** A threshold and the nodes its sense touches, in the order it asks for them. */
    @SuppressWarnings("ArrayRecordComponent") // never compared
    private record Sensor(Threshold threshold, int[] inactiveLeads, int[] activeLeads) {}

    /** A consumer, its limits, its leads, the bit of its threshold or −1, and the elements between its ends. */
    @SuppressWarnings("ArrayRecordComponent") // never compared
    private record Gauge(
            Consumer consumer,
            Activity.Limits limits,
            Threshold.Sense sense,
            int[] inactiveLeads,
            int[] activeLeads,
            int bit,
            int[] always,
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

    SweptStep(Wiring wiring, Step step, List<List<Part>> open, List<Threshold> thresholds, List<Consumer> consumers) {
        this.system = wiring.plan().system();
        this.restSetting = new int[open.size()];
        Universe universe = new Universe(wiring, step);
        Set<String> varying = new HashSet<>();
        open.forEach(settings -> varying.add(settings.get(0).id()));
        thresholds.forEach(t -> varying.add(t.part().id()));
        for (Part part : wiring.plan().parts()) {
            if (!varying.contains(part.id())) {
                universe.add(part, false);
            }
        }
        int always = universe.elements.size();
        for (List<Part> settings : open) {
            bySetting.add(settings.stream().map(s -> universe.add(s, false)).toList());
        }
        for (Threshold threshold : thresholds) {
            byState.add(List.of(universe.add(threshold.part(), false), universe.add(threshold.part(), true)));
            sensors.add(new Sensor(
                    threshold,
                    place(wiring, threshold.part(), threshold.sense(), false),
                    place(wiring, threshold.part(), threshold.sense(), true)));
        }
        for (Consumer consumer : consumers) {
            gauges.add(gauge(wiring, universe, thresholds, consumer));
        }
        boolean[] there = new boolean[universe.elements.size()];
        Arrays.fill(there, 0, always, true);
        elements = List.copyOf(universe.elements);
        network = new SwitchedNetwork(wiring.nodeNames().size(), Wiring.CHASSIS_NODE, elements, there);
    }

    /** Whether another step of the same plan is electrically the same. */
    boolean isSameAs(SweptStep other) {
        return elements.equals(other.elements) && same(bySetting, other.bySetting) && same(byState, other.byState);
    }

    private static boolean same(List<List<int[]>> one, List<List<int[]>> other) {
        return IntStream.range(0, one.size())
                .allMatch(p -> IntStream.range(0, one.get(p).size())
                        .allMatch(s ->
                                Arrays.equals(one.get(p).get(s), other.get(p).get(s))));
    }

    /** All elements that there may be. */
    private static final class Universe {
        private final Wiring wiring;
        private final Step step;
        private final List<Element> elements;
        private final List<Branch> branches;

        Universe(Wiring wiring, Step step) {
            this.wiring = wiring;
            this.step = step;
            this.elements = new ArrayList<>(wiring.resistors());
            this.branches = new ArrayList<>(wiring.branches());
        }

        int[] add(Part part, boolean active) {
            StepNetwork.PartElements own = StepNetwork.of(wiring, step, part, active);
            int first = elements.size();
            elements.addAll(own.elements());
            branches.addAll(own.branches());
            return IntStream.range(first, elements.size()).toArray();
        }

        /** Those of some elements that lead from a consumer's feed to its return, either way round. */
        int[] between(Consumer consumer, int[] among) {
            String feed = consumer.terminal(consumer.feedTerminal()).toString();
            String back = consumer.terminal(consumer.returnTerminal()).toString();
            return Arrays.stream(among)
                    .filter(b -> branches.get(b).id().equals(consumer.id()))
                    .filter(b -> Set.of(feed, back)
                            .equals(Set.of(
                                    branches.get(b).from(), branches.get(b).to())))
                    .toArray();
        }

        int[] all() {
            return IntStream.range(0, elements.size()).toArray();
        }
    }

    private Gauge gauge(Wiring wiring, Universe universe, List<Threshold> thresholds, Consumer consumer) {
        int bit = -1;
        for (int t = 0; t < thresholds.size(); t++) {
            if (thresholds.get(t).part().id().equals(consumer.id())) {
                bit = t;
            }
        }
        Threshold.Sense sense = Threshold.senseOf(consumer);
        return new Gauge(
                consumer,
                Activity.limits(consumer, system),
                sense,
                place(wiring, consumer, sense, false),
                place(wiring, consumer, sense, true),
                bit,
                bit < 0 ? universe.between(consumer, universe.all()) : new int[0],
                bit < 0
                        ? new int[0]
                        : universe.between(consumer, byState.get(bit).get(0)),
                bit < 0
                        ? new int[0]
                        : universe.between(consumer, byState.get(bit).get(1)));
    }

    /** The nodes that a sense asks for, pair after pair. */
    private static int[] place(Wiring wiring, Part part, Threshold.Sense sense, boolean active) {
        List<Integer> asked = new ArrayList<>();
        sense.effectiveV(
                (terminal, other) -> {
                    asked.add(wiring.node(part.terminal(terminal)));
                    asked.add(wiring.node(part.terminal(other)));
                    return 1;
                },
                active);
        return asked.stream().mapToInt(Integer::intValue).toArray();
    }

    /**
     * The state in which the relays and the like come to rest, and with it the solution.
     *
     * @param setting of each open part
     * @param before the state they were in
     * @return {@link #UNCERTAIN} if the full solver must say
     */
    long settle(int[] setting, long before) {
        if (rested && before == rest && Arrays.equals(setting, restSetting)) {
            return rest;
        }
        rest = find(setting, before);
        rested = restless == 0 && rest != UNCERTAIN;
        System.arraycopy(setting, 0, restSetting, 0, setting.length);
        return rest;
    }

    private long find(int[] setting, long before) {
        long together = settle(setting, before, false);
        if (Long.bitCount(restless) < 2) {
            return together;
        }
        long oneByOne = settle(setting, before, true);
        if (restless == 0) {
            return oneByOne;
        }
        // There is no rest either way: the figures are those of one moment, as Settling gives them.
        return solve(setting, together) ? together : UNCERTAIN;
    }

    /** Sets {@link #restless} to the parts that keep changing. */
    private long settle(int[] setting, long before, boolean oneAtATime) {
        long active = before;
        seenCount = 0;
        restless = 0;
        while (seenCount < seen.length) {
            if (!solve(setting, active)) {
                return UNCERTAIN;
            }
            long next = next(active, oneAtATime);
            if (next == active || next == UNCERTAIN) {
                return next;
            }
            for (int k = 0; k < seenCount; k++) {
                if (seen[k] == active) {
                    restless = restless(k);
                    return active;
                }
            }
            seen[seenCount++] = active;
            active = next;
        }
        return UNCERTAIN;
    }

    /** The parts that differ between the states of the cycle that begins at one of those seen. */
    private long restless(int first) {
        long ever = 0;
        long always = -1;
        for (int k = first; k < seenCount; k++) {
            ever |= seen[k];
            always &= seen[k];
        }
        return ever & ~always;
    }

    private boolean solve(int[] setting, long active) {
        network.clear();
        for (int p = 0; p < setting.length; p++) {
            network.add(bySetting.get(p).get(setting[p]));
        }
        for (int t = 0; t < sensors.size(); t++) {
            network.add(byState.get(t).get((int) (active >>> t & 1)));
        }
        return network.solve();
    }

    private long next(long active, boolean oneAtATime) {
        long next = active;
        for (int t = 0; t < sensors.size(); t++) {
            Sensor sensor = sensors.get(t);
            Threshold threshold = sensor.threshold();
            boolean was = (active >>> t & 1) != 0;
            double effectiveV =
                    threshold.sense().effectiveV(leads.at(was ? sensor.activeLeads() : sensor.inactiveLeads()), was);
            double limitV = was ? threshold.releaseV() : threshold.operateV();
            if (isClose(effectiveV, limitV) || isClose(effectiveV, threshold.maximumV())) {
                return UNCERTAIN;
            }
            boolean is = threshold.activeAt(effectiveV, was);
            boolean atNothing = threshold.activeAt(0, was);
            if (!was
                    && is != atNothing
                    && threshold.part() instanceof Load
                    && !network.joined(leads.nodes[0], leads.nodes[1])) {
                // Between parts of the circuit that nothing joins, a meter shows nothing.
                is = atNothing;
            }
            if (is != was) {
                next ^= 1L << t;
                if (oneAtATime) {
                    return next;
                }
            }
        }
        return next;
    }

    private static boolean isClose(double figure, double limit) {
        return limit > 0 && Math.abs(figure - limit) <= TOO_CLOSE * limit;
    }

    /**
     * How strongly a consumer is fed in the solution.
     *
     * @return null if too close to a limit to tell
     */
    @Nullable
    Activity activity(int consumer, long active) {
        Gauge gauge = gauges.get(consumer);
        boolean on = gauge.bit() >= 0 && (active >>> gauge.bit() & 1) != 0;
        double currentA = Math.max(current(gauge.always()), current(on ? gauge.active() : gauge.inactive()));
        double effectiveV = gauge.sense().effectiveV(leads.at(on ? gauge.activeLeads() : gauge.inactiveLeads()), on);
        if (currentA < 0.5 * Activity.TRICKLE_A) {
            return Activity.DEAD;
        }
        boolean close = isClose(currentA, Activity.TRICKLE_A)
                || isClose(effectiveV, Activity.TRICKLE_FRACTION * system.nominalVoltageV())
                || isClose(effectiveV, gauge.limits().operateV())
                || isClose(effectiveV, gauge.limits().releaseV());
        return close ? null : Activity.of(gauge.consumer(), gauge.limits(), system, effectiveV, currentA);
    }

    /** Whether a consumer is a relay or solenoid that is pulled in. */
    boolean isPulledIn(int consumer, long active) {
        Gauge gauge = gauges.get(consumer);
        return gauge.bit() >= 0 && !(gauge.consumer() instanceof Load) && (active >>> gauge.bit() & 1) != 0;
    }

    private double current(int[] elements) {
        double largest = 0;
        for (int element : elements) {
            largest = Math.max(largest, Math.abs(network.currentA(element)));
        }
        return largest;
    }
}
