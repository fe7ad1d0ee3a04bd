package loomwright.review.part;

import static loomwright.message.Arg.arg;

import java.util.List;
import java.util.Optional;
import loomwright.answer.Finding;
import loomwright.answer.Severity;
import loomwright.backfeed.Survey.Moment;
import loomwright.circuit.Alternator;
import loomwright.circuit.Plan;
import loomwright.circuit.VehicleSystem;
import loomwright.judgement.ChargingRule;
import loomwright.operation.FeedStrength;
import loomwright.operation.GeneratorOutput;
import loomwright.operation.SolvedStep;
import loomwright.operation.Step;
import loomwright.review.context.Check;
import loomwright.review.context.FindingCode;
import loomwright.review.context.FindingWording;
import loomwright.review.context.ReviewContext;
import loomwright.review.context.ReviewText;
import loomwright.review.context.WorstCaseOrder;

/** Alternators whose sense terminal has lost its wire, or measures at a place that is far below the output. */
public final class SenseTerminals implements Check {
    /** Beyond the most that any charging wire may lose, at 12 V. Common practice, no source. */
    private static final double FAR_BELOW_12V = 1.0;

    @Override
    public List<Finding> check(ReviewContext context) {
        return context.plan().listParts(Alternator.class).stream()
                .filter(alternator -> alternator.senseLost() != null)
                .flatMap(alternator -> find(context, alternator).stream())
                .toList();
    }

    private static Optional<Finding> find(ReviewContext context, Alternator alternator) {
        Plan plan = context.plan();
        boolean open = plan.wiresAt(alternator.terminal(Alternator.SENSE)) == 0;
        return context.lastingMoments().stream()
                .filter(m -> m.solved().step() == Step.RUNNING
                        && GeneratorOutput.outputA(m.solved(), alternator) > FeedStrength.TRICKLE_A)
                .filter(m -> open || isFarBelow(m.solved(), alternator))
                .min(WorstCaseOrder.mostOf(m -> outputV(m.solved(), alternator)))
                .map(m -> finding(alternator, m, open));
    }

    private static boolean isFarBelow(SolvedStep solved, Alternator alternator) {
        double lostV = outputV(solved, alternator) - senseV(solved, alternator);
        return lostV > solved.plan().system().scaledFrom12V(FAR_BELOW_12V);
    }

    private static double outputV(SolvedStep solved, Alternator alternator) {
        return Math.abs(solved.acrossV(alternator.terminal(Alternator.OUTPUT), alternator.terminal(Alternator.RETURN)));
    }

    private static double senseV(SolvedStep solved, Alternator alternator) {
        VehicleSystem system = solved.plan().system();
        return system.earthPolarity().feedSign()
                * solved.acrossV(
                        alternator.terminal(Alternator.SENSE), alternator.terminal(alternator.earthedPole(system)));
    }

    private static Finding finding(Alternator alternator, Moment moment, boolean open) {
        VehicleSystem system = moment.solved().plan().system();
        double outputV = outputV(moment.solved(), alternator);
        boolean full = alternator.senseLost() == Alternator.SenseLost.FULL_OUTPUT;
        return Finding.of(
                        ChargingRule.judgeSenseLost(outputV, system.nominalVoltageV(), full)
                                .severity()
                                .orElse(Severity.NOTE),
                        FindingCode.SENSE_LOST.with(
                                arg("generator", alternator.thing()),
                                arg("open", open ? "yes" : "no"),
                                arg("fullOutput", full ? "yes" : "no"),
                                arg("senseV", senseV(moment.solved(), alternator)),
                                arg("outputV", outputV),
                                arg("regulatedV", alternator.regulatedV(system)),
                                FindingWording.when(moment)),
                        ChargingRule.SENSE_BASIS)
                .remedy(ReviewText.CONNECT_SENSE.with(arg("generator", alternator.thing())));
    }
}
