package loomwright.mistakes;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import loomwright.answer.Severity;
import loomwright.circuit.Plan;
import loomwright.circuit.fault.FaultWording;
import loomwright.circuit.fault.SingleFault;
import loomwright.message.Arg;
import loomwright.message.Argument.Instant;
import loomwright.message.Argument.Thing;
import loomwright.message.Message;
import loomwright.mistakes.MistakesReport.Backfeed;
import loomwright.mistakes.MistakesReport.Effect;
import loomwright.mistakes.MistakesReport.Limit;
import loomwright.mistakes.MistakesReport.Mistake;
import loomwright.mistakes.MistakesReport.Notice;
import loomwright.mistakes.MistakesReport.Overload;
import loomwright.mistakes.MistakesReport.WithoutMistake;
import loomwright.network.NoConvergence;
import loomwright.operation.PlanSolver;
import loomwright.operation.SolvedStep;
import loomwright.operation.Step;

/**
 * Solves a plan with one mistake in it, in every step and setting, and compares it with the sound plan. Fuses that carry more
 * than opens them are opened one after the other and the plan solved again, until none opens any more.
 *
 * <p>May be used by several threads, each with a solver of its own: that holds work space.
 */
final class Consequences {
    /** What was found of a mistake so far. */
    private record Effects(
            Notices notices,
            Overloads overloads,
            Map<String, Backfeed> backfeeds,
            Set<String> blown,
            List<Note> notes,
            List<Message> unsettled) {
        Effects(Notices notices, Overloads overloads) {
            this(
                    notices,
                    overloads,
                    new LinkedHashMap<>(),
                    new LinkedHashSet<>(),
                    new ArrayList<>(),
                    new ArrayList<>());
        }
    }

    private final Plan plan;
    private final List<SwitchSetting> settings;
    private final List<FusedSteps> sound;
    private final Capacities capacities;
    private final SoundLoads soundLoads;
    private final FusedSteps.Alike unnoticed;
    private final SparkAndCharge sparkAndCharge;

    Consequences(Plan plan, PlanSolver solver) {
        this(plan, solver, new SoundLoads());
    }

    private Consequences(Plan plan, PlanSolver solver, SoundLoads soundLoads) {
        this(plan, solver, soundLoads, new Unnoticed(new Capacities(plan), soundLoads)::isSure);
    }

    /** With a judge of its own of which steps need no solution. */
    Consequences(Plan plan, PlanSolver solver, SoundLoads soundLoads, FusedSteps.Alike unnoticed) {
        this.plan = plan;
        this.soundLoads = soundLoads;
        this.settings = SwitchSetting.list(plan);
        this.capacities = new Capacities(plan);
        this.unnoticed = unnoticed;
        FusedSteps.Solver soundSolver = new FusedSteps.Solver(solver);
        this.sound = settings.stream().map(s -> soundSolver.solve(s.plan())).toList();
        this.sparkAndCharge =
                new SparkAndCharge(settings.get(0).plan(), sound.get(0).first(), solver);
    }

    /** What the plan does wrong by itself: it is no consequence of a mistake. */
    WithoutMistake withoutMistake() {
        Notices notices = new Notices();
        Overloads overloads = new Overloads(capacities);
        Set<String> blown = new LinkedHashSet<>();
        for (int i = 0; i < settings.size(); i++) {
            SwitchSetting setting = settings.get(i);
            int stages = sound.get(i).stages().size();
            for (int stage = 0; stage < stages; stage++) {
                boolean last = stage == stages - 1;
                for (SolvedStep step : sound.get(i).stages().get(stage)) {
                    overloads.add(step, setting.at(step.step()), last);
                }
            }
            sound.get(i).last().forEach(step -> notices.add(step, setting.at(step.step())));
            blown.addAll(sound.get(i).blown());
        }
        notices.addNeverWorking(plan, sound.stream().map(FusedSteps::last).toList());
        return new WithoutMistake(
                sentences(blown, notices.list(), List.of(), overloads.listClear()),
                List.copyOf(blown),
                notices.list(),
                overloads.listClear());
    }

    int settings() {
        return settings.size();
    }

    /** What a mistake does; settings in which the circuit does not settle are named in the notes, the others effects. */
    Mistake of(SingleFault fault, PlanSolver solver) {
        Effects effects = new Effects(new Notices(), new Overloads(capacities));
        FusedSteps.Solver faulty = new FusedSteps.Solver(solver);
        for (int i = 0; i < settings.size(); i++) {
            try {
                collect(fault, i, faulty, solver, effects);
            } catch (NoConvergence stuck) {
                effects.unsettled().add(notCalculated(settings.get(i), stuck.elementIds()));
            }
        }
        effects.unsettled().forEach(message -> effects.notes().add(new Note(Severity.WARNING, message)));
        return mistake(fault, effects);
    }

    private Message notCalculated(SwitchSetting setting, List<String> elements) {
        return MistakeText.NOT_CALCULATED.with(
                Arg.list("switches", setting.at(Step.OFF).switches()), Arg.texts("elements", elements));
    }

    private void collect(
            SingleFault fault, int i, FusedSteps.Solver solverOfFault, PlanSolver solver, Effects effects) {
        SwitchSetting setting = settings.get(i);
        FusedSteps before = sound.get(i);
        // The notes on a fault read off the plan as drawn what is new in it, such as the end of a wire that is off.
        // Where the sound plan blows a fuse, a step is compared with one in which that is open: the figures must be of
        // the mistake.
        boolean comparable = i > 0 && before.blown().isEmpty();
        FusedSteps after = solverOfFault.solve(
                fault.applyTo(setting.plan()), comparable ? before.first() : FusedSteps.NOTHING_KNOWN, unnoticed);
        if (i == 0) {
            effects.notes().addAll(FaultNotes.of(fault, plan, after.first()));
            effects.notes().addAll(sparkAndCharge.compare(after.plan(), after.first(), solver));
        }
        // What carries too much until the fuses are open, then what still does.
        int stages = after.stages().size();
        for (int stage = 0; stage < stages; stage++) {
            boolean last = stage == stages - 1;
            compare(
                    last ? before.last() : before.first(),
                    after.stages().get(stage),
                    setting,
                    last,
                    solver,
                    effects.overloads());
        }
        after.blown().stream().filter(fuse -> !before.blown().contains(fuse)).forEach(effects.blown()::add);
        for (int s = 0; s < after.last().size(); s++) {
            if (after.last().get(s) == before.last().get(s)) {
                continue;
            }
            Instant when = setting.at(after.last().get(s).step());
            effects.notices()
                    .compare(
                            before.last().get(s),
                            soundLoads.in(before.last().get(s)),
                            after.last().get(s),
                            when);
            addBackfeeds(before.last().get(s), after.last().get(s), when, effects.backfeeds());
        }
    }

    private void compare(
            List<SolvedStep> before,
            List<SolvedStep> after,
            SwitchSetting setting,
            boolean last,
            PlanSolver solver,
            Overloads overloads) {
        for (int s = 0; s < after.size(); s++) {
            if (after.get(s) != before.get(s)) {
                overloads.compare(
                        before.get(s), after.get(s), setting.at(after.get(s).step()), last);
            }
        }
        ReversedElectronics.list(before, after, setting, solver).forEach(o -> overloads.add(o, last));
    }

    private static void addBackfeeds(
            SolvedStep sound, SolvedStep faulty, Instant when, Map<String, Backfeed> backfeeds) {
        Set<String> before = against(sound).keySet();
        against(faulty).forEach((wire, currentA) -> {
            if (!before.contains(wire)) {
                backfeeds.merge(
                        wire,
                        new Backfeed(wire, when, currentA),
                        (a, b) -> b.currentA() > a.currentA() * (1 + 1e-9) ? b : a);
            }
        });
    }

    private static Map<String, Double> against(SolvedStep solved) {
        Map<String, Double> wires = new LinkedHashMap<>();
        for (int i = 0; solved.solved() && i < solved.branches().size(); i++) {
            if (solved.isAgainstFeed(i)) {
                wires.put(solved.branches().get(i).id(), Math.abs(solved.currentA(i)));
            }
        }
        return wires;
    }

    private Mistake mistake(SingleFault fault, Effects effects) {
        List<Notice> notices = effects.notices().list();
        List<Overload> overloads = effects.overloads().list();
        List<Backfeed> backfeeds = List.copyOf(effects.backfeeds().values());
        return new Mistake(
                fault.kind(),
                fault.ids(),
                FaultWording.of(fault, plan),
                severity(notices, overloads, effects),
                summary(notices, overloads, backfeeds, effects),
                List.copyOf(effects.blown()),
                notices,
                overloads,
                backfeeds,
                effects.notes().stream().map(Note::message).toList());
    }

    /**
     * Fire and movement that nobody started are a danger; what stops working, wears out or only blows its fuse is a warning (common
     * practice, no source).
     */
    private static Severity severity(List<Notice> notices, List<Overload> overloads, Effects effects) {
        boolean fire = overloads.stream()
                .anyMatch(o -> !o.endedByFuse()
                        && (o.kind() == Limit.WIRE_AMPACITY
                                || o.kind() == Limit.DEAD_SHORT
                                || o.kind() == Limit.REVERSED_ELECTRONICS));
        if (fire
                || effects.notices().mayHurt()
                || effects.notes().stream().anyMatch(n -> n.severity() == Severity.DANGER)) {
            return Severity.DANGER;
        }
        boolean something = !notices.isEmpty()
                || !overloads.isEmpty()
                || !effects.backfeeds().isEmpty()
                || !effects.blown().isEmpty()
                || !effects.notes().isEmpty();
        return something ? Severity.WARNING : Severity.NOTE;
    }

    private List<Message> summary(
            List<Notice> notices, List<Overload> overloads, List<Backfeed> backfeeds, Effects effects) {
        List<Message> sentences = sentences(effects.blown(), notices, backfeeds, overloads);
        if (!effects.unsettled().isEmpty()) {
            sentences.add(MistakeText.NOT_ALL_CALCULATED.with());
        }
        if (sentences.isEmpty()) {
            effects.notes().stream().map(Note::message).forEach(sentences::add);
        }
        return sentences.isEmpty() ? List.of(MistakeText.NO_DIFFERENCE.with()) : sentences;
    }

    private List<Message> sentences(
            Set<String> blown, List<Notice> notices, List<Backfeed> backfeeds, List<Overload> overloads) {
        List<Message> sentences = new ArrayList<>();
        if (!blown.isEmpty()) {
            sentences.add(MistakeText.FUSES_BLOW.with(
                    Arg.things("fuses", blown.stream().map(plan::thing).toList())));
        }
        Set<String> out = notices.stream()
                .filter(n -> n.effect() == Effect.STOPS || n.effect() == Effect.GLOWS)
                .map(Notice::id)
                .collect(Collectors.toSet());
        for (Effect effect : Effect.values()) {
            List<Thing> loads = notices.stream()
                    .filter(n -> n.effect() == effect)
                    // Of a load that is dead in one situation nobody minds the lower voltage in another.
                    .filter(n -> effect != Effect.UNDERVOLTAGE || !out.contains(n.id()))
                    .map(n -> plan.thing(n.id()))
                    .distinct()
                    .toList();
            if (!loads.isEmpty()) {
                sentences.add(effect.with(Arg.things("loads", loads)));
            }
        }
        if (!backfeeds.isEmpty()) {
            sentences.add(MistakeText.REVERSED_WIRES.with(Arg.things(
                    "wires", backfeeds.stream().map(b -> plan.thing(b.wire())).toList())));
        }
        overloads.stream()
                .filter(o -> !o.endedByFuse())
                .limit(2)
                .map(Overload::message)
                .forEach(sentences::add);
        return sentences;
    }
}
