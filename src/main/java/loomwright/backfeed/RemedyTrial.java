package loomwright.backfeed;

import java.util.BitSet;
import java.util.Comparator;
import java.util.HashMap;
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
import loomwright.backfeed.LoadFigures.Asked;
import loomwright.backfeed.Situations.Situation;
import loomwright.circuit.Consumer;
import loomwright.circuit.Plan;
import loomwright.operation.FeedStrength;
import loomwright.operation.MovedPlan;
import loomwright.operation.PlanSolver;
import loomwright.operation.SettingScan;
import loomwright.operation.SolvedStep;
import loomwright.operation.Step;
import loomwright.operation.SwitchSettings;

/**
 * Tries a change on a copy of the plan, in every step and situation: is the load dead where it should be but for a trickle, is
 * nothing else fed more than a trickle that was not before, does everything still work that did, at what loss in volts, is what gets too little
 * no worse off, and what works again?
 */
final class RemedyTrial {
    /** A loss below this no meter in a workshop shows. */
    private static final double COST_V = 0.01;

    /** How far a scan is off at most, as a share: a loss that is so close to a limit is solved as it is reported. */
    private static final double CLOSE = 1e-6;

    /** What a load that gets too little may lose, as a share of the nominal voltage (common practice, no source). */
    private static final double STARVED_SHARE = 0.05;

    /** Situations in which a candidate is tried first. */
    private static final int FEW = 8;

    /** Of the current that charges a battery, what a remedy must leave (common practice, no source). */
    private static final double LEAST_CHARGE_SHARE = 0.8;

    private final Survey before;
    private final List<LoadFigures> beforeFigures;
    private final Consumer load;
    private final int loadNumber;
    private final PlanSolver solver;
    private final List<FeedCase> cases;
    private final Set<List<Integer>> fedAt;

    /**
     * Prepares trials.
     *
     * @param beforeFigures of all moments, see {@link #figures}
     * @param cases in which the load is fed
     * @param fedAt the settings of these, as {@link Situation#setting}
     */
    RemedyTrial(
            Survey before,
            List<LoadFigures> beforeFigures,
            Consumer load,
            PlanSolver solver,
            List<FeedCase> cases,
            Set<List<Integer>> fedAt) {
        this.before = before;
        this.beforeFigures = beforeFigures;
        this.load = load;
        this.loadNumber = before.consumers().indexOf(load);
        this.solver = solver;
        this.cases = cases;
        this.fedAt = fedAt;
    }

    /** The figures of all moments of the plan as it is, which serve the trials for all loads. */
    static List<LoadFigures> figures(Survey before) {
        Asked asked = Asked.of(before.plan(), null);
        return before.moments().stream()
                .map(moment -> LoadFigures.of(asked, moment.solved()))
                .toList();
    }

    /** What comes of a change, as far as it was tried. */
    private static final class Effects {
        /** By load and step, the largest loss. */
        final Map<String, Cost> costs = new LinkedHashMap<>();

        final Set<String> restoredLoads = new LinkedHashSet<>();
        double remainingV;
        boolean takesPart;
        /** The combination looked at, and by what it shows the combination that shows it most plainly. */
        int at;

        final Map<String, Integer> shownAt = new HashMap<>();

        void lose(Consumer consumer, Step step, double beforeV, double afterV) {
            Cost cost = new Cost(consumer.id(), step, beforeV, afterV);
            String key = consumer.id() + "@" + step;
            Cost known = costs.get(key);
            if (known == null || cost.lossV() > known.lossV()) {
                costs.put(key, cost);
                if (cost.lossV() > COST_V * (1 - CLOSE)) {
                    shownAt.put(key, at);
                }
            }
        }

        void remain(double trickleV) {
            if (trickleV > remainingV) {
                remainingV = trickleV;
                shownAt.put("remains", at);
            }
        }

        void restore(Consumer consumer) {
            if (restoredLoads.add(consumer.id())) {
                shownAt.put("restores " + consumer.id(), at);
            }
        }

        void takePart() {
            if (!takesPart) {
                takesPart = true;
                shownAt.put("takes part", at);
            }
        }

        /** The combinations whose figures are reported; that of the plan as it is, if none is. */
        int[] telling() {
            return shownAt.isEmpty()
                    ? new int[] {0}
                    : shownAt.values().stream()
                            .mapToInt(Integer::intValue)
                            .distinct()
                            .sorted()
                            .toArray();
        }

        Remedy remedy(Plan plan, Candidate candidate, List<PatchOperation> patch) {
            List<Cost> losses = costs.values().stream()
                    .filter(c -> c.lossV() > COST_V)
                    .sorted(Comparator.comparingDouble(Cost::lossV).reversed())
                    .toList();
            return new Remedy(
                    candidate.kind(),
                    candidate.change(),
                    Verdicts.effect(plan, losses, restoredLoads, remainingV),
                    candidate.at(),
                    losses.isEmpty() ? 0 : losses.get(0).lossV(),
                    losses,
                    remainingV,
                    List.copyOf(restoredLoads),
                    patch);
        }
    }

    /** A candidate made, ready to be solved. */
    record Made(Candidate candidate, Plan changed, SettingScan scan) {}

    Made make(Candidate candidate) {
        Plan changed = candidate.changed().get();
        return new Made(candidate, changed, new SettingScan(SwitchSettings.of(changed), solver));
    }

    /** The remedy if the change works: decided by a scan of every combination, its figures as reported. */
    Optional<Remedy> run(Made made, Progress progress) {
        Candidate candidate = made.candidate();
        Plan changed = made.changed();
        SettingScan scan = made.scan();
        if (!curesSequences(scan)) {
            return Optional.empty();
        }
        int[] all = IntStream.range(0, before.situations().size()).toArray();
        return scan(candidate, changed, scan, all, progress)
                .filter(effects -> effects.takesPart)
                .flatMap(effects -> report(candidate, changed, scan, effects.telling()))
                .filter(effects -> effects.takesPart)
                .map(effects -> remedy(candidate, changed, effects));
    }

    /** As {@link #run}, only where the load is fed and by the scan alone: whether it is worth more. */
    Optional<Remedy> runWhereFed(Made made, Progress progress) {
        int[] few = IntStream.range(0, before.situations().size())
                .filter(i -> fedAt.contains(before.situations().get(i).setting()))
                .limit(FEW)
                .toArray();
        return scan(made.candidate(), made.changed(), made.scan(), few, progress)
                .map(effects -> remedy(made.candidate(), made.changed(), effects));
    }

    private Remedy remedy(Candidate candidate, Plan changed, Effects effects) {
        return effects.remedy(before.plan(), candidate, PlanPatch.between(before.plan(), changed));
    }

    private Asked asked(Candidate candidate, Plan changed) {
        String added = candidate.added();
        Asked asked = Asked.of(
                before.plan(), added == null ? null : changed.findPart(added).orElseThrow());
        // Parts that a remedy replaces have other limits.
        return new Asked(
                asked.loads().stream()
                        .map(one -> changed.findPart(one.id())
                                .map(Consumer.class::cast)
                                .orElse(one))
                        .toList(),
                asked.batteries(),
                asked.machines(),
                asked.added());
    }

    /** Goes through combinations as a scan decides them; empty as soon as something speaks against the change. */
    private Optional<Effects> scan(
            Candidate candidate, Plan changed, SettingScan scan, int[] combinations, Progress progress) {
        Effects effects = new Effects();
        MeantTable meant = new MeantTable(SwitchSettings.of(changed), scan.consumers());
        Asked asked = asked(candidate, changed);
        List<String> ids = scan.consumers().stream().map(Consumer::id).toList();
        int[] number =
                asked.loads().stream().mapToInt(one -> ids.indexOf(one.id())).toArray();
        for (int k = 0; k < combinations.length; k++) {
            int[] setting = setting(combinations[k]);
            effects.at = combinations[k];
            BitSet active = new BitSet();
            for (Step step : Step.values()) {
                active = scan.settle(setting, step, active);
                LoadFigures is = LoadFigures.of(asked, scan, number, meant, step, setting);
                if (!holds(was(combinations[k], step), is, effects)) {
                    return Optional.empty();
                }
            }
            progress.at(k + 1L, combinations.length);
        }
        return Optional.of(effects);
    }

    private int[] setting(int situation) {
        return before.situations().get(situation).setting().stream()
                .mapToInt(Integer::intValue)
                .toArray();
    }

    /** The same as it is reported. */
    private Optional<Effects> report(Candidate candidate, Plan changed, SettingScan scan, int[] combinations) {
        Effects effects = new Effects();
        Asked asked = asked(candidate, changed);
        for (int at : combinations) {
            for (SolvedStep step : scan.report(setting(at))) {
                if (!holds(was(at, step.step()), LoadFigures.of(asked, step), effects)) {
                    return Optional.empty();
                }
            }
        }
        return Optional.of(effects);
    }

    private LoadFigures was(int situation, Step step) {
        return beforeFigures.get(situation * Step.values().length + step.place());
    }

    /** Whether a load that a relay keeps in after a sequence of moves is let go now. */
    private boolean curesSequences(SettingScan scan) {
        int number = scan.consumers().stream().map(Consumer::id).toList().indexOf(load.id());
        return cases.stream().filter(FeedCase::memory).allMatch(one -> {
            MovedPlan.follow(scan, one.moves());
            FeedStrength strength = scan.solved() ? scan.activity(number) : FeedStrength.OPERATES;
            return strength == FeedStrength.DEAD || strength == FeedStrength.LEAKS;
        });
    }

    /** Whether nothing speaks against the change in one moment; notes what comes of it. */
    private boolean holds(LoadFigures was, LoadFigures is, Effects effects) {
        if (!is.at().solved() || (is.at().oscillating() && !was.at().oscillating())) {
            return false;
        }
        if (is.addedWorks()) {
            effects.takePart();
        }
        if (!was.at().solved()) {
            return true;
        }
        if (!keepsCharge(was, is)) {
            return false;
        }
        boolean sound = !(was.isUnintended(loadNumber) && was.operates(loadNumber));
        for (int c = 0; c < before.consumers().size(); c++) {
            Consumer consumer = before.consumers().get(c);
            if (is.isUnintended(c)) {
                boolean trickle = Verdicts.severity(consumer, is.strength()[c], is.pulledIn()[c]) == Severity.NOTE;
                if (!trickle && (c == loadNumber || is.isStronger(c, was))) {
                    return false;
                } else if (c == loadNumber) {
                    effects.remain(is.effectiveV()[c]);
                }
            } else if (was.meant()[c] && !was.at().step().passing() && !keepsItsFeed(c, was, is, sound, effects)) {
                return false;
            }
        }
        return true;
    }

    /** A wire that charges, or excites the machine that does, is there for that: what it carries is its purpose. */
    private static boolean keepsCharge(LoadFigures was, LoadFigures is) {
        if (!was.at().step().charging()) {
            return true;
        }
        boolean excited = IntStream.range(0, was.excited().length).allMatch(m -> !was.excited()[m] || is.excited()[m]);
        return excited
                && IntStream.range(0, was.chargeA().length)
                        .allMatch(b -> was.chargeA()[b] <= FeedStrength.TRICKLE_A
                                || is.chargeA()[b] >= LEAST_CHARGE_SHARE * was.chargeA()[b]);
    }

    /**
     * Whether a load that is meant to work does if it did, and gets no less if it did not.
     *
     * @param sound whether nothing worked unintentionally, so that what the load had was its own
     */
    private boolean keepsItsFeed(int c, LoadFigures was, LoadFigures is, boolean sound, Effects effects) {
        double beforeV = was.acrossV()[c];
        double afterV = is.acrossV()[c];
        if (was.operates(c)) {
            if (sound) {
                effects.lose(before.consumers().get(c), is.at().step(), beforeV, afterV);
            }
            return is.operates(c);
        } else if (is.operates(c)) {
            effects.restore(before.consumers().get(c));
        }
        return beforeV - afterV <= STARVED_SHARE * before.plan().system().nominalVoltageV();
    }
}
