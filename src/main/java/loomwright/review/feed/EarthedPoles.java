package loomwright.review.feed;

import static loomwright.message.Arg.arg;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import loomwright.answer.Basis;
import loomwright.answer.Finding;
import loomwright.answer.Severity;
import loomwright.circuit.Battery;
import loomwright.circuit.ConnectorHalf;
import loomwright.circuit.Consumer;
import loomwright.circuit.EarthPolarity;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.review.context.Check;
import loomwright.review.context.FeedGraph;
import loomwright.review.context.FeedGraph.By;
import loomwright.review.context.FindingCode;
import loomwright.review.context.ReviewContext;
import loomwright.review.context.ReviewText;
import org.jspecify.annotations.Nullable;

/**
 * Whether each battery's pole on the chassis is the one that the plan names, and of several in series whether the next hangs
 * on by its right pole. Only what is wired or bolted together counts: through a load or a contact either pole may be joined
 * to the chassis, and by its volts a battery without an earth lead would seem earthed at the wrong pole.
 */
public final class EarthedPoles implements Check {
    private static final EnumSet<By> METAL = EnumSet.of(By.WIRE, By.JOINT);
    private static final EnumSet<By> SWITCHED = EnumSet.of(By.WIRE, By.JOINT, By.FUSE, By.CONTACT);

    private static final Basis WIRING = Basis.computed(
            "which pole of each battery wires and joints lead to the chassis, or to the battery before it",
            "breadth-first search of the plan");

    /**
     * How a battery orientations.
     *
     * @param right whether by the right pole
     * @param before the battery that it is on; absent if it is on the chassis
     * @param beforeV nominal volts from the chassis up to it
     */
    private record Orientation(boolean right, @Nullable Battery before, double beforeV) {}

    /** A plan's batteries, the pole of each that the plan says is earthed, and the other. */
    private record Poles(Plan plan, FeedGraph graph, String named, String other) {
        static Poles of(Plan plan, FeedGraph graph) {
            return isNegative(plan)
                    ? new Poles(plan, graph, Battery.MINUS, Battery.PLUS)
                    : new Poles(plan, graph, Battery.PLUS, Battery.MINUS);
        }

        private String named(Battery battery) {
            return battery.terminal(named).toString();
        }

        private String other(Battery battery) {
            return battery.terminal(other).toString();
        }

        private double volts(Battery battery) {
            return battery.share(plan.system()) * plan.system().nominalVoltageV();
        }

        private Set<String> reach(String start, EnumSet<By> through) {
            return graph.reach(List.of(start), through, Set.of());
        }

        /**
         * From the chassis outwards: first the batteries on it, then those on the far poles of these. What is connected to one that
         * is turned is not judged: it may be turned with it.
         */
        Map<Battery, Orientation> orientations() {
            Map<Battery, Orientation> orientations = new LinkedHashMap<>();
            Deque<Battery> right = new ArrayDeque<>();
            orient(orientations, right, null, 0);
            while (!right.isEmpty()) {
                Battery before = right.removeFirst();
                Orientation its = orientations.get(before);
                orient(orientations, right, before, (its == null ? 0 : its.beforeV()) + volts(before));
            }
            return orientations;
        }

        private void orient(
                Map<Battery, Orientation> orientations,
                Deque<Battery> right,
                @Nullable Battery before,
                double beforeV) {
            Set<String> reached = reach(before == null ? FeedGraph.CHASSIS : other(before), METAL);
            for (Battery battery : plan.listParts(Battery.class)) {
                if (orientations.containsKey(battery)) {
                    continue;
                }
                if (reached.contains(named(battery))) {
                    orientations.put(battery, new Orientation(true, before, beforeV));
                    right.add(battery);
                } else if (reached.contains(other(battery)) && (before == null || isInSeries(before, battery))) {
                    orientations.put(battery, new Orientation(false, before, beforeV));
                }
            }
        }

        /**
         * Whether a battery with its other pole on that of the one before it is surely in series with it, and not side by
         * side with an earth lead that is missing, switched, or drawn as a resistor: nothing but the two hangs where they
         * are joined, and from its named pole the way leads on to a further battery or by a load to the chassis.
         */
        private boolean isInSeries(Battery before, Battery battery) {
            Set<String> between = reach(other(battery), SWITCHED);
            Set<String> beyond = reach(named(battery), SWITCHED);
            return !beyond.contains(FeedGraph.CHASSIS)
                    && plan.parts().stream()
                            .filter(p -> !p.equals(before) && !p.equals(battery))
                            .noneMatch(p -> leadsOn(p, between))
                    && (feedsBattery(battery, beyond) || feedsLoad(beyond));
        }

        /** Whether a part can be entered at one of its terminals and left at another that is not reached. */
        private static boolean leadsOn(Part part, Set<String> reached) {
            // The ways of a connector are circuits of their own.
            return !(part instanceof ConnectorHalf)
                    && part.terminals().stream()
                                    .map(t -> reached.contains(part.terminal(t).toString()))
                                    .distinct()
                                    .count()
                            > 1;
        }

        private boolean feedsBattery(Battery battery, Set<String> beyond) {
            return plan.listParts(Battery.class).stream()
                    .anyMatch(b -> !b.equals(battery) && beyond.contains(named(b)));
        }

        private boolean feedsLoad(Set<String> beyond) {
            Set<String> earthed = reach(FeedGraph.CHASSIS, SWITCHED);
            return plan.listParts(Consumer.class).stream().anyMatch(load -> {
                String one = load.terminal(load.feedTerminal()).toString();
                String end = load.terminal(load.returnTerminal()).toString();
                return (beyond.contains(one) && earthed.contains(end))
                        || (beyond.contains(end) && earthed.contains(one));
            });
        }
    }

    @Override
    public List<Finding> check(ReviewContext context) {
        Poles poles = Poles.of(context.plan(), context.protection().graph());
        Map<Battery, Orientation> orientations = poles.orientations();
        boolean someRight = orientations.values().stream().anyMatch(Orientation::right);
        List<Finding> findings = new ArrayList<>();
        orientations.forEach((battery, stand) -> {
            Battery before = stand.before();
            if (!stand.right()) {
                findings.add(
                        before == null
                                ? onChassis(poles, battery, someRight)
                                : inSeries(poles, battery, before, stand.beforeV()));
            }
        });
        return findings;
    }

    private static boolean isNegative(Plan plan) {
        return plan.system().earthPolarity() == EarthPolarity.NEGATIVE;
    }

    private static Finding onChassis(Poles poles, Battery battery, boolean someRight) {
        return Finding.danger(
                        FindingCode.EARTH_POLARITY_CONTRADICTED.with(
                                arg("battery", battery.thing()),
                                arg("terminal", poles.other(battery)),
                                arg("earthed", isNegative(poles.plan()) ? "negative" : "positive"),
                                arg("others", someRight ? "right" : "none")),
                        WIRING)
                .remedy(ReviewText.CHECK_POLARITY.with());
    }

    /**
     * Against those before it a battery drives no heavy current: the loads are in the way. What is left of the volts is
     * turned only if it has more than they have together.
     */
    private static Finding inSeries(Poles poles, Battery battery, Battery before, double beforeV) {
        double ownV = poles.volts(battery);
        double leftV = beforeV - ownV;
        return Finding.of(
                        leftV < 0 ? Severity.DANGER : Severity.WARNING,
                        FindingCode.SERIES_BATTERY_REVERSED.with(
                                arg("battery", battery.thing()),
                                arg("before", before.thing()),
                                arg("terminal", poles.other(battery)),
                                arg("otherTerminal", poles.other(before)),
                                arg("leftV", Math.abs(leftV)),
                                arg("wantedV", beforeV + ownV),
                                arg("polarity", leftV < 0 ? "reversed" : "right")),
                        WIRING)
                .remedy(ReviewText.TURN_BATTERY.with());
    }
}
