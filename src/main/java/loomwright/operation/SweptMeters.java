package loomwright.operation;

import java.util.ArrayList;
import java.util.List;
import loomwright.circuit.Consumer;
import loomwright.circuit.Load;
import loomwright.circuit.Part;
import loomwright.circuit.VehicleSystem;
import loomwright.network.SwitchedNetwork;
import org.jspecify.annotations.Nullable;

/**
 * Reads from a solved {@link SwitchedNetwork} what parts with a threshold sense and how strongly consumers are fed, and says
 * so where a figure is too close to a limit to tell. Sets of active parts are bits of a long, in the order of the thresholds.
 */
final class SweptMeters {
    /** A figure closer than this to a limit is left to the full solver, as a share of the limit. */
    private static final double TOO_CLOSE = 1e-6;

    private final SwitchedNetwork network;
    private final VehicleSystem system;
    private final List<Sensor> sensors = new ArrayList<>();
    private final List<Gauge> gauges = new ArrayList<>();
    private final Leads leads = new Leads();

    /** A threshold and the nodes its sense touches, in the order it asks for them. */
    @SuppressWarnings("ArrayRecordComponent") // never compared
    private record Sensor(Threshold threshold, int[] inactiveLeads, int[] activeLeads) {}

    /** A consumer, its limits, its leads, the bit of its threshold or −1, and the elements between its ends. */
    @SuppressWarnings("ArrayRecordComponent") // never compared
    private record Gauge(
            Consumer consumer,
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

    SweptMeters(
            SwitchedNetwork network,
            Wiring wiring,
            SweptElements elements,
            List<Threshold> thresholds,
            List<Consumer> consumers) {
        this.network = network;
        this.system = wiring.plan().system();
        for (Threshold threshold : thresholds) {
            sensors.add(new Sensor(
                    threshold,
                    place(wiring, threshold.part(), threshold.sense(), false),
                    place(wiring, threshold.part(), threshold.sense(), true)));
        }
        List<String> ids = thresholds.stream().map(t -> t.part().id()).toList();
        for (Consumer consumer : consumers) {
            int bit = ids.indexOf(consumer.id());
            Threshold.Sense sense = Threshold.senseOf(consumer);
            gauges.add(new Gauge(
                    consumer,
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

    /**
     * The parts that are active at the voltages of the solution, given which were.
     *
     * @param oneAtATime whether only the first that changes does
     * @return {@link SweptStep#UNCERTAIN} if too close to a limit to tell
     */
    long next(long active, boolean oneAtATime) {
        long next = active;
        for (int t = 0; t < sensors.size(); t++) {
            Sensor sensor = sensors.get(t);
            Threshold threshold = sensor.threshold();
            boolean was = (active >>> t & 1) != 0;
            double effectiveV =
                    threshold.sense().effectiveV(leads.at(was ? sensor.activeLeads() : sensor.inactiveLeads()), was);
            double limitV = was ? threshold.releaseV() : threshold.operateV();
            if (isClose(effectiveV, limitV) || isClose(effectiveV, threshold.maximumV())) {
                return SweptStep.UNCERTAIN;
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
    FeedStrength activity(int consumer, long active) {
        Gauge gauge = gauges.get(consumer);
        boolean on = isActive(gauge, active);
        double currentA = largestA(on ? gauge.active() : gauge.inactive());
        double effectiveV = gauge.sense().effectiveV(leads.at(on ? gauge.activeLeads() : gauge.inactiveLeads()), on);
        if (currentA < 0.5 * FeedStrength.TRICKLE_A) {
            return FeedStrength.DEAD;
        }
        boolean close = isClose(currentA, FeedStrength.TRICKLE_A)
                || isClose(effectiveV, FeedStrength.TRICKLE_FRACTION * system.nominalVoltageV())
                || isClose(effectiveV, gauge.limits().operateV())
                || isClose(effectiveV, gauge.limits().releaseV());
        return close ? null : FeedStrength.of(gauge.consumer(), gauge.limits(), system, effectiveV, currentA);
    }

    /** Whether a consumer is a relay or solenoid that is pulled in. */
    boolean isPulledIn(int consumer, long active) {
        Gauge gauge = gauges.get(consumer);
        return !(gauge.consumer() instanceof Load) && isActive(gauge, active);
    }

    private static boolean isActive(Gauge gauge, long active) {
        return gauge.bit() >= 0 && (active >>> gauge.bit() & 1) != 0;
    }

    private double largestA(int[] elements) {
        double largest = 0;
        for (int element : elements) {
            largest = Math.max(largest, Math.abs(network.currentA(element)));
        }
        return largest;
    }
}
