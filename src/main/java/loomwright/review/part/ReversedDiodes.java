package loomwright.review.part;

import static loomwright.message.Arg.arg;

import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import loomwright.answer.Basis;
import loomwright.answer.Finding;
import loomwright.backfeed.Survey.Moment;
import loomwright.circuit.Consumer;
import loomwright.circuit.Diode;
import loomwright.circuit.Electromagnet;
import loomwright.circuit.Motor;
import loomwright.operation.SolvedStep;
import loomwright.review.context.Check;
import loomwright.review.context.FeedGraph;
import loomwright.review.context.FeedGraph.By;
import loomwright.review.context.FindingCode;
import loomwright.review.context.FindingWording;
import loomwright.review.context.ReviewContext;
import loomwright.review.context.ReviewText;
import loomwright.review.context.WorstCaseOrder;

/**
 * Diodes across the winding of a relay, solenoid or motor that conduct while it is fed as meant. One against voltage spikes
 * blocks then; the wrong way round it shorts the feed. Where a fuse blows at once by it that is reported at the fuse.
 */
public final class ReversedDiodes implements Check {
    private static final Basis SOLVED = Basis.computed(
            "current through a diode across a winding that is fed",
            "Kirchhoff's laws and Ohm's law; search of the plan");

    /** Through a diode that blocks flows nothing. */
    private static final double CONDUCTS_A = 1e-3;

    /** A diode, what it lies across, and the moment in which it carries most. */
    private record Reversed(Diode diode, Consumer winding, Moment moment) {
        double currentA() {
            return amps(diode, moment.solved());
        }
    }

    @Override
    public List<Finding> check(ReviewContext context) {
        return context.plan().listParts(Diode.class).stream()
                .flatMap(diode -> find(context, diode).stream())
                .map(ReversedDiodes::finding)
                .toList();
    }

    static boolean isReversed(ReviewContext context, Diode diode) {
        return find(context, diode).isPresent();
    }

    private static Optional<Reversed> find(ReviewContext context, Diode diode) {
        return context.plan().listParts(Consumer.class).stream()
                .filter(part -> part instanceof Electromagnet || part instanceof Motor)
                .filter(winding -> isAcross(context.protection().graph(), diode, winding))
                .flatMap(winding -> context.moments().stream()
                        .filter(m -> m.isMeant(winding) && amps(diode, m.solved()) > CONDUCTS_A)
                        .map(m -> new Reversed(diode, winding, m)))
                .min(Comparator.comparing(Reversed::moment, WorstCaseOrder.mostOf(m -> amps(diode, m.solved())))
                        .thenComparing(r -> r.winding().id()));
    }

    private static boolean isAcross(FeedGraph graph, Diode diode, Consumer winding) {
        Set<String> one = wiredTo(graph, winding, winding.feedTerminal());
        Set<String> other = wiredTo(graph, winding, winding.returnTerminal());
        String anode = diode.terminal(Diode.ANODE).toString();
        String cathode = diode.terminal(Diode.CATHODE).toString();
        return (one.contains(anode) && other.contains(cathode)) || (one.contains(cathode) && other.contains(anode));
    }

    private static Set<String> wiredTo(FeedGraph graph, Consumer winding, String terminal) {
        return graph.reach(List.of(winding.terminal(terminal).toString()), EnumSet.of(By.WIRE, By.JOINT), Set.of());
    }

    private static double amps(Diode diode, SolvedStep solved) {
        int branch = solved.firstBranchOf(diode.id());
        return branch < solved.endBranchOf(diode.id()) ? Math.abs(solved.currentA(branch)) : 0;
    }

    private static Finding finding(Reversed found) {
        Diode diode = found.diode();
        return Finding.danger(
                        FindingCode.DIODE_REVERSED.with(
                                arg("diode", diode.thing()),
                                arg("winding", found.winding().thing()),
                                arg("currentA", found.currentA()),
                                FindingWording.when(found.moment())),
                        SOLVED)
                .remedy(ReviewText.SWAP_DIODE_LEADS.with());
    }
}
