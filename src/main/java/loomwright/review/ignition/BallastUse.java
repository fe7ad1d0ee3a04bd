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

/** Whether a coil for use with a ballast has one while the engine runs, and a coil for direct feed has none. */
public final class BallastUse implements Check {
    @Override
    public List<Finding> check(ReviewContext context) {
        return context.plan().listParts(Coil.class).stream()
                .filter(coil -> coil.use() != null)
                .flatMap(coil -> context.moments().stream()
                        .filter(m -> m.solved().step() == Step.RUNNING)
                        .sorted(Comparator.comparingInt(m -> m.situation().changes()))
                        .flatMap(m -> judge(coil, m).stream())
                        .limit(1))
                .toList();
    }

    private static Optional<Finding> judge(Coil coil, Moment moment) {
        double currentA = Math.abs(moment.solved().currentA(coil));
        Optional<LoadCircuit> loop = LoadCircuit.find(moment.solved(), coil);
        if (currentA <= IgnitionRules.IGNITION_A || loop.isEmpty()) {
            return Optional.empty();
        }
        boolean ballasted = loop.get().ballastOhm() >= IgnitionRules.LEAST_BALLAST_OHM;
        boolean limited = loop.get()
                .findModule()
                .map(IgnitionModule::limitA)
                .filter(limitA -> currentA >= ModuleCurrents.AT_LIMIT * limitA)
                .isPresent();
        if (coil.use() == Coil.Use.WITH_BALLAST && !ballasted && !limited) {
            return Optional.of(missing(coil, moment, currentA));
        } else if (coil.use() == Coil.Use.DIRECT && ballasted) {
            return Optional.of(unwanted(coil, moment, currentA, loop.get().ballastOhm()));
        }
        return Optional.empty();
    }

    private static Finding missing(Coil coil, Moment moment, double currentA) {
        double heatW = currentA * currentA * coil.primaryResistanceOhm();
        return Finding.danger(
                        FindingCode.BALLAST_MISSING.with(
                                arg("coil", coil.thing()),
                                arg("currentA", currentA),
                                arg("heatW", heatW),
                                FindingWording.when(moment)),
                        IgnitionRules.COILS)
                .remedy(ReviewText.FIT_BALLAST.with());
    }

    private static Finding unwanted(Coil coil, Moment moment, double currentA, double ballastOhm) {
        return Finding.warning(
                        FindingCode.BALLAST_UNWANTED.with(
                                arg("coil", coil.thing()),
                                arg("currentA", currentA),
                                arg("ballastOhm", ballastOhm),
                                FindingWording.when(moment)),
                        IgnitionRules.COILS)
                .remedy(ReviewText.REMOVE_BALLAST.with());
    }
}
