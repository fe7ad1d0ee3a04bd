package loomwright.review.ignition;

import static loomwright.message.Arg.arg;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import loomwright.answer.Finding;
import loomwright.backfeed.Survey.Moment;
import loomwright.circuit.Coil;
import loomwright.circuit.IgnitionModule;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.TerminalRef;
import loomwright.circuit.VehicleSystem;
import loomwright.circuit.Wire;
import loomwright.judgement.Level;
import loomwright.judgement.Verdict;
import loomwright.judgement.ignition.ModuleSupplyRule;
import loomwright.message.Message;
import loomwright.operation.Joined;
import loomwright.operation.SolvedStep;
import loomwright.operation.Step;
import loomwright.review.context.Check;
import loomwright.review.context.FindingCode;
import loomwright.review.context.FindingWording;
import loomwright.review.context.LoadCircuit;
import loomwright.review.context.ReviewContext;
import loomwright.review.context.ReviewText;

/**
 * The volts of each ignition module while the engine is cranked and while it runs. One that is fed behind a ballast is fed ahead of
 * it, if that was tried and gives it enough.
 */
public final class ModuleSupply implements Check {
    @Override
    public List<Finding> check(ReviewContext context) {
        return context.plan().listParts(IgnitionModule.class).stream()
                .flatMap(module -> worst(context, module).stream()
                        .map(moment -> finding(context, module, moment))
                        .flatMap(Optional::stream))
                .toList();
    }

    /** Whether a coil is without current because its module has too few volts, which this check tells. */
    public static boolean isDead(Coil coil, SolvedStep solved) {
        Plan plan = solved.plan();
        Set<TerminalRef> joined =
                Joined.with(plan, List.of(coil.terminal(coil.feedTerminal()), coil.terminal(coil.returnTerminal())));
        return plan.listParts(IgnitionModule.class).stream()
                .filter(module -> joined.contains(module.terminal(IgnitionModule.SWITCHED)))
                .anyMatch(module -> supplyV(module, solved) > IgnitionRules.FED_V
                        && judge(module, solved).level() == Level.WARNING);
    }

    /** Whether a module goes on and off because it has too few volts while it is on, which this check tells. */
    public static boolean isUnsteady(ReviewContext context, Part part, SolvedStep solved) {
        return part instanceof IgnitionModule module
                && solved.movingParts().contains(module.id())
                && worst(context, module)
                        .filter(moment -> judge(module, moment.solved()).level() != Level.FITS)
                        .isPresent();
    }

    /** When a module that is fed has the fewest volts, with the fewest switches moved. */
    private static Optional<Moment> worst(ReviewContext context, IgnitionModule module) {
        return context.moments().stream()
                .filter(m -> m.solved().step() == Step.CRANK || m.solved().step() == Step.RUNNING)
                .filter(m -> supplyV(module, m.solved()) > IgnitionRules.FED_V)
                .min(Comparator.<Moment>comparingDouble(m -> supplyV(module, m.solved()))
                        .thenComparingInt(m -> m.situation().changes()));
    }

    private static double supplyV(IgnitionModule module, SolvedStep solved) {
        return Math.abs(solved.acrossV(module.terminal(IgnitionModule.SUPPLY), module.terminal(IgnitionModule.RETURN)));
    }

    private static Verdict judge(IgnitionModule module, SolvedStep solved) {
        VehicleSystem system = solved.plan().system();
        return ModuleSupplyRule.judge(supplyV(module, solved), system.nominalVoltageV(), module.minimumSupplyV(system));
    }

    private static Optional<Finding> finding(ReviewContext context, IgnitionModule module, Moment moment) {
        Verdict verdict = judge(module, moment.solved());
        VehicleSystem system = context.plan().system();
        return verdict.level()
                .severity()
                .map(severity -> Finding.of(
                                severity,
                                FindingCode.MODULE_SUPPLY_LOW.with(
                                        arg("module", module.thing()),
                                        arg("supplyV", verdict.value()),
                                        arg("sureV", verdict.limit()),
                                        arg("deadV", module.minimumSupplyV(system)),
                                        FindingWording.when(moment)),
                                verdict.basis())
                        .about(List.of(module.id()))
                        .remedy(remedy(context, module, moment, verdict)));
    }

    private static Message remedy(ReviewContext context, IgnitionModule module, Moment moment, Verdict verdict) {
        return aheadOfBallast(module, moment.solved())
                .flatMap(ahead -> tried(context, module, moment, ahead)
                        .filter(then -> judge(module, then).level().compareTo(verdict.level()) < 0)
                        .map(then -> ReviewText.FEED_MODULE_AHEAD.with(
                                arg("module", module.thing()),
                                arg("terminal", context.plan().describe(ahead)),
                                arg("supplyV", supplyV(module, then)),
                                FindingWording.when(moment))))
                .orElseGet(ReviewText.RAISE_MODULE_SUPPLY::with);
    }

    /** The end of the first ballast or resistor in the module's feed that lies towards the source. */
    private static Optional<TerminalRef> aheadOfBallast(IgnitionModule module, SolvedStep solved) {
        String supply = module.terminal(IgnitionModule.SUPPLY).toString();
        for (int i = solved.firstBranchOf(module.id()); i < solved.endBranchOf(module.id()); i++) {
            if (solved.branches().get(i).from().equals(supply)) {
                return LoadCircuit.find(solved, i).flatMap(LoadCircuit::aheadOfBallast);
            }
        }
        return Optional.empty();
    }

    /** The step with the module's own lead taken to another terminal; empty if it has not one lead of its own. */
    private static Optional<SolvedStep> tried(
            ReviewContext context, IgnitionModule module, Moment moment, TerminalRef ahead) {
        TerminalRef supply = module.terminal(IgnitionModule.SUPPLY);
        Plan plan = moment.situation().plan();
        List<Wire> leads = plan.wires().stream()
                .filter(wire -> wire.from().equals(supply) || wire.to().equals(supply))
                .toList();
        if (leads.size() != 1) {
            return Optional.empty();
        }
        List<Wire> wires = new ArrayList<>(plan.wires());
        wires.replaceAll(wire -> wire.equals(leads.get(0)) ? wire.withEnds(ahead, supply) : wire);
        Plan changed = plan.with(plan.parts(), wires);
        SolvedStep then = context.survey()
                .settings()
                .changed(changed)
                .solve(changed, moment.solved().step(), moment.solved().active());
        return then.solved() && !then.oscillating() ? Optional.of(then) : Optional.empty();
    }
}
