package loomwright.review.ignition;

import static loomwright.review.context.FindingWording.figure;
import static loomwright.review.context.FindingWording.number;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import loomwright.answer.Finding;
import loomwright.answer.Severity;
import loomwright.backfeed.Survey.Moment;
import loomwright.circuit.Coil;
import loomwright.circuit.IgnitionModule;
import loomwright.operation.Step;
import loomwright.review.context.Check;
import loomwright.review.context.FindingCode;
import loomwright.review.context.FindingWording;
import loomwright.review.context.LoadCircuit;
import loomwright.review.context.ReviewContext;

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
        return FindingCode.BALLAST_MISSING.finding(
                Severity.DANGER,
                List.of(coil.id()),
                coil.displayName() + " is made for use with a ballast and is fed directly, "
                        + FindingWording.when(moment)
                        + ": "
                        + number(currentA) + " A, and " + number(heatW)
                        + " W of heat in it as long as the contacts are closed. It overheats and can burst.",
                List.of(figure("currentA", currentA), figure("heatW", heatW)),
                IgnitionRules.COILS,
                "Put the ballast into its feed, or fit a coil meant for direct feed.");
    }

    private static Finding unwanted(Coil coil, Moment moment, double currentA, double ballastOhm) {
        return FindingCode.BALLAST_UNWANTED.finding(
                Severity.WARNING,
                List.of(coil.id()),
                coil.displayName() + " is made for direct feed and gets its current through " + number(ballastOhm)
                        + " ohm, " + FindingWording.when(moment) + ": only " + number(currentA)
                        + " A, so a weak spark.",
                List.of(figure("currentA", currentA), figure("ballastOhm", ballastOhm)),
                IgnitionRules.COILS,
                "Take the ballast out of the feed together with its bypass, or fit a coil meant for a ballast.");
    }
}
