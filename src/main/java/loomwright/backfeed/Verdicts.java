package loomwright.backfeed;

import static loomwright.message.Arg.arg;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import loomwright.answer.Severity;
import loomwright.backfeed.BackfeedReport.Cost;
import loomwright.backfeed.BackfeedReport.FeedPath;
import loomwright.backfeed.BackfeedReport.Occurrence;
import loomwright.backfeed.BackfeedReport.PathStep;
import loomwright.circuit.Consumer;
import loomwright.circuit.Electromagnet;
import loomwright.circuit.LightingConsumer;
import loomwright.circuit.Motor;
import loomwright.circuit.Plan;
import loomwright.circuit.Solenoid;
import loomwright.message.Arg;
import loomwright.message.Message;
import loomwright.operation.FeedStrength;
import loomwright.operation.Move;
import loomwright.operation.Step;

/** How serious an unintended feed is, and how to say it. */
public final class Verdicts {
    private Verdicts() {}

    /**
     * A starter, an ignition, a relay or a load at work when it should be off is a danger, a lamp that is lit a warning; what could stay
     * in but cannot pull in is a warning, as is a motor that stands and heats; a trickle a note (common practice, no source).
     */
    public static Severity severity(Consumer consumer, FeedStrength activity, boolean pulledIn) {
        if (activity == FeedStrength.OPERATES || (pulledIn && activity == FeedStrength.HOLDS)) {
            return consumer instanceof LightingConsumer ? Severity.WARNING : Severity.DANGER;
        }
        return activity == FeedStrength.LEAKS ? Severity.NOTE : Severity.WARNING;
    }

    /**
     * The worst occurrence of a load.
     *
     * @param wasIn whether its armature was pulled in already when the step began
     */
    static Message verdict(Plan plan, Consumer consumer, Occurrence worst, boolean wasIn) {
        BackfeedText text = switch (worst.level().activity()) {
            case OPERATES -> wasIn && hasArmature(consumer) ? BackfeedText.STAYS_IN : BackfeedText.OPERATES;
            case HOLDS -> worst.level().pulledIn() ? BackfeedText.STAYS_IN : BackfeedText.WOULD_STAY_IN;
            case GLOWS -> BackfeedText.GLOWS;
            case STALLS -> BackfeedText.STALLS;
            case LEAKS -> BackfeedText.LEAKS;
            case DEAD -> throw new IllegalStateException("a dead load is no occurrence");
        };
        Arg effectiveV = arg("effectiveV", worst.level().effectiveV());
        Arg currentA = arg("currentA", worst.level().currentA());
        // Of a solenoid with two windings a meter shows neither what they pull like together nor how that compares.
        boolean twoWindings = consumer instanceof Solenoid solenoid && solenoid.pullInResistanceOhm() != null;
        Message feed = twoWindings
                ? BackfeedText.FEED_OF_HOLD_IN.with(
                        arg("holdInV", worst.level().currentA() * ((Solenoid) consumer).holdInResistanceOhm()),
                        currentA)
                : BackfeedText.FEED.with(effectiveV, currentA);
        return text.with(
                arg("load", consumer.thing()),
                arg("does", does(consumer)),
                arg("feed", feed),
                when(plan, worst),
                moves(plan, worst),
                arg("operateV", worst.level().operateV()),
                arg("releaseV", worst.level().releaseV()),
                Arg.messages(
                        "windings",
                        twoWindings ? List.of(BackfeedText.WINDINGS_TOGETHER.with(effectiveV)) : List.of()));
    }

    /** What is asked of a load that is live by its own way at a time that the plan does not list. */
    static Message question(Plan plan, Consumer consumer, Occurrence occurrence) {
        return BackfeedText.ALSO_LIVE.with(arg("load", consumer.thing()), when(plan, occurrence));
    }

    /**
     * What comes of a remedy.
     *
     * @param losses the most first
     * @param restored ids of the loads that work again
     */
    static Message effect(Plan plan, List<Cost> losses, Collection<String> restored, double remainingV) {
        Optional<Cost> worst = losses.stream().findFirst();
        return BackfeedText.EFFECT.with(
                Arg.things(
                        "losing", worst.map(c -> plan.thing(c.load())).stream().toList()),
                arg("costV", worst.map(Cost::lossV).orElse(0.0)),
                Arg.words("when", worst.map(Cost::step).stream().toList()),
                Arg.things("restored", restored.stream().map(plan::thing).toList()),
                arg("trickle", remainingV == 0 ? 0 : 1),
                arg("remainingV", remainingV));
    }

    /** The way of a current, step by step, and back to where it began. */
    public static Arg path(Plan plan, FeedPath path) {
        List<PathStep> steps = new ArrayList<>(path.steps());
        steps.addAll(steps.subList(0, Math.min(1, steps.size())));
        return Arg.messages(
                "path",
                steps.stream()
                        .map(step -> code(plan, step, path).with(arg("name", plan.thing(step.id()))))
                        .toList());
    }

    /** A path begins at its source, and a motor is one only while it runs down. */
    private static BackfeedText code(Plan plan, PathStep step, FeedPath path) {
        if (step.equals(path.steps().get(0)) && plan.findPart(step.id()).orElse(null) instanceof Motor) {
            return BackfeedText.PATH_STEP_RUNNING_DOWN;
        }
        return step.againstFeed() ? BackfeedText.PATH_STEP_REVERSED : BackfeedText.PATH_STEP;
    }

    private static Arg when(Plan plan, Occurrence occurrence) {
        return arg("when", occurrence.step().in(plan, occurrence.changes()));
    }

    /** What is done to get there, where the positions of the switches alone do not show it. */
    private static Arg moves(Plan plan, Occurrence occurrence) {
        return Arg.messages(
                "moves",
                occurrence.remembered()
                        ? Move.parse(occurrence.after()).stream()
                                .map(move -> said(plan, move))
                                .toList()
                        : List.of());
    }

    private static Message said(Plan plan, Move move) {
        return move.turnsKey()
                ? BackfeedText.TURN_KEY.with(
                        arg("when", Step.of(move.to()).orElseThrow().in(plan, Map.of())))
                : BackfeedText.MOVE_SWITCH.with(arg("switch", plan.thing(move.what())), arg("position", move.to()));
    }

    private static boolean hasArmature(Consumer consumer) {
        return consumer instanceof Electromagnet;
    }

    private static String does(Consumer consumer) {
        if (hasArmature(consumer)) {
            return "pulls-in";
        } else if (consumer instanceof LightingConsumer) {
            return "is-lit";
        }
        return consumer instanceof Motor ? "runs" : "works";
    }
}
