package loomwright.operation;

import static loomwright.message.Arg.arg;
import static loomwright.message.Arg.things;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import loomwright.circuit.Battery;
import loomwright.circuit.Consumer;
import loomwright.circuit.Flasher;
import loomwright.circuit.IgnitionModule;
import loomwright.circuit.Load;
import loomwright.circuit.ResolvedSupply;
import loomwright.message.Argument;
import loomwright.message.Argument.Thing;
import loomwright.network.NetworkFinding;
import loomwright.operation.StepFinding.Kind;

/** What a person should know about a solved step beside its figures. */
public final class StepFindings {
    /**
     * A battery whose terminals show less than this share of its EMF feeds less resistance outside than it has inside.
     * No working circuit does that; half is also where the most power is lost.
     */
    private static final double SHORT_FRACTION = 0.5;

    /**
     * A battery that gives more than this multiple of its cold cranking current is shorted: no starter draws that (common
     * practice, no source).
     */
    private static final double SHORT_CRANKING_CURRENTS = 1.5;

    private StepFindings() {}

    /** The findings of one step; empty if there is nothing to say. */
    public static List<StepFinding> of(SolvedStep solved) {
        List<StepFinding> findings = new ArrayList<>();
        for (NetworkFinding finding : solved.networkFindings()) {
            if (finding.preventsSolution()) {
                findings.add(
                        new StepFinding(Kind.UNSOLVABLE.with(arg("cause", finding.message())), finding.elementIds()));
            } else if (finding.kind() == NetworkFinding.Kind.OVERLOADED && isMeantLive(solved, finding)) {
                findings.add(overloaded(solved, finding));
            }
        }
        if (!solved.solved()) {
            return findings;
        }
        List<String> moving = List.copyOf(solved.movingParts());
        if (solved.oscillating()) {
            int byOwnVoltage = isByOwnVoltage(solved) ? 1 : 0;
            findings.add(new StepFinding(
                    Kind.OSCILLATING.with(
                            things("parts", named(solved, moving)),
                            arg("count", moving.size()),
                            arg("byOwnVoltage", byOwnVoltage)),
                    moving));
        } else if (solved.isRace()) {
            findings.add(new StepFinding(Kind.RELAY_RACE.with(things("parts", named(solved, moving))), moving));
        }
        for (Battery battery : solved.plan().listParts(Battery.class)) {
            findShort(solved, battery, findings);
        }
        return findings;
    }

    private static StepFinding overloaded(SolvedStep solved, NetworkFinding finding) {
        Map<String, Argument> figures = finding.message().arguments();
        return new StepFinding(
                Kind.OVERLOADED.with(
                        things("parts", named(solved, finding.elementIds())),
                        arg("loadedV", Objects.requireNonNull(figures.get("loadedV"))),
                        arg("minimumV", Objects.requireNonNull(figures.get("minimumV")))),
                finding.elementIds());
    }

    /** A path as a person follows it: from the battery back to the battery. */
    private static List<String> loop(String battery, List<String> way) {
        List<String> loop = new ArrayList<>(way);
        loop.add(0, battery);
        loop.add(battery);
        return loop;
    }

    private static List<Thing> named(SolvedStep solved, List<String> ids) {
        return ids.stream().map(solved.plan()::thing).toList();
    }

    /** Of what should be dead it is no matter that its feed is weak. */
    private static boolean isMeantLive(SolvedStep solved, NetworkFinding finding) {
        return finding.elementIds().stream()
                .flatMap(id -> solved.plan().findPart(id).stream())
                .anyMatch(part -> !(part instanceof Consumer consumer) || solved.isMeant(consumer));
    }

    /** Whether what has no stable state is loads and modules alone, which have one limit for coming on and going off. */
    public static boolean isByOwnVoltage(SolvedStep solved) {
        return solved.movingParts().stream()
                .map(id -> solved.plan().findPart(id).orElseThrow())
                .allMatch(part -> part instanceof Load || part instanceof IgnitionModule || part instanceof Flasher);
    }

    private static void findShort(SolvedStep solved, Battery battery, List<StepFinding> findings) {
        for (int i = solved.firstBranchOf(battery.id()); i < solved.endBranchOf(battery.id()); i++) {
            double currentA = solved.currentA(i);
            double terminalV = solved.acrossV(battery.terminal(Battery.PLUS), battery.terminal(Battery.MINUS));
            if (isDeadShort(battery, solved, currentA, terminalV)) {
                List<String> way = widestWay(solved, i);
                findings.add(new StepFinding(
                        Kind.DEAD_SHORT.with(
                                arg("battery", battery.thing()),
                                arg("currentA", currentA),
                                arg("terminalV", terminalV),
                                arg("emfV", store(battery, solved).emfV()),
                                things("path", named(solved, loop(battery.id(), way)))),
                        way));
            }
        }
    }

    /** Whether a battery that gives so much at so many volts would be shorted through next to nothing in this step. */
    public static boolean isDeadShort(Battery battery, SolvedStep step, double currentA, double terminalV) {
        return currentA > SHORT_CRANKING_CURRENTS * battery.usualCrankingCurrentA()
                || (currentA > 0
                        && terminalV < SHORT_FRACTION * store(battery, step).emfV());
    }

    private static ResolvedSupply store(Battery battery, SolvedStep step) {
        return battery.in(step.step().condition(), step.plan());
    }

    /** The parts and wires along the branches of most current from the battery's live pole round to the other. */
    private static List<String> widestWay(SolvedStep solved, int battery) {
        List<String> ids = new ArrayList<>();
        CurrentPaths currents = new CurrentPaths(solved);
        for (int branch : currents.widest(currents.head(battery), currents.tail(battery))) {
            String id = solved.branches().get(branch).id();
            if (!ids.contains(id)) {
                ids.add(id);
            }
        }
        return ids;
    }
}
