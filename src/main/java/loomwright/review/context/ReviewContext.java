package loomwright.review.context;

import java.util.Collections;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import loomwright.backfeed.BackfeedReport;
import loomwright.backfeed.Survey;
import loomwright.backfeed.Survey.Moment;
import loomwright.circuit.Fuse;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.Solenoid;
import loomwright.circuit.Wire;
import loomwright.operation.MissingConnections;
import loomwright.operation.MissingConnections.Missing;
import loomwright.operation.Step;

/**
 * What the checks look at: the plan, solved in every step and switch position, and what was made of that.
 *
 * <p>Steps that last are distinguished from those that pass: a wire stands the starter's current for the seconds it flows.
 */
public final class ReviewContext {
    private final Plan plan;
    private final Survey survey;
    private final BackfeedReport backfeed;
    private final Protection protection;
    private final List<Missing> missing;
    private final List<Moment> intended;
    private final List<Moment> moments;
    private final Set<Moment> judged = Collections.newSetFromMap(new IdentityHashMap<>());
    private final Set<Moment> shortedMoments = Collections.newSetFromMap(new IdentityHashMap<>());
    private final Map<String, Moment> shorted;
    /** By id of a wire; it has none of which only the resistance is known. */
    private final Map<String, WireRating> ratings = new HashMap<>();

    private final PeakCurrents everAtAll;
    private final PeakCurrents lasting;
    private final PeakCurrents cranking;

    public ReviewContext(Plan plan, Survey survey, BackfeedReport backfeed) {
        this.plan = plan;
        this.survey = survey;
        this.backfeed = backfeed;
        this.protection = Protection.of(plan);
        this.missing = MissingConnections.of(plan);
        plan.wires().forEach(wire -> WireRating.find(wire, plan.system()).ifPresent(r -> ratings.put(wire.id(), r)));
        List<Solenoid> starters = plan.listParts(Solenoid.class);
        this.intended = survey.solvedMoments().stream()
                .filter(m -> !startsUnintended(starters, m))
                .toList();
        this.shorted = ShortedFuses.find(plan.listParts(Fuse.class), intended);
        this.moments = shorted.isEmpty()
                ? intended
                : intended.stream()
                        .filter(m -> ShortedFuses.find(plan.listParts(Fuse.class), List.of(m))
                                .isEmpty())
                        .toList();
        judged.addAll(moments);
        shortedMoments.addAll(intended);
        shortedMoments.removeAll(judged);
        this.everAtAll = PeakCurrents.of(moments());
        this.lasting = PeakCurrents.of(lastingMoments());
        this.cranking = PeakCurrents.of(
                moments().stream().filter(m -> m.solved().step() == Step.CRANK).toList());
    }

    public Plan plan() {
        return plan;
    }

    public Survey survey() {
        return survey;
    }

    public BackfeedReport backfeed() {
        return backfeed;
    }

    public Protection protection() {
        return protection;
    }

    /** Leads that are off and returns that never reach earth. */
    public List<Missing> missing() {
        return missing;
    }

    /** Whether a part cannot work because a lead of it is off, or its return never reaches earth. */
    public boolean isUnconnected(Part part) {
        return missing.stream().anyMatch(m -> m.part().id().equals(part.id()));
    }

    /** What a wire may carry; empty for one of which only the resistance is known. */
    public Optional<WireRating> findRating(Wire wire) {
        return Optional.ofNullable(ratings.get(wire.id()));
    }

    /** By id of each fuse that blows at once, the moment in which it carries most. */
    public Map<String, Moment> shorted() {
        return shorted;
    }

    /**
     * Every step of every situation that has a solution, but for those in which a starter turns unintentionally, or a
     * fuse blows at once: what is overloaded then is cured with the backfeed, or the short, itself.
     */
    public List<Moment> moments() {
        return moments;
    }

    /** Whether a moment is among {@link #moments}. */
    public boolean isJudged(Moment moment) {
        return judged.contains(moment);
    }

    /** Whether a fuse blows at once in a moment; one in which a starter turns unintentionally is not looked at for that. */
    public boolean isShorted(Moment moment) {
        return shortedMoments.contains(moment);
    }

    /** As {@link #moments}, with those in which a fuse blows at once. */
    public List<Moment> momentsWithShorts() {
        return intended;
    }

    private static boolean startsUnintended(List<Solenoid> starters, Moment moment) {
        return starters.stream().anyMatch(s -> moment.solved().isActive(s) && moment.isUnintended(s));
    }

    /** Those that may last for hours. */
    public List<Moment> lastingMoments() {
        return moments().stream().filter(m -> lasts(m.solved().step())).toList();
    }

    public static boolean lasts(Step step) {
        return step != Step.CRANK && step != Step.OFF_ENGINE_TURNING;
    }

    /** The largest currents of any moment. */
    public PeakCurrents everAtAll() {
        return everAtAll;
    }

    /** The largest currents that last. */
    public PeakCurrents lasting() {
        return lasting;
    }

    /** The largest currents while the starter turns the engine. */
    public PeakCurrents cranking() {
        return cranking;
    }
}
