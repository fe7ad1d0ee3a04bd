package loomwright.review.ignition;

import static loomwright.message.Arg.arg;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import loomwright.answer.Finding;
import loomwright.backfeed.Survey.Moment;
import loomwright.circuit.Coil;
import loomwright.circuit.IgnitionModule;
import loomwright.operation.Step;
import loomwright.review.context.Check;
import loomwright.review.context.FindingCode;
import loomwright.review.context.FindingWording;
import loomwright.review.context.LoadCircuit;
import loomwright.review.context.ReviewContext;
import loomwright.review.context.ReviewText;

/** What a coil would draw through a module that limits it. Whether a module has to is judged with the coil. */
public final class ModuleCurrents implements Check {
    /** The last per cent goes to the steepness of the limit. */
    static final double AT_LIMIT = 0.98;

    @Override
    public List<Finding> check(ReviewContext context) {
        return context.plan().listParts(Coil.class).stream()
                .flatMap(coil -> context.moments().stream()
                        .filter(m -> m.solved().step() == Step.RUNNING)
                        .sorted(Comparator.comparingInt(m -> m.situation().changes()))
                        .flatMap(m -> judge(coil, m).stream())
                        .limit(1))
                .toList();
    }

    private static Optional<Finding> judge(Coil coil, Moment moment) {
        Optional<LoadCircuit> loop = LoadCircuit.find(moment.solved(), coil);
        Optional<IgnitionModule> module = loop.flatMap(LoadCircuit::findModule);
        double currentA = Math.abs(moment.solved().currentA(coil));
        if (loop.isEmpty() || module.isEmpty()) {
            return Optional.empty();
        }
        Double limitA = module.get().limitA();
        return limitA != null && currentA >= AT_LIMIT * limitA
                ? Optional.of(
                        limits(coil, module.get(), moment, currentA, loop.get().supplyV()))
                : Optional.empty();
    }

    /** Unlimited current by Ohm's law from the rest of the loop: I (V - Vsat) / (V - Vmodule). */
    private static Finding limits(Coil coil, IgnitionModule module, Moment moment, double currentA, double supplyV) {
        double moduleV = Math.abs(moment.solved()
                .acrossV(module.terminal(IgnitionModule.SWITCHED), module.terminal(IgnitionModule.RETURN)));
        double unlimitedA = currentA * (supplyV - module.saturationV()) / (supplyV - moduleV);
        double heatW = moduleV * currentA;
        return Finding.note(
                        FindingCode.MODULE_LIMITS_CURRENT.with(
                                arg("module", module.thing()),
                                arg("coil", coil.thing()),
                                arg("currentA", currentA),
                                arg("unlimitedA", unlimitedA),
                                arg("moduleHeatW", heatW),
                                FindingWording.when(moment)),
                        IgnitionRules.MODULES)
                .remedy(ReviewText.COOL_MODULE.with());
    }
}
