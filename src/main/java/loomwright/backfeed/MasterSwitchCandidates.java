package loomwright.backfeed;

import static loomwright.message.Arg.arg;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import loomwright.backfeed.BackfeedReport.FeedPath;
import loomwright.backfeed.BackfeedReport.Occurrence;
import loomwright.backfeed.BackfeedReport.PathStep;
import loomwright.backfeed.BackfeedReport.Remedy.Kind;
import loomwright.circuit.Battery;
import loomwright.circuit.Consumer;
import loomwright.circuit.Generator;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.Switch;
import loomwright.circuit.TerminalRef;
import loomwright.circuit.Wire;
import loomwright.operation.Branch;
import loomwright.operation.Joined;

/**
 * Remedies where a machine keeps a load alive though the master switch has taken the battery off: a second pole of that switch in a
 * wire that feeds the load, or in the field lead. The machine's output is never opened: without a battery its voltage rises (common
 * practice, no source).
 */
final class MasterSwitchCandidates {
    private final Plan plan;
    private final PlanEdit edit;

    private MasterSwitchCandidates(Plan plan) {
        this.plan = plan;
        this.edit = new PlanEdit(plan);
    }

    /** Lists the candidates, the wires nearest to the load first and the field leads last. */
    static List<Candidate> list(Plan plan, Consumer load, List<Occurrence> occurrences) {
        MasterSwitchCandidates candidates = new MasterSwitchCandidates(plan);
        Set<Switch> masters = candidates.masters();
        List<Candidate> all = new ArrayList<>();
        for (Switch master : masters) {
            Set<Wire> wires = new LinkedHashSet<>();
            occurrences.stream()
                    .filter(o -> o.switches().containsKey(master.id()))
                    .flatMap(o -> o.paths().stream())
                    .forEach(path -> candidates.addFeed(path, load, wires));
            if (!wires.isEmpty()) {
                wires.addAll(candidates.fieldLeads());
            }
            wires.forEach(wire -> all.add(candidates.secondPole(master, wire)));
        }
        return all;
    }

    /** Free switches that stand next to a battery, with nothing but wires, joints and fuses between. */
    private Set<Switch> masters() {
        List<TerminalRef> poles = plan.listParts(Battery.class).stream()
                .flatMap(battery -> Stream.of(battery.terminal(Battery.PLUS), battery.terminal(Battery.MINUS)))
                .toList();
        Set<Switch> masters = new LinkedHashSet<>();
        for (TerminalRef reached : Joined.with(plan, poles)) {
            if (plan.findPart(reached.part()).orElseThrow() instanceof Switch chosen
                    && chosen.free()
                    && chosen.terminals().size() + 2 <= Switch.MAX_TERMINALS) {
                masters.add(chosen);
            }
        }
        return masters;
    }

    /** The wires from a machine to the load, if it feeds that alone, but for those at its output. */
    private void addFeed(FeedPath path, Consumer load, Set<Wire> wires) {
        List<Wire> feed = new ArrayList<>();
        boolean machine = false;
        for (PathStep step : path.steps()) {
            Part part =
                    step.owner() == Branch.Owner.PART ? plan.findPart(step.id()).orElseThrow() : null;
            if (part instanceof Battery) {
                return;
            } else if (part instanceof Generator) {
                machine = true;
            } else if (part != null && part.id().equals(load.id())) {
                break;
            } else if (step.owner() == Branch.Owner.WIRE) {
                plan.findWire(step.id()).filter(wire -> !isAtOutput(wire)).ifPresent(feed::add);
            }
        }
        if (machine) {
            Collections.reverse(feed);
            wires.addAll(feed);
        }
    }

    private boolean isAtOutput(Wire wire) {
        return plan.listParts(Generator.class).stream()
                .flatMap(machine -> Stream.of(
                        machine.terminal(machine.outputTerminal()), machine.terminal(machine.returnTerminal())))
                .anyMatch(end -> wire.from().equals(end) || wire.to().equals(end));
    }

    private List<Wire> fieldLeads() {
        List<TerminalRef> fields = plan.listParts(Generator.class).stream()
                .map(machine -> machine.terminal(machine.lampTerminal()))
                .toList();
        return plan.wires().stream()
                .filter(wire -> fields.contains(wire.from()) || fields.contains(wire.to()))
                .toList();
    }

    private Candidate secondPole(Switch master, Wire wire) {
        String from = freeName(master, "2a");
        String to = freeName(master, "2b");
        // It is closed where the switch joins anything, which is where the battery is on.
        Switch twoPoles =
                master.withPole(from, to, position -> !position.joins().isEmpty());
        List<Wire> wires = edit.without(wire);
        wires.add(wire.withEnds(wire.from(), twoPoles.terminal(from)));
        wires.add(PlanEdit.fitted(plan.freeId("pole-" + wire.id(), ""), twoPoles.terminal(to), wire.to()));
        return new Candidate(
                Kind.SECOND_POLE,
                BackfeedText.SECOND_POLE.with(
                        arg("master", master.thing()),
                        arg("wire", wire.thing()),
                        edit.at("from", wire.from()),
                        edit.at("to", wire.to())),
                wire.id(),
                null,
                () -> plan.with(plan.withPart(twoPoles).parts(), wires));
    }

    private static String freeName(Switch master, String wanted) {
        String name = wanted;
        while (master.terminals().contains(name)) {
            name += "x";
        }
        return name;
    }
}
