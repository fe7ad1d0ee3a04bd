package loomwright.diagnosis;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import loomwright.circuit.Battery;
import loomwright.circuit.Condition;
import loomwright.circuit.Fuse;
import loomwright.circuit.FusibleLink;
import loomwright.circuit.Joint;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.Switch;
import loomwright.circuit.TerminalRef;
import loomwright.circuit.Wire;
import loomwright.operation.Point;
import loomwright.operation.Probe;
import loomwright.operation.Quantity;

/** What may be measured next: within reach, and safe ({@link PrimarySide}). */
final class PossibleReadings {
    private static final int MOST_SETTINGS = 5;

    private final DiagnosisQuestion question;
    private final List<Measurement> taken;
    private final PrimarySide primarySide;

    /**
     * Of a question.
     *
     * @param taken what has been measured: the switches as they stood then come first
     */
    PossibleReadings(DiagnosisQuestion question, List<Measurement> taken) {
        this.question = question;
        this.taken = List.copyOf(taken);
        this.primarySide = new PrimarySide(question.plan());
    }

    /** The battery with each free switch in each position, key on, cranking and running: as a vehicle has been used. */
    static List<Measurement> inUse(Plan plan) {
        List<Measurement> list = new ArrayList<>();
        for (Battery battery : plan.listParts(Battery.class).stream().limit(1).toList()) {
            Probe posts = between(battery.terminal(Battery.PLUS), battery.terminal(Battery.MINUS));
            for (Map<String, String> switches : eachPosition(plan)) {
                for (Condition condition : List.of(Condition.RUN, Condition.CRANK, Condition.RUNNING)) {
                    list.add(new Measurement(posts, Quantity.VOLTS, Measurement.stepOf(condition), switches));
                }
            }
        }
        return list;
    }

    /** Each free switch in each other position, alone. */
    private static Set<Map<String, String>> eachPosition(Plan plan) {
        Set<Map<String, String>> settings = new LinkedHashSet<>();
        for (Switch chosen : plan.listParts(Switch.class)) {
            if (chosen.free()) {
                chosen.positions().stream()
                        .filter(p -> !p.equals(chosen.in(Condition.OFF)))
                        .forEach(p -> settings.add(new TreeMap<>(Map.of(chosen.id(), p.name()))));
            }
        }
        return settings;
    }

    /** Across one place, in every condition and some settings, and on ohms. */
    List<Measurement> across(Probe across) {
        List<Measurement> list = new ArrayList<>();
        for (Condition condition : Condition.values()) {
            for (Map<String, String> switches : settings()) {
                list.add(new Measurement(across, Quantity.VOLTS, Measurement.stepOf(condition), switches));
            }
        }
        list.add(new Measurement(across, Quantity.OHMS, Measurement.stepOf(Condition.OFF), Map.of()));
        return list.stream().filter(this::isPossible).toList();
    }

    private boolean isPossible(Measurement m) {
        return !primarySide.isTouchedBy(m)
                && question.reaches(m.probe().from())
                && question.reaches(m.probe().to());
    }

    /**
     * Each battery from post to post, every wired point to earth, and along every wire and fuse, in every condition and
     * some settings.
     */
    List<Measurement> volts() {
        List<Measurement> all = new ArrayList<>();
        for (Condition condition : Condition.values()) {
            for (Map<String, String> switches : settings()) {
                for (Probe probe : probes()) {
                    all.add(new Measurement(probe, Quantity.VOLTS, Measurement.stepOf(condition), switches));
                }
            }
        }
        return all.stream().filter(this::isPossible).toList();
    }

    /** Along every wire and between neighbouring terminals of every part, and every point to earth, key off. */
    List<Measurement> ohms() {
        Set<Probe> probes = new LinkedHashSet<>();
        Plan plan = question.plan();
        plan.wires().forEach(w -> probes.add(between(w.from(), w.to())));
        for (Part part : plan.parts()) {
            for (int i = 1; i < part.terminals().size() && !(part instanceof Joint); i++) {
                probes.add(between(
                        part.terminal(part.terminals().get(i - 1)),
                        part.terminal(part.terminals().get(i))));
            }
        }
        probes.addAll(toEarth());
        return probes.stream()
                .map(p -> new Measurement(p, Quantity.OHMS, Measurement.stepOf(Condition.OFF), Map.of()))
                .filter(this::isPossible)
                .toList();
    }

    private Set<Probe> toEarth() {
        Plan plan = question.plan();
        Set<Probe> probes = new LinkedHashSet<>();
        Set<String> splices = new HashSet<>();
        for (Wire wire : plan.wires()) {
            for (TerminalRef terminal : List.of(wire.from(), wire.to())) {
                boolean again = plan.findPart(terminal.part()).orElseThrow() instanceof Joint joint
                        && joint.resistanceOhm() == 0
                        && !splices.add(joint.id());
                if (!again) {
                    probes.add(new Probe(new Point(terminal), Point.EARTH));
                }
            }
        }
        return probes;
    }

    private Set<Probe> probes() {
        Plan plan = question.plan();
        Set<Probe> probes = new LinkedHashSet<>();
        plan.listParts(Battery.class)
                .forEach(b -> probes.add(between(b.terminal(Battery.PLUS), b.terminal(Battery.MINUS))));
        probes.addAll(toEarth());
        plan.wires().forEach(w -> probes.add(between(w.from(), w.to())));
        for (Part part : plan.parts()) {
            if (part instanceof Fuse || part instanceof FusibleLink) {
                probes.add(between(part.terminal("a"), part.terminal("b")));
            }
        }
        return probes;
    }

    private static Probe between(TerminalRef one, TerminalRef other) {
        return new Probe(new Point(one), new Point(other));
    }

    /** As in the readings, as drawn, and each free switch in each other position. */
    private List<Map<String, String>> settings() {
        Set<Map<String, String>> settings = new LinkedHashSet<>();
        taken.forEach(t -> settings.add(t.switches()));
        settings.add(Map.of());
        settings.addAll(eachPosition(question.plan()));
        return settings.stream().limit(MOST_SETTINGS).toList();
    }
}
