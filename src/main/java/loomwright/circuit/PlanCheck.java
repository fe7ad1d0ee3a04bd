package loomwright.circuit;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import loomwright.answer.InputError;
import loomwright.answer.InputErrors;

/**
 * What is wrong with a plan as a circuit, though each of its parts is well formed. A plan that the service edits itself
 * (a wire taken off, to see what that does) need not pass; one that a person hands in must.
 */
public final class PlanCheck {
    /** A threshold above this multiple of the nominal voltage can never be reached: surely a slip. */
    private static final double HIGHEST_THRESHOLD = 1.5;

    private PlanCheck() {}

    /** All faults found, in the order of the document; empty for a sound plan. */
    public static List<InputError> check(Plan plan) {
        InputErrors faults = new InputErrors();
        Set<TerminalRef> joined = joinedTerminals(plan);
        faults.check(
                !plan.listParts(Battery.class).isEmpty()
                        || !plan.listParts(Alternator.class).isEmpty(),
                InputError.Code.MISSING,
                "/parts",
                null,
                "at least one battery or alternator to feed the circuit");
        for (int i = 0; i < plan.parts().size(); i++) {
            Part part = plan.parts().get(i);
            String at = "/parts/" + i;
            checkReturn(faults, at, part, joined);
            checkThresholds(faults, at, part, plan.system());
        }
        return faults.list();
    }

    private static Set<TerminalRef> joinedTerminals(Plan plan) {
        Set<TerminalRef> joined = new HashSet<>();
        for (Wire wire : plan.wires()) {
            joined.add(wire.from());
            joined.add(wire.to());
        }
        for (Connector connector : plan.connectors()) {
            for (String half : connector.halves()) {
                plan.findPart(half).ifPresent(p -> p.terminals().forEach(t -> joined.add(p.terminal(t))));
            }
        }
        return joined;
    }

    private static void checkReturn(InputErrors faults, String at, Part part, Set<TerminalRef> joined) {
        String feed;
        String back;
        if (part instanceof Consumer consumer) {
            feed = consumer.feedTerminal();
            back = consumer.returnTerminal();
        } else if (part instanceof Battery) {
            feed = Battery.PLUS;
            back = Battery.MINUS;
        } else if (part instanceof Alternator) {
            feed = Alternator.OUTPUT;
            back = Alternator.RETURN;
        } else {
            return;
        }
        boolean fed = joined.contains(part.terminal(feed));
        boolean returned = joined.contains(part.terminal(back));
        if (fed != returned) {
            String open = fed ? back : feed;
            faults.check(
                    false,
                    InputError.Code.NO_RETURN,
                    at,
                    part.terminal(open).toString(),
                    "a wire at " + part.terminal(open) + ": " + part.called() + " has one at "
                            + part.terminal(fed ? feed : back) + " only, so no current can flow through it");
        }
    }

    private static void checkThresholds(InputErrors faults, String at, Part part, VehicleSystem system) {
        if (part instanceof Consumer consumer) {
            Double operateV = consumer.operateV();
            double highestV = HIGHEST_THRESHOLD * system.nominalVoltageV();
            faults.check(
                    operateV == null || operateV <= highestV,
                    InputError.Code.CONTRADICTION,
                    at + (part instanceof Relay ? "/pullInV" : "/operateV"),
                    operateV,
                    "at most " + highestV + " V: a " + system.nominalVoltageV() + " V system never reaches more");
        }
    }
}
