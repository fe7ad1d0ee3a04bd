package loomwright.review.feed;

import static loomwright.message.Arg.arg;

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
import loomwright.message.Message;
import loomwright.operation.StepFinding;
import loomwright.operation.StepFindings;
import loomwright.review.context.Check;
import loomwright.review.context.FindingCode;
import loomwright.review.context.FindingWording;
import loomwright.review.context.ReviewContext;
import loomwright.review.context.ReviewText;
import loomwright.review.ignition.ModuleSupply;
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
                if (isOfNoMatter(found, moment)
                        || followsFromShort(context, found, moment)
                        || isShortOfVolts(context, found, moment)) {
                    continue;
                }
                findings.putIfAbsent(new Key(found.kind(), Set.copyOf(found.ids())), finding(found, moment));
            }
        }
        return List.copyOf(findings.values());
    }

    /** That a load which should be dead comes on and goes off by a trickle is reported as a backfeed. */
    private static boolean isOfNoMatter(StepFinding found, Moment moment) {
        return found.kind() == StepFinding.Kind.OSCILLATING
                && StepFindings.isByOwnVoltage(moment.solved())
                && found.ids().stream()
                        .flatMap(id -> moment.solved().plan().findPart(id).stream())
                        .noneMatch(part -> isMeant(part, moment));
    }

    /** That a module which falls out for want of volts goes on and off is reported with its volts. */
    private static boolean isShortOfVolts(ReviewContext context, StepFinding found, Moment moment) {
        return found.kind() == StepFinding.Kind.OSCILLATING
                && found.ids().stream()
                        .flatMap(id -> moment.solved().plan().findPart(id).stream())
                        .allMatch(part -> ModuleSupply.isUnsteady(context, part, moment.solved()));
    }

    /** A module is meant to work when a coil is. */
    private static boolean isMeant(Part part, Moment moment) {
        return part instanceof Consumer consumer
                ? moment.isMeant(consumer)
                : moment.solved().plan().listParts(Coil.class).stream().anyMatch(moment::isMeant);
    }

    /** What a short does that is reported at the fuse which blows; not one that takes another way. */
    private static boolean followsFromShort(ReviewContext context, StepFinding found, Moment moment) {
        return context.isShorted(moment)
                && (found.kind() != StepFinding.Kind.DEAD_SHORT
                        || found.ids().stream().anyMatch(context.shorted()::containsKey));
    }

    private static Finding finding(StepFinding found, Moment moment) {
        return switch (found.kind()) {
            case UNSOLVABLE ->
                finding(FindingCode.UNSOLVABLE, found, moment, ReviewText.FIND_SHORT_OR_JOINED_SOURCES.with());
            case DEAD_SHORT -> finding(FindingCode.DEAD_SHORT, found, moment, ReviewText.LEAVE_BATTERY_OFF.with());
            case OSCILLATING ->
                finding(
                        FindingCode.OSCILLATING,
                        found,
                        moment,
                        StepFindings.isByOwnVoltage(moment.solved())
                                ? ReviewText.REDUCE_RESISTANCE.with()
                                : ReviewText.FEED_COIL_BEFORE_CONTACT.with());
            case RELAY_RACE -> finding(FindingCode.RELAY_RACE, found, moment, null);
            case OVERLOADED ->
                finding(FindingCode.SUPPLY_OVERLOADED, found, moment, ReviewText.REDUCE_RESISTANCE.with());
        };
    }

    private static Finding finding(FindingCode code, StepFinding found, Moment moment, @Nullable Message remedy) {
        return Finding.of(
                        found.kind().severity(),
                        code.with(arg("found", found.message()), FindingWording.when(moment)),
                        SOLVED)
                .about(found.ids())
                .remedy(remedy);
    }
}
