package loomwright.review.part;

import static loomwright.message.Arg.arg;

import java.util.List;
import java.util.Optional;
import loomwright.answer.Basis;
import loomwright.answer.Finding;
import loomwright.backfeed.Survey.Moment;
import loomwright.circuit.FilamentLamp;
import loomwright.review.context.Check;
import loomwright.review.context.FindingCode;
import loomwright.review.context.FindingWording;
import loomwright.review.context.ReviewContext;
import loomwright.review.context.ReviewText;
import loomwright.review.context.WorstCaseOrder;

/** Filament lamps that are lit as meant, but with far more volts than they are made for. */
public final class LampVoltages implements Check {
    /**
     * Of the rated volts. Common practice, no source: a lamp marked with the nominal voltage lives with the 1.2 times that
     * of a charging system, which every vehicle has.
     */
    private static final double MOST = 1.25;

    /** The least power of the volts with which the life falls (12 to 13, from memory). */
    private static final double LIFE_EXPONENT = 12;

    private static final Basis LIFE = Basis.commonPractice(
            "a lamp gets at most 1.25 times its rated volts; its life falls with about the 12th to 13th power of the volts"
                    + " (from memory)");

    @Override
    public List<Finding> check(ReviewContext context) {
        return context.plan().listParts(FilamentLamp.class).stream()
                .flatMap(lamp -> worst(context, lamp).map(m -> finding(lamp, m)).stream())
                .toList();
    }

    private static Optional<Moment> worst(ReviewContext context, FilamentLamp lamp) {
        return context.lastingMoments().stream()
                .filter(m -> m.isMeant(lamp) && volts(lamp, m) > MOST * lamp.ratedV())
                .min(WorstCaseOrder.mostOf(m -> volts(lamp, m)));
    }

    private static double volts(FilamentLamp lamp, Moment moment) {
        return Math.abs(moment.solved().acrossV(lamp));
    }

    private static Finding finding(FilamentLamp lamp, Moment moment) {
        double lampV = volts(lamp, moment);
        double times = lampV / lamp.ratedV();
        return Finding.warning(
                        FindingCode.LAMP_OVERVOLTAGE.with(
                                arg("lamp", lamp.thing()),
                                arg("lampV", lampV),
                                arg("limitV", MOST * lamp.ratedV()),
                                FindingWording.limitRatio(lampV, MOST * lamp.ratedV()),
                                arg("ratedV", lamp.ratedV()),
                                arg("lifePercent", 100 * Math.pow(times, -LIFE_EXPONENT)),
                                FindingWording.when(moment)),
                        LIFE)
                .remedy(ReviewText.FIT_LAMP_FOR_VOLTAGE.with());
    }
}
