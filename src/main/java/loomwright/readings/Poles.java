package loomwright.readings;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import loomwright.circuit.Battery;
import loomwright.circuit.Generator;
import loomwright.circuit.Plan;
import loomwright.circuit.TerminalRef;
import loomwright.operation.SolvedStep;

/** Where current comes from and where it returns to: the live and the earthed post of the battery. */
record Poles(TerminalRef live, TerminalRef earthed) {

    /** Empty for a plan without battery. With several in series, the outermost posts. */
    static Optional<Poles> of(SolvedStep solved) {
        List<TerminalRef> posts = solved.plan().listParts(Battery.class).stream()
                .flatMap(b -> b.terminals().stream().map(b::terminal))
                .toList();
        if (posts.isEmpty() || !solved.solved()) {
            return Optional.empty();
        }
        Comparator<TerminalRef> byVolts = Comparator.comparingDouble(
                p -> Math.abs(solved.voltageV(solved.node(p)).orElse(0)));
        return Optional.of(new Poles(
                posts.stream().max(byVolts).orElseThrow(),
                posts.stream().min(byVolts).orElseThrow()));
    }

    /** The live terminals of the machines that charge. */
    static List<TerminalRef> charging(Plan plan) {
        return plan.listParts(Generator.class).stream()
                .map(g -> g.terminal(g.livePole(plan.system())))
                .toList();
    }
}
