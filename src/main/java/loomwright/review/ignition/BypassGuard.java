package loomwright.review.ignition;

import static loomwright.message.Arg.arg;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import loomwright.answer.Basis;
import loomwright.answer.Finding;
import loomwright.circuit.Ballast;
import loomwright.circuit.Relay;
import loomwright.circuit.Solenoid;
import loomwright.circuit.Switch;
import loomwright.circuit.TerminalRef;
import loomwright.message.Message;
import loomwright.review.context.Check;
import loomwright.review.context.FeedGraph;
import loomwright.review.context.FeedGraph.By;
import loomwright.review.context.FindingCode;
import loomwright.review.context.ReviewContext;
import loomwright.review.context.ReviewText;

/**
 * Whether a tap or end of a ballast is wired straight to what works the starter: then the key feeds the solenoid through
 * the ballast, and the solenoid's feed the coil.
 */
public final class BypassGuard implements Check {
    @Override
    public List<Finding> check(ReviewContext context) {
        FeedGraph graph = context.protection().graph();
        List<Finding> findings = new ArrayList<>();
        for (Ballast ballast : context.plan().listParts(Ballast.class)) {
            for (String name : ballast.terminals()) {
                String terminal = ballast.terminal(name).toString();
                Set<String> joined = graph.reach(
                        List.of(terminal),
                        EnumSet.of(By.WIRE, By.JOINT),
                        context.protection().earthed());
                control(context, joined)
                        .ifPresent(control -> findings.add(finding(
                                graph, ballast, name, context.plan().describe(TerminalRef.parse(control)), joined)));
            }
        }
        return findings;
    }

    /**
     * The control terminal of a solenoid or relay among them. Where the key feeds the ballast it may feed a relay's winding
     * as well, as it does for a fan or a lamp.
     */
    private static Optional<String> control(ReviewContext context, Set<String> joined) {
        List<String> controls = new ArrayList<>();
        context.plan()
                .listParts(Solenoid.class)
                .forEach(s -> controls.add(s.terminal(Solenoid.CONTROL).toString()));
        if (!isFedByKey(context, joined)) {
            context.plan().listParts(Relay.class).forEach(r -> {
                controls.add(r.terminal(Relay.COIL_FEED).toString());
                controls.add(r.terminal(Relay.COIL_RETURN).toString());
            });
        }
        context.plan().listParts(Switch.class).stream()
                .filter(s -> !s.free() && s.terminals().contains(Solenoid.CONTROL))
                .forEach(s -> controls.add(s.terminal(Solenoid.CONTROL).toString()));
        return controls.stream().filter(joined::contains).findFirst();
    }

    private static boolean isFedByKey(ReviewContext context, Set<String> joined) {
        return context.plan().listParts(Switch.class).stream()
                .filter(s -> !s.free())
                .flatMap(s -> s.terminals().stream()
                        .filter(t -> !t.equals(Solenoid.CONTROL))
                        .map(t -> s.terminal(t).toString()))
                .anyMatch(joined::contains);
    }

    private static Finding finding(FeedGraph graph, Ballast ballast, String name, Message control, Set<String> joined) {
        Set<String> ids = new LinkedHashSet<>(List.of(ballast.id()));
        joined.stream()
                .flatMap(t -> graph.at(t).stream())
                .filter(e -> e.by() == By.WIRE && joined.contains(e.from()) && joined.contains(e.to()))
                .forEach(e -> ids.add(e.id()));
        return Finding.warning(
                        FindingCode.BYPASS_NOT_ISOLATED.with(
                                arg("ballast", ballast.thing()), arg("terminal", name), arg("control", control)),
                        Basis.commonPractice("a bypass needs a contact of its own, or a diode"))
                .about(List.copyOf(ids))
                .remedy(ReviewText.SEPARATE_BYPASS.with());
    }
}
