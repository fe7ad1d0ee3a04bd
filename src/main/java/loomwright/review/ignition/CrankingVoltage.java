package loomwright.review.ignition;

import static loomwright.message.Arg.arg;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import loomwright.answer.Finding;
import loomwright.backfeed.Survey.Moment;
import loomwright.circuit.Battery;
import loomwright.circuit.Solenoid;
import loomwright.circuit.UsualVoltages;
import loomwright.operation.Step;
import loomwright.review.context.Check;
import loomwright.review.context.FindingCode;
import loomwright.review.context.FindingWording;
import loomwright.review.context.ReviewContext;
import loomwright.review.context.ReviewText;

/** The volts at each battery while the starter turns the engine. */
public final class CrankingVoltage implements Check {
    private static final double ROUNDING = 1 - 1e-9;

    @Override
    public List<Finding> check(ReviewContext context) {
        if (context.plan().listParts(Solenoid.class).isEmpty()) {
            return List.of();
        }
        return context.plan().listParts(Battery.class).stream()
                .flatMap(battery -> judge(context, battery).stream())
                .toList();
    }

    private static Optional<Finding> judge(ReviewContext context, Battery battery) {
        Double own = battery.nominalVoltageV();
        double share = own == null ? 1 : own / context.plan().system().nominalVoltageV();
        double limitV = context.plan().system().scaledFrom12V(UsualVoltages.CRANKING_V) * share;
        return context.moments().stream()
                .filter(m -> m.solved().step() == Step.CRANK && volts(battery, m) < limitV * ROUNDING)
                .min(Comparator.comparingInt(m -> m.situation().changes()))
                .map(m -> low(battery, m, limitV));
    }

    private static double volts(Battery battery, Moment moment) {
        return Math.abs(moment.solved().acrossV(battery.terminal(Battery.PLUS), battery.terminal(Battery.MINUS)));
    }

    private static Finding low(Battery battery, Moment moment, double limitV) {
        double batteryV = volts(battery, moment);
        return Finding.warning(
                        FindingCode.BATTERY_LOW_CRANKING.with(
                                arg("battery", battery.thing()),
                                arg("batteryV", batteryV),
                                arg("limitV", limitV),
                                FindingWording.limitRatio(limitV, batteryV),
                                FindingWording.when(moment)),
                        IgnitionRules.CRANKING)
                .remedy(ReviewText.CHECK_BATTERY.with());
    }
}
