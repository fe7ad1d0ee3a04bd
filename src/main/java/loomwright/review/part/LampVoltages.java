package loomwright.review.part;

import static loomwright.review.context.FindingWording.number;

import java.util.List;
import java.util.Optional;
import loomwright.answer.Basis;
import loomwright.answer.Finding;
import loomwright.answer.Severity;
import loomwright.backfeed.Survey.Moment;
import loomwright.circuit.FilamentLamp;
import loomwright.review.context.Check;
import loomwright.review.context.FindingCode;
import loomwright.review.context.FindingWording;
import loomwright.review.context.ReviewContext;
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
        return FindingCode.LAMP_OVERVOLTAGE.finding(
                Severity.WARNING,
                List.of(lamp.id()),
                lamp.displayName() + " gets " + number(lampV) + " V, " + FindingWording.when(moment)
                        + "; it is made for "
                        + number(lamp.ratedV()) + " V. A filament lives at " + number(times)
                        + " times its volts about 1/" + Math.round(Math.pow(times, LIFE_EXPONENT))
                        + " as long as it should, if it does not go at once.",
                FindingWording.with(
                        FindingWording.against("lampV", lampV, "limitV", MOST * lamp.ratedV()),
                        FindingWording.figure("ratedV", lamp.ratedV())),
                LIFE,
                "Fit a lamp for the volts it gets. If it is the right lamp, look for what should take the rest: a resistor or"
                        + " a lamp in series, or a regulator that holds too much.");
    }
}
