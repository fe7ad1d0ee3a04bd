package loomwright.review;

import static loomwright.review.Wording.figure;
import static loomwright.review.Wording.number;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import loomwright.answer.Finding;
import loomwright.answer.Severity;
import loomwright.backfeed.Survey.Moment;
import loomwright.circuit.Coil;
import loomwright.ignition.UsualIgnition;
import loomwright.operation.Step;

/**
 * The volts at each ballasted coil with the key on and contacts closed, as they are measured: everything else as the plan
 * has it, since that is how the window is meant.
 */
final class CoilVoltages implements Check {
    @Override
    public List<Finding> check(ReviewContext context) {
        List<Finding> findings = new ArrayList<>();
        double lowV = context.plan().system().scaledFrom12V(UsualIgnition.COIL_LOW_V);
        double highV = context.plan().system().scaledFrom12V(UsualIgnition.COIL_HIGH_V);
        for (Coil coil : context.plan().listParts(Coil.class)) {
            List<Moment> keyOn = context.moments().stream()
                    .filter(m -> m.solved().step() == Step.RUN && isBallasted(coil, m))
                    .sorted(Comparator.comparingInt(m -> m.situation().changes()))
                    .toList();
            keyOn.stream().findFirst().ifPresent(m -> {
                if (volts(coil, m) < lowV) {
                    findings.add(low(coil, m, lowV, highV));
                } else if (volts(coil, m) > highV) {
                    findings.add(high(coil, m, lowV, highV));
                }
            });
        }
        return findings;
    }

    private static boolean isBallasted(Coil coil, Moment moment) {
        return Math.abs(moment.solved().currentA(coil)) > IgnitionRules.IGNITION_A
                && LoadLoop.find(moment.solved(), coil)
                        .filter(loop -> loop.ballastOhm() >= IgnitionRules.LEAST_BALLAST_OHM)
                        .isPresent();
    }

    private static double volts(Coil coil, Moment moment) {
        return Math.abs(moment.solved().acrossV(coil));
    }

    private static Finding low(Coil coil, Moment moment, double lowV, double highV) {
        double coilV = volts(coil, moment);
        return FindingCode.COIL_VOLTAGE_LOW.finding(
                Severity.WARNING,
                List.of(coil.id()),
                shows(coil, moment, lowV, highV) + " The spark is weak.",
                List.of(figure("coilV", coilV), figure("lowV", lowV), figure(Wording.TIMES_LIMIT, lowV / coilV)),
                IgnitionRules.COIL,
                "Look for lost volts in its feed and contacts; else a ballast of fewer ohms.");
    }

    private static Finding high(Coil coil, Moment moment, double lowV, double highV) {
        return FindingCode.COIL_VOLTAGE_HIGH.finding(
                Severity.WARNING,
                List.of(coil.id()),
                shows(coil, moment, lowV, highV) + " Coil and contacts get hot.",
                Wording.against("coilV", volts(coil, moment), "highV", highV),
                IgnitionRules.COIL,
                "A ballast of more ohms.");
    }

    private static String shows(Coil coil, Moment moment, double lowV, double highV) {
        return coil.called() + " shows " + number(volts(coil, moment)) + " V with contacts closed, "
                + Wording.when(moment) + "; usual behind a ballast are " + number(lowV) + " to " + number(highV)
                + " V.";
    }
}
