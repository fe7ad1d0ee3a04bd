package loomwright.review;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import loomwright.answer.Basis;
import loomwright.answer.Finding;
import loomwright.answer.Severity;
import loomwright.circuit.Battery;
import loomwright.circuit.EarthPolarity;
import loomwright.circuit.Plan;
import loomwright.review.FeedGraph.By;

/**
 * Whether the battery's pole on the chassis is the one that the plan names. Only what is wired or bolted together counts:
 * through a load or a contact either pole may be joined to the chassis, and by its volts a battery without an earth lead
 * would seem earthed at the wrong pole.
 */
final class EarthedPoles implements Check {
    private static final Basis WIRING = Basis.computed(
            "which pole of the battery wires and joints lead to the chassis", "breadth-first search of the plan");

    @Override
    public List<Finding> check(ReviewContext context) {
        Plan plan = context.plan();
        boolean negative = plan.system().earthPolarity() == EarthPolarity.NEGATIVE;
        String named = negative ? Battery.MINUS : Battery.PLUS;
        String other = negative ? Battery.PLUS : Battery.MINUS;
        Set<String> chassis =
                FeedGraph.of(plan).reach(List.of(FeedGraph.CHASSIS), EnumSet.of(By.WIRE, By.JOINT), Set.of());
        List<Battery> turned = new ArrayList<>();
        for (Battery battery : plan.listParts(Battery.class)) {
            if (chassis.contains(battery.terminal(named).toString())) {
                return List.of();
            } else if (chassis.contains(battery.terminal(other).toString())) {
                turned.add(battery);
            }
        }
        return turned.stream()
                .map(battery -> finding(battery, negative ? "negative" : "positive", other))
                .toList();
    }

    private static Finding finding(Battery battery, String earth, String pole) {
        return FindingCode.EARTH_POLARITY_CONTRADICTED.finding(
                Severity.DANGER,
                List.of(battery.id()),
                "The plan says that the " + earth + " pole is earthed (earthPolarity; negative if left out), but "
                        + battery.called() + " has " + battery.terminal(pole)
                        + " on the chassis. Either earthPolarity is"
                        + " wrong, or the battery is connected the wrong way round, which destroys the diodes of an"
                        + " alternator and electronics at once.",
                List.of(),
                WIRING,
                "Check this before anything else is done: see which pole's lead goes to the body, and which the maker's"
                        + " data or the markings of alternator, radio and other electronics call for. Then put earthPolarity"
                        + " right, or turn the battery's leads in the plan and on the vehicle, and review again: the"
                        + " other findings hold only then.");
    }
}
