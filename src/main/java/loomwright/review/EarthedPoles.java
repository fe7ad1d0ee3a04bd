package loomwright.review;

import java.util.ArrayDeque;
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
import loomwright.circuit.EarthPolarity;
import loomwright.circuit.Plan;
import loomwright.review.FeedGraph.By;

/**
 * Whether each battery's pole on the chassis is the one that the plan names, and of several in series whether the next hangs
 * on by its right pole. Only what is wired or bolted together counts: through a load or a contact either pole may be joined
 * to the chassis, and by its volts a battery without an earth lead would seem earthed at the wrong pole.
 */
final class EarthedPoles implements Check {
    private static final EnumSet<By> METAL = EnumSet.of(By.WIRE, By.JOINT);
    private static final EnumSet<By> SWITCHED = EnumSet.of(By.WIRE, By.JOINT, By.FUSE, By.CONTACT);

    private static final Basis WIRING = Basis.computed(
            "which pole of each battery wires and joints lead to the chassis, or to the battery before it",
            "breadth-first search of the plan");

    /** How a battery stands: whether by the right pole, and on what that pole is. */
    private record Stand(boolean right, String on) {}

    @Override
    public List<Finding> check(ReviewContext context) {
        Plan plan = context.plan();
        boolean negative = plan.system().earthPolarity() == EarthPolarity.NEGATIVE;
        Map<Battery, Stand> stands = stands(plan, context.protection().graph(), pole(negative), pole(!negative));
        boolean someRight = stands.values().stream().anyMatch(Stand::right);
        return stands.entrySet().stream()
                .filter(e -> !e.getValue().right())
                .map(e -> finding(e.getKey(), e.getValue().on(), negative, someRight))
                .toList();
    }

    private static String pole(boolean negative) {
        return negative ? Battery.MINUS : Battery.PLUS;
    }

    /**
     * From the chassis outwards: first the batteries on it, then those on the far poles of these. What hangs on one that is
     * turned is not judged: it may be turned with it.
     */
    private static Map<Battery, Stand> stands(Plan plan, FeedGraph graph, String named, String other) {
        Map<Battery, Stand> stands = new LinkedHashMap<>();
        // A battery with a switch in its earth lead is none in series.
        Set<String> chassisThroughSwitches = graph.reach(List.of(FeedGraph.CHASSIS), SWITCHED, Set.of());
        Deque<String> starts = new ArrayDeque<>(List.of(FeedGraph.CHASSIS));
        while (!starts.isEmpty()) {
            String start = starts.removeFirst();
            boolean onChassis = start.equals(FeedGraph.CHASSIS);
            Set<String> reached = graph.reach(List.of(start), METAL, Set.of());
            for (Battery battery : plan.listParts(Battery.class)) {
                boolean right = reached.contains(battery.terminal(named).toString());
                boolean turned = !right
                        && reached.contains(battery.terminal(other).toString())
                        && (onChassis
                                || !chassisThroughSwitches.contains(
                                        battery.terminal(named).toString()));
                boolean found = (right || turned) && stands.putIfAbsent(battery, new Stand(right, start)) == null;
                if (found && right) {
                    starts.add(battery.terminal(other).toString());
                }
            }
        }
        return stands;
    }

    private static Finding finding(Battery battery, String on, boolean negative, boolean someRight) {
        boolean onChassis = on.equals(FeedGraph.CHASSIS);
        String pole = battery.terminal(pole(!negative)).toString();
        String has = battery.called() + " has " + pole + " on " + (onChassis ? "the chassis" : on)
                + (onChassis ? "" : ", so that it works against the battery before it");
        String wrong = someRight
                ? "Another battery stands as the plan says, so this one is connected the wrong way round"
                : "Either earthPolarity is wrong, or the battery is connected the wrong way round";
        return FindingCode.EARTH_POLARITY_CONTRADICTED.finding(
                Severity.DANGER,
                List.of(battery.id()),
                "The plan says that the " + (negative ? "negative" : "positive")
                        + " pole is earthed (earthPolarity; negative if left out), but " + has + ". " + wrong
                        + ", which destroys the diodes of an alternator and electronics at once"
                        + (someRight ? ", and its neighbour drives a heavy current through it." : "."),
                List.of(),
                WIRING,
                "Check this before anything else is done: see which pole's lead goes to the body, and which the maker's"
                        + " data or the markings of alternator, radio and other electronics call for. Then put earthPolarity"
                        + " right, or turn the battery's leads in the plan and on the vehicle, and review again: the"
                        + " other findings hold only then.");
    }
}
