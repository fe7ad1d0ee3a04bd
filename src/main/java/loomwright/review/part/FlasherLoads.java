package loomwright.review.part;

import static loomwright.message.Arg.arg;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import loomwright.answer.Finding;
import loomwright.backfeed.Survey.Moment;
import loomwright.circuit.Flasher;
import loomwright.circuit.VehicleSystem;
import loomwright.judgement.FlasherRule;
import loomwright.judgement.FlasherRule.State;
import loomwright.operation.Flashing;
import loomwright.review.context.Check;
import loomwright.review.context.FindingCode;
import loomwright.review.context.FindingWording;
import loomwright.review.context.ReviewContext;
import loomwright.review.context.ReviewText;

/** Flasher units whose lamps take too little or too much for them in some position of the switches. */
public final class FlasherLoads implements Check {
    @Override
    public List<Finding> check(ReviewContext context) {
        return context.plan().listParts(Flasher.class).stream()
                .flatMap(flasher -> Stream.of(
                                tooLittle(context, flasher, State.NOT_FLASHING),
                                tooLittle(context, flasher, State.FAST),
                                tooMuch(context, flasher))
                        .flatMap(Optional::stream))
                .toList();
    }

    private static Stream<Moment> in(ReviewContext context, Flasher flasher, State state) {
        return context.lastingMoments().stream().filter(moment -> Flashing.state(moment.solved(), flasher) == state);
    }

    private static Optional<Finding> tooLittle(ReviewContext context, Flasher flasher, State state) {
        VehicleSystem system = context.plan().system();
        Double madeForW = flasher.madeForW();
        double needsA = state == State.FAST && madeForW != null
                ? FlasherRule.LAMP_OUT_SHARE * madeForW / system.nominalVoltageV()
                : flasher.minimumA(system);
        return in(context, flasher, state)
                .min(Comparator.comparingDouble(moment -> Flashing.loadA(moment.solved(), flasher)))
                .map(moment -> Finding.warning(
                                (state == State.FAST ? FindingCode.FLASHER_FAST : FindingCode.FLASHER_NOT_FLASHING)
                                        .with(
                                                arg("flasher", flasher.thing()),
                                                arg("loadA", Flashing.loadA(moment.solved(), flasher)),
                                                arg("needsA", needsA),
                                                FindingWording.when(moment)),
                                flasher.electronic() ? FlasherRule.BASIS : FlasherRule.LOAD_BASIS)
                        .remedy(
                                flasher.stuck() == null
                                        ? ReviewText.FIT_FLASHER_FOR_LOAD.with()
                                        : ReviewText.REPLACE_FLASHER.with()));
    }

    private static Optional<Finding> tooMuch(ReviewContext context, Flasher flasher) {
        Double madeForW = flasher.madeForW();
        if (madeForW == null) {
            return Optional.empty();
        }
        double limitA =
                FlasherRule.OVERLOAD_SHARE * madeForW / context.plan().system().nominalVoltageV();
        return in(context, flasher, State.OVERLOADED)
                .max(Comparator.comparingDouble(moment -> Flashing.loadA(moment.solved(), flasher)))
                .map(moment -> {
                    double loadA = Flashing.loadA(moment.solved(), flasher);
                    return Finding.warning(
                                    FindingCode.FLASHER_OVERLOADED.with(
                                            arg("flasher", flasher.thing()),
                                            arg("loadA", loadA),
                                            arg("limitA", limitA),
                                            FindingWording.limitRatio(loadA, limitA),
                                            FindingWording.when(moment)),
                                    FlasherRule.LOAD_BASIS)
                            .remedy(ReviewText.FIT_FLASHER_FOR_LOAD.with());
                });
    }
}
