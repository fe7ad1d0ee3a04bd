package loomwright.review.feed;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import loomwright.answer.Basis;
import loomwright.answer.Finding;
import loomwright.backfeed.Survey.Moment;
import loomwright.circuit.Coil;
import loomwright.circuit.Consumer;
import loomwright.circuit.Part;
import loomwright.operation.PlanReadings.StepFinding;
import loomwright.operation.StepFindings;
import loomwright.review.context.Check;
import loomwright.review.context.FindingCode;
import loomwright.review.context.FindingWording;
import loomwright.review.context.ReviewContext;
import org.jspecify.annotations.Nullable;

/** Steps without a solution, shorts, and circuits that find no rest: each once, however many positions show it. */
public final class StepHealth implements Check {
    private static final Basis SOLVED = Basis.computed("solved currents and states", "Kirchhoff's laws and Ohm's law");

    private record Key(StepFinding.Kind kind, Set<String> ids) {}

    @Override
    public List<Finding> check(ReviewContext context) {
        Map<Key, Finding> findings = new LinkedHashMap<>();
        for (Moment moment : context.survey().moments()) {
            for (StepFinding found : StepFindings.of(moment.solved())) {
                if (isOfNoMatter(found, moment) || followsFromShort(context, found, moment)) {
                    continue;
                }
                findings.putIfAbsent(new Key(found.kind(), Set.copyOf(found.ids())), finding(found, moment));
            }
        }
        return List.copyOf(findings.values());
    }

    /** That a load which should be dead comes on and goes off by a trickle is told as a backfeed. */
    private static boolean isOfNoMatter(StepFinding found, Moment moment) {
        return found.kind() == StepFinding.Kind.OSCILLATING
                && StepFindings.isByOwnVoltage(moment.solved())
                && found.ids().stream()
                        .flatMap(id -> moment.solved().plan().findPart(id).stream())
                        .noneMatch(part -> isMeant(part, moment));
    }

    /** A module is meant to work when a coil is. */
    private static boolean isMeant(Part part, Moment moment) {
        return part instanceof Consumer consumer
                ? moment.isMeant(consumer)
                : moment.solved().plan().listParts(Coil.class).stream().anyMatch(moment::isMeant);
    }

    /** What a short does that is told at the fuse which blows; not one that takes another way. */
    private static boolean followsFromShort(ReviewContext context, StepFinding found, Moment moment) {
        return context.isShorted(moment)
                && (found.kind() != StepFinding.Kind.DEAD_SHORT
                        || found.ids().stream().anyMatch(context.shorted()::containsKey));
    }

    private static Finding finding(StepFinding found, Moment moment) {
        String text = found.text() + " So " + FindingWording.when(moment) + ".";
        return switch (found.kind()) {
            case UNSOLVABLE -> finding(FindingCode.UNSOLVABLE, found, text, "Look for a short or for sources joined.");
            case DEAD_SHORT ->
                finding(FindingCode.DEAD_SHORT, found, text, "Do not connect the battery until it is found.");
            case OSCILLATING ->
                finding(
                        FindingCode.OSCILLATING,
                        found,
                        text,
                        StepFindings.isByOwnVoltage(moment.solved())
                                ? "Take thicker wire in its feed and return, or look for a bad joint."
                                : "Feed the coil from before the contact.");
            case RELAY_RACE -> finding(FindingCode.RELAY_RACE, found, text, null);
            case OVERLOADED ->
                finding(FindingCode.SUPPLY_OVERLOADED, found, text, "Take thicker wire, or look for a bad joint.");
        };
    }

    private static Finding finding(FindingCode code, StepFinding found, String text, @Nullable String remedy) {
        return code.finding(found.kind().severity(), found.ids(), text, List.of(), SOLVED, remedy);
    }
}
