package loomwright.review.part;

import static loomwright.message.Arg.arg;

import java.util.List;
import java.util.Optional;
import loomwright.answer.Basis;
import loomwright.answer.Finding;
import loomwright.backfeed.Survey.Moment;
import loomwright.circuit.Stabiliser;
import loomwright.circuit.VehicleSystem;
import loomwright.judgement.LoadKind;
import loomwright.review.context.Check;
import loomwright.review.context.FindingCode;
import loomwright.review.context.FindingWording;
import loomwright.review.context.ReviewContext;
import loomwright.review.context.ReviewText;
import loomwright.review.context.WorstCaseOrder;

/** Stabilisers that let more through to their gauges than these are made for, as without their earth or with a bridge across them. */
public final class GaugeVoltages implements Check {
    private static final Basis GAUGE_VOLTS =
            Basis.commonPractice("a gauge reads right up to 1.15 times the volts of its stabiliser");

    @Override
    public List<Finding> check(ReviewContext context) {
        return context.plan().listParts(Stabiliser.class).stream()
                .flatMap(stabiliser -> worst(context, stabiliser).map(m -> finding(stabiliser, m)).stream())
                .toList();
    }

    private static Optional<Moment> worst(ReviewContext context, Stabiliser stabiliser) {
        double mostV = LoadKind.GAUGE_MOST * stabiliser.outputV(context.plan().system());
        return context.lastingMoments().stream()
                .filter(moment -> outputV(stabiliser, moment) > mostV)
                .min(WorstCaseOrder.mostOf(moment -> outputV(stabiliser, moment)));
    }

    /** What reaches its gauges, against the chassis, to which their senders lead. */
    private static double outputV(Stabiliser stabiliser, Moment moment) {
        int node = moment.solved().node(stabiliser.terminal(Stabiliser.OUTPUT));
        return Math.abs(moment.solved().voltageV(node).orElse(0));
    }

    private static Finding finding(Stabiliser stabiliser, Moment moment) {
        VehicleSystem system = moment.solved().plan().system();
        return Finding.warning(
                        FindingCode.GAUGES_READ_HIGH.with(
                                arg("stabiliser", stabiliser.thing()),
                                arg("outputV", outputV(stabiliser, moment)),
                                arg("ratedV", stabiliser.outputV(system)),
                                arg("regulates", moment.solved().isActive(stabiliser) ? "yes" : "no"),
                                FindingWording.when(moment)),
                        GAUGE_VOLTS)
                .remedy(ReviewText.EARTH_STABILISER.with(
                        arg("terminal", stabiliser.terminal(Stabiliser.EARTH).toString())));
    }
}
