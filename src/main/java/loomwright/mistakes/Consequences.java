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
import loomwright.circuit.fault.SingleFault;
import loomwright.mistakes.MistakesReport.Backfeed;
import loomwright.mistakes.MistakesReport.Effect;
import loomwright.mistakes.MistakesReport.Limit;
import loomwright.mistakes.MistakesReport.Mistake;
import loomwright.mistakes.MistakesReport.Notice;
import loomwright.mistakes.MistakesReport.Overload;
import loomwright.network.NoConvergence;
import loomwright.operation.PlanSolver;
import loomwright.operation.SolvedStep;

/**
 * Solves a plan with one mistake in it, in every step and setting, and compares it with the sound plan. Fuses that carry more
 * than opens them are opened one after the other and the plan solved again, until none opens any more.
 *
 * <p>Not thread safe: the solver holds work space.
 */
final class Consequences {
    /** What has been told of a mistake so far. */
    private record Told(
            Notices notices,
            Overloads overloads,
            Map<String, Backfeed> backfeeds,
            Set<String> blown,
            List<Note> notes,
            List<String> unsettled) {
        Told(Notices notices, Overloads overloads) {
            this(
                    notices,
                    overloads,
                    new LinkedHashMap<>(),
                    new LinkedHashSet<>(),
                    new ArrayList<>(),
                    new ArrayList<>());
        }
    }

    private final PlanSolver solver;
    private final Plan plan;
    private final List<SwitchSetting> settings;
    private final List<List<SolvedStep>> sound;
    private final Capacities capacities;
    private final SparkAndCharge sparkAndCharge;

    Consequences(Plan plan, PlanSolver solver) {
        this.solver = solver;
        this.plan = plan;
        this.settings = SwitchSetting.list(plan);
        this.capacities = new Capacities(plan);
        this.sound = settings.stream().map(s -> solver.solve(s.plan())).toList();
        this.sparkAndCharge = new SparkAndCharge(settings.get(0).plan(), sound.get(0), solver);
    }

    int settings() {
        return settings.size();
    }

    /** What a mistake does; settings in which the circuit does not settle are named in the notes, the others told. */
    Mistake of(SingleFault fault) {
        Told told = new Told(new Notices(), new Overloads(capacities));
        for (int i = 0; i < settings.size(); i++) {
            String setting = settings.get(i).description().isEmpty()
                    ? ""
                    : " (" + settings.get(i).description() + ")";
            try {
                tell(fault, i, setting, told);
            } catch (NoConvergence stuck) {
                told.unsettled()
                        .add("Not calculated" + setting + unsettled(stuck.elementIds()) + ": judge this by hand.");
            }
        }
        told.unsettled().forEach(text -> told.notes().add(new Note(Severity.WARNING, text)));
        told.blown().removeAll(Fuses.firstToOpen(plan, sound.get(0)));
        return mistake(fault, told);
    }

    private static String unsettled(List<String> elements) {
        return elements.isEmpty() ? "" : ", which did not settle (" + String.join(", ", elements) + ")";
    }

    private void tell(SingleFault fault, int i, String setting, Told told) {
        Set<String> open = new LinkedHashSet<>();
        Plan faulty = fault.applyTo(settings.get(i).plan());
        List<SolvedStep> solved = solver.solve(faulty);
        if (i == 0) {
            told.notes().addAll(Notes.of(fault, plan, solved));
            told.notes().addAll(sparkAndCharge.compare(faulty, solved));
        }
        Set<String> next = Fuses.firstToOpen(faulty, solved);
        // What carries too much until the fuses are open, then what still does.
        compare(sound.get(i), solved, setting, next.isEmpty(), told.overloads());
        while (!next.isEmpty() && open.addAll(next)) {
            told.blown().addAll(next);
            solved = solver.solve(Fuses.blown(faulty, open));
            next = Fuses.firstToOpen(faulty, solved);
            compare(sound.get(i), solved, setting, next.isEmpty(), told.overloads());
        }
        for (int s = 0; s < solved.size(); s++) {
            String when = solved.get(s).step().description() + setting;
            told.notices().compare(sound.get(i).get(s), solved.get(s), when);
            addBackfeeds(sound.get(i).get(s), solved.get(s), when, told.backfeeds());
        }
    }

    private void compare(
            List<SolvedStep> before, List<SolvedStep> after, String setting, boolean last, Overloads overloads) {
        for (int s = 0; s < after.size(); s++) {
            overloads.compare(before.get(s), after.get(s), after.get(s).step().description() + setting, last);
        }
        ReversedElectronics.list(before, after, setting, solver).forEach(o -> overloads.add(o, last));
    }

    private static void addBackfeeds(
            SolvedStep sound, SolvedStep faulty, String when, Map<String, Backfeed> backfeeds) {
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

    private static Mistake mistake(SingleFault fault, Told told) {
        List<Notice> notices = told.notices().list();
        List<Overload> overloads = told.overloads().list();
        List<Backfeed> backfeeds = List.copyOf(told.backfeeds().values());
        return new Mistake(
                fault.kind(),
                fault.ids(),
                fault.description(),
                severity(notices, overloads, told),
                summary(notices, overloads, backfeeds, told),
                List.copyOf(told.blown()),
                notices,
                overloads,
                backfeeds,
                told.notes().stream().map(Note::text).toList());
    }

    /**
     * Fire and unasked movement are a danger; what stops working, wears out or only blows its fuse is a warning (common
     * practice, no source).
     */
    private static Severity severity(List<Notice> notices, List<Overload> overloads, Told told) {
        boolean fire = overloads.stream()
                .anyMatch(o -> !o.endedByFuse()
                        && (o.kind() == Limit.WIRE_AMPACITY
                                || o.kind() == Limit.DEAD_SHORT
                                || o.kind() == Limit.REVERSED_ELECTRONICS));
        if (fire || told.notices().mayHurt() || told.notes().stream().anyMatch(n -> n.severity() == Severity.DANGER)) {
            return Severity.DANGER;
        }
        boolean something = !notices.isEmpty()
                || !overloads.isEmpty()
                || !told.backfeeds().isEmpty()
                || !told.blown().isEmpty()
                || !told.notes().isEmpty();
        return something ? Severity.WARNING : Severity.NOTE;
    }

    private static String summary(List<Notice> notices, List<Overload> overloads, List<Backfeed> backfeeds, Told told) {
        List<String> parts = new ArrayList<>();
        if (!told.blown().isEmpty()) {
            parts.add("Blows: " + String.join(", ", told.blown()) + ".");
        }
        for (Effect effect : Effect.values()) {
            String named = notices.stream()
                    .filter(n -> n.effect() == effect)
                    .map(Notice::label)
                    .distinct()
                    .collect(Collectors.joining(", "));
            if (!named.isEmpty()) {
                parts.add(words(effect) + ": " + named + ".");
            }
        }
        if (!backfeeds.isEmpty()) {
            parts.add("Current runs backwards in "
                    + backfeeds.stream().map(Backfeed::wire).collect(Collectors.joining(", ")) + ".");
        }
        overloads.stream()
                .filter(o -> !o.endedByFuse())
                .limit(2)
                .map(Overload::text)
                .forEach(parts::add);
        if (!told.unsettled().isEmpty()) {
            parts.add("Not all of it could be calculated.");
        }
        if (parts.isEmpty()) {
            told.notes().stream().map(Note::text).forEach(parts::add);
        }
        return parts.isEmpty() ? "No difference that anybody would notice." : String.join(" ", parts);
    }

    private static String words(Effect effect) {
        return switch (effect) {
            case STOPS -> "Does not work";
            case GLOWS -> "Glows";
            case UNDERVOLTAGE -> "Works weakly";
            case OVERVOLTAGE -> "Gets more than it should";
            case UNINTENDED -> "Works unasked";
            case CHATTERS -> "Switches on and off without end";
        };
    }
}
