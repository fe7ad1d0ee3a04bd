package loomwright.review.part;

import static loomwright.message.Arg.arg;

import java.util.List;
import java.util.Optional;
import loomwright.answer.Basis;
import loomwright.answer.Finding;
import loomwright.backfeed.Survey.Moment;
import loomwright.circuit.Consumer;
import loomwright.circuit.Electromagnet;
import loomwright.message.Catalogue;
import loomwright.review.context.Check;
import loomwright.review.context.FindingCode;
import loomwright.review.context.FindingWording;
import loomwright.review.context.ReviewContext;
import loomwright.review.context.ReviewText;
import loomwright.review.context.WorstCaseOrder;

/**
 * Windings of relays and solenoids that are fed as meant for longer than a start takes, but with far more volts than they are
 * made for. What they are made for shows only in the volts at which they pull in; where the plan leaves those out they are
 * taken as right for the vehicle.
 */
public final class WindingVoltages implements Check {
    /**
     * The volts it is made for lie between these multiples of those at which it pulls in: it does so from about 0.45 to two
     * thirds of them (common practice, no source).
     */
    private static final double RATED_LEAST = 1.5;

    private static final double RATED_MOST = 2.2;

    /** Times the volts it is made for that a winding stands for long (common practice, no source). */
    private static final double STANDS = 1.3;

    /**
     * Times the volts at which it pulls in, in whole numbers what one stands that pulls in easily. So one for half the
     * vehicle's volts is over, one that is right for it is not.
     */
    private static final double MOST = Math.ceil(STANDS * RATED_MOST);

    private static final Basis PULL_IN =
            Basis.commonPractice("a winding gets at most " + Catalogue.english().quantity(MOST, "")
                    + " times the volts at which it pulls in: a relay or solenoid is made for "
                    + Catalogue.english().quantity(RATED_LEAST, "") + " to "
                    + Catalogue.english().quantity(RATED_MOST, "") + " times these and stands about "
                    + Catalogue.english().quantity(STANDS, "") + " times what it is made for");

    @Override
    public List<Finding> check(ReviewContext context) {
        return context.plan().listParts(Consumer.class).stream()
                .filter(part -> part instanceof Electromagnet)
                .flatMap(winding -> judge(context, winding).stream())
                .toList();
    }

    private static Optional<Finding> judge(ReviewContext context, Consumer winding) {
        Double operateV = winding.operateV();
        return operateV == null
                ? Optional.empty()
                : context.lastingMoments().stream()
                        .filter(m -> m.isMeant(winding) && volts(winding, m) > MOST * operateV)
                        .min(WorstCaseOrder.mostOf(m -> volts(winding, m)))
                        .map(m -> finding(winding, operateV, m));
    }

    private static double volts(Consumer winding, Moment moment) {
        return Math.abs(moment.solved().acrossV(winding));
    }

    /** How many times the heat of the volts it is made for. */
    private static double heat(double windingV, double ratedV) {
        return Math.pow(windingV / ratedV, 2);
    }

    private static Finding finding(Consumer winding, double operateV, Moment moment) {
        double windingV = volts(winding, moment);
        return Finding.warning(
                        FindingCode.WINDING_OVERVOLTAGE.with(
                                arg("winding", winding.thing()),
                                arg("windingV", windingV),
                                arg("limitV", MOST * operateV),
                                FindingWording.limitRatio(windingV, MOST * operateV),
                                arg("operateV", operateV),
                                arg("lowestRatedV", RATED_LEAST * operateV),
                                arg("highestRatedV", RATED_MOST * operateV),
                                arg("lowestHeatRatio", heat(windingV, RATED_MOST * operateV)),
                                arg("highestHeatRatio", heat(windingV, RATED_LEAST * operateV)),
                                FindingWording.when(moment)),
                        PULL_IN)
                .remedy(ReviewText.FIT_WINDING_FOR_VOLTAGE.with());
    }
}
