package loomwright.review.part;

import static loomwright.message.Arg.arg;

import java.util.List;
import java.util.Optional;
import loomwright.answer.Basis;
import loomwright.answer.Finding;
import loomwright.backfeed.Survey.Moment;
import loomwright.circuit.LedLamp;
import loomwright.circuit.TwoEndedConsumer;
import loomwright.review.context.Check;
import loomwright.review.context.FindingCode;
import loomwright.review.context.FindingWording;
import loomwright.review.context.ReviewContext;
import loomwright.review.context.ReviewText;
import loomwright.review.context.WorstCaseOrder;

/**
 * LED lamps and polarised loads that are fed the wrong way round and never the right way, as they are after a change of earth. One
 * between two feeds, such as a tell-tale between left and right, is the right way round for one of them.
 */
public final class ReversedPolarity implements Check {
    /** Below this share of the nominal voltage nothing is decided (common practice, no source). */
    private static final double PLAIN_SHARE = 0.25;

    private static final Basis SOLVED =
            Basis.computed("volts across each part that works one way round", "Kirchhoff's laws and Ohm's law");

    @Override
    public List<Finding> check(ReviewContext context) {
        return context.plan().listParts(TwoEndedConsumer.class).stream()
                .flatMap(part -> worst(context, part).map(m -> finding(part, m)).stream())
                .toList();
    }

    /** The moment in which a part has most volts the wrong way round; empty if it is sound. */
    public static Optional<Moment> worst(ReviewContext context, TwoEndedConsumer part) {
        double plainV = PLAIN_SHARE * context.plan().system().nominalVoltageV();
        boolean everRight = context.moments().stream().anyMatch(moment -> rightV(part, moment) > plainV);
        if (part.plus() == null || everRight) {
            return Optional.empty();
        }
        return context.lastingMoments().stream()
                .filter(moment -> rightV(part, moment) < -plainV)
                .min(WorstCaseOrder.mostOf(moment -> -rightV(part, moment)));
    }

    /** Volts the right way round; negative if they are reversed. */
    private static double rightV(TwoEndedConsumer part, Moment moment) {
        double acrossV = moment.solved().acrossV(part);
        return part.feedTerminal().equals(part.plus()) ? acrossV : -acrossV;
    }

    private static Finding finding(TwoEndedConsumer part, Moment moment) {
        boolean led = part instanceof LedLamp;
        var message = FindingCode.POLARITY_REVERSED.with(
                arg("part", part.thing()),
                arg("reversedV", -rightV(part, moment)),
                arg("led", led ? "yes" : "no"),
                FindingWording.when(moment));
        return (led ? Finding.warning(message, SOLVED) : Finding.danger(message, SOLVED))
                .remedy(ReviewText.TURN_OR_REPLACE_POLARISED.with());
    }
}
