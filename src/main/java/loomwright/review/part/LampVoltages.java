package loomwright.review.part;

import static loomwright.message.Arg.arg;

import java.util.List;
import java.util.Optional;
import loomwright.answer.Finding;
import loomwright.answer.Severity;
import loomwright.backfeed.Survey.Moment;
import loomwright.circuit.FilamentLamp;
import loomwright.judgement.LampLaw;
import loomwright.judgement.Level;
import loomwright.judgement.Verdict;
import loomwright.review.context.Check;
import loomwright.review.context.FindingCode;
import loomwright.review.context.FindingWording;
import loomwright.review.context.ReviewContext;
import loomwright.review.context.ReviewText;
import loomwright.review.context.WorstCaseOrder;

/** Filament lamps that are lit as meant, but with far more volts than they are made for. */
public final class LampVoltages implements Check {
    /** With less of its life left a lamp may blow when it is switched on (common practice, no source). */
    private static final double BLOWS_AT_PERCENT = 1;

    @Override
    public List<Finding> check(ReviewContext context) {
        return context.plan().listParts(FilamentLamp.class).stream()
                .flatMap(lamp -> worst(context, lamp).map(m -> finding(lamp, m)).stream())
                .toList();
    }

    private static Optional<Moment> worst(ReviewContext context, FilamentLamp lamp) {
        return context.lastingMoments().stream()
                .filter(m -> m.isMeant(lamp) && judge(lamp, m).level() != Level.FITS)
                .min(WorstCaseOrder.mostOf(m -> judge(lamp, m).value()));
    }

    private static Verdict judge(FilamentLamp lamp, Moment moment) {
        return LampLaw.judgeOvervoltage(Math.abs(moment.solved().acrossV(lamp)), testV(lamp));
    }

    private static double testV(FilamentLamp lamp) {
        return LampLaw.testV(lamp.ratedV(), lamp.ratedW());
    }

    private static Finding finding(FilamentLamp lamp, Moment moment) {
        Verdict verdict = judge(lamp, moment);
        double lifePercent = 100 * LampLaw.lifeFraction(verdict.value() / testV(lamp));
        return Finding.of(
                        verdict.level().severity().orElse(Severity.NOTE),
                        FindingCode.LAMP_OVERVOLTAGE.with(
                                arg("lamp", lamp.thing()),
                                arg("lampV", verdict.value()),
                                arg("limitV", verdict.limit()),
                                FindingWording.limitRatio(verdict.value(), verdict.limit()),
                                arg("ratedV", lamp.ratedV()),
                                arg("lifePercent", lifePercent),
                                arg("blows", lifePercent < BLOWS_AT_PERCENT ? "yes" : "no"),
                                FindingWording.when(moment)),
                        verdict.basis())
                .remedy(ReviewText.FIT_LAMP_FOR_VOLTAGE.with());
    }
}
