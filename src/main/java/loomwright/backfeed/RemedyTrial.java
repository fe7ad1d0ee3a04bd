package loomwright.backfeed;

import java.util.Comparator;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import loomwright.answer.Progress;
import loomwright.answer.Severity;
import loomwright.backfeed.BackfeedReport.Cost;
import loomwright.backfeed.BackfeedReport.PatchOperation;
import loomwright.backfeed.BackfeedReport.Remedy;
import loomwright.backfeed.Situations.Situation;
import loomwright.backfeed.Survey.Moment;
import loomwright.circuit.Battery;
import loomwright.circuit.Consumer;
import loomwright.circuit.Generator;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.Relay;
import loomwright.operation.FeedStrength;
import loomwright.operation.MovedPlan;
import loomwright.operation.PlanSettings;
import loomwright.operation.PlanSolver;
import loomwright.operation.SolvedStep;
import loomwright.operation.Step;

/**
 * Tries a change on a copy of the plan, in every step and situation: is the load dead where it should be but for a trickle, is
 * nothing else fed more than a trickle that was not before, does everything still work that did, at what loss in volts, is what gets too little
 * no worse off, and what works again?
 */
final class RemedyTrial {
    /** A loss below this no meter in a workshop shows. */
    private static final double COST_V = 0.01;
    /** What a load that gets too little may lose, as a share of the nominal voltage (common practice, no source). */
    private static final double STARVED_SHARE = 0.05;

    /** Situations in which a candidate is tried first. */
    private static final int FEW = 8;

    /** Of the current that charges a battery, what a remedy must leave (common practice, no source). */
    private static final double LEAST_CHARGE_SHARE = 0.8;

    private final Survey before;
    private final Consumer load;
    private final PlanSolver solver;
    private final List<FeedCase> cases;
    private final Set<List<Integer>> fedAt;

    /**
     * Prepares trials.
     *
     * @param cases in which the load is fed
     * @param fedAt the settings of these, as {@link Situation#setting}
     */
    RemedyTrial(Survey before, Consumer load, PlanSolver solver, List<FeedCase> cases, Set<List<Integer>> fedAt) {
        this.before = before;
        this.load = load;
        this.solver = solver;
        this.cases = cases;
        this.fedAt = fedAt;
    }

    /** What comes of a change, as far as it was tried. */
    private static final class Effects {
        /** By load and step, the largest loss. */
        final Map<String, Cost> costs = new LinkedHashMap<>();

        final Set<String> restores = new LinkedHashSet<>();
        double remainingV;

        void lose(Consumer consumer, Step step, double beforeV, double afterV) {
            costs.merge(
                    consumer.id() + "@" + step,
                    new Cost(consumer.id(), step, beforeV, afterV),
                    (a, b) -> a.lossV() >= b.lossV() ? a : b);
        }

        void remain(double trickleV) {
            remainingV = Math.max(remainingV, trickleV);
        }

        Remedy remedy(Plan plan, Candidate candidate, List<PatchOperation> patch) {
            List<Cost> losses = costs.values().stream()
                    .filter(c -> c.lossV() > COST_V)
                    .sorted(Comparator.comparingDouble(Cost::lossV).reversed())
                    .toList();
            return new Remedy(
                    candidate.kind(),
                    candidate.change(),
                    Verdicts.effect(plan, losses, restores, remainingV),
                    candidate.at(),
                    losses.isEmpty() ? 0 : losses.get(0).lossV(),
                    losses,
                    remainingV,
                    List.copyOf(restores),
                    patch);
        }
    }

    /** The remedy if the change works. */
    Optional<Remedy> run(Candidate candidate, Progress progress) {
        Plan changed = candidate.changed().get();
        return curesSequences(changed)
                ? run(
                        candidate,
                        changed,
                        IntStream.range(0, before.situations().size()).toArray(),
                        true,
                        progress)
                : Optional.empty();
    }

    /** As {@link #run}, only where the load is fed: whether it is worth more. */
    Optional<Remedy> runWhereFed(Candidate candidate, Progress progress) {
        int[] few = IntStream.range(0, before.situations().size())
                .filter(i -> fedAt.contains(before.situations().get(i).setting()))
                .limit(FEW)
                .toArray();
        return run(candidate, candidate.changed().get(), few, false, progress);
    }

    private Optional<Remedy> run(
            Candidate candidate, Plan changed, int[] combinations, boolean mustTakePart, Progress progress) {
        Effects effects = new Effects();
        List<List<Part>> open = Situations.open(changed);
        PlanSettings settings = solver.settings(changed);
        boolean takesPart = false;
        for (int k = 0; k < combinations.length; k++) {
            int at = combinations[k];
            Situation situation =
                    Situations.at(changed, open, before.situations().get(at).setting());
            Iterator<Moment> was = before.momentsOf(at).iterator();
            Iterator<SolvedStep> steps = settings.steps(situation.plan());
            while (steps.hasNext()) {
                Moment is = new Moment(situation, steps.next());
                if (!holds(was.next(), is, effects)) {
                    return Optional.empty();
                }
                takesPart |= takesPart(candidate, is.solved());
            }
            progress.at(k + 1L, combinations.length);
        }
        return takesPart || !mustTakePart
                ? Optional.of(effects.remedy(before.plan(), candidate, PlanPatch.between(before.plan(), changed)))
                : Optional.empty();
    }

    /** Whether a load that a relay keeps in after a sequence of moves is let go now. */
    private boolean curesSequences(Plan changed) {
        return cases.stream().filter(FeedCase::memory).allMatch(one -> {
            SolvedStep solved = MovedPlan.follow(changed, one.moves(), solver);
            FeedStrength strength = solved.solved() ? solved.activity(load) : FeedStrength.OPERATES;
            return strength == FeedStrength.DEAD || strength == FeedStrength.LEAKS;
        });
    }

    /** A part that is added takes part if a diode conducts, or a relay pulls in, at some time; otherwise it is of no use. */
    private static boolean takesPart(Candidate candidate, SolvedStep solved) {
        String added = candidate.added();
        if (added == null) {
            return true;
        } else if (!solved.solved()) {
            return false;
        }
        Part part = solved.plan().findPart(added).orElseThrow();
        return part instanceof Relay
                ? solved.isActive(part)
                : Math.abs(solved.currentA(solved.firstBranchOf(added))) > FeedStrength.TRICKLE_A;
    }

    /** Whether nothing speaks against the change in one moment; notes what comes of it. */
    private boolean holds(Moment was, Moment is, Effects effects) {
        if (!is.solved().solved() || (is.solved().oscillating() && !was.solved().oscillating())) {
            return false;
        }
        if (!was.solved().solved()) {
            return true;
        }
        if (!keepsCharge(was.solved(), is.solved())) {
            return false;
        }
        boolean sound = !worksUnasked(load, was);
        for (Consumer consumer : before.consumers()) {
            if (is.isUnintended(consumer)) {
                boolean trickle = Verdicts.severity(consumer, is.solved().activity(consumer), is.isPulledIn(consumer))
                        == Severity.NOTE;
                if (!trickle && (consumer.id().equals(load.id()) || isStronger(consumer, is, was))) {
                    return false;
                } else if (consumer.id().equals(load.id())) {
                    effects.remain(is.solved().effectiveV(load));
                }
            } else if (was.isMeant(consumer)
                    && !was.solved().step().passing()
                    && !keepsItsFeed(consumer, was, is, sound, effects)) {
                return false;
            }
        }
        return true;
    }

    /** A wire that charges, or excites the machine that does, is there for that: what it carries is its purpose. */
    private static boolean keepsCharge(SolvedStep was, SolvedStep is) {
        if (!was.step().charging()) {
            return true;
        }
        boolean excited = was.plan().listParts(Generator.class).stream()
                .allMatch(machine -> !was.isActive(machine) || is.isActive(machine));
        return excited
                && was.plan().listParts(Battery.class).stream()
                        .allMatch(battery -> chargeA(is, battery) >= LEAST_CHARGE_SHARE * chargeA(was, battery));
    }

    private static double chargeA(SolvedStep solved, Battery battery) {
        return Math.max(0, -solved.currentA(solved.firstBranchOf(battery.id())));
    }

    private static boolean worksUnasked(Consumer consumer, Moment moment) {
        return moment.isUnintended(consumer) && moment.solved().activity(consumer) == FeedStrength.OPERATES;
    }

    /**
     * Whether a load that is meant to work does if it did, and gets no less if it did not.
     *
     * @param sound whether nothing worked unintentionally, so that what the load had was its own
     */
    private static boolean keepsItsFeed(Consumer consumer, Moment was, Moment is, boolean sound, Effects effects) {
        double beforeV = Math.abs(was.solved().acrossV(consumer));
        double afterV = Math.abs(is.solved().acrossV(consumer));
        boolean works = is.solved().activity(consumer) == FeedStrength.OPERATES;
        if (was.solved().activity(consumer) == FeedStrength.OPERATES) {
            if (sound) {
                effects.lose(consumer, is.solved().step(), beforeV, afterV);
            }
            return works;
        } else if (works) {
            effects.restores.add(consumer.id());
        }
        double nominalV = is.solved().plan().system().nominalVoltageV();
        return beforeV - afterV <= STARVED_SHARE * nominalV;
    }

    private static boolean isStronger(Consumer consumer, Moment one, Moment other) {
        return one.solved().activity(consumer).compareTo(other.solved().activity(consumer)) < 0;
    }
}
