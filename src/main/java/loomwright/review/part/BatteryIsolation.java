package loomwright.review.part;

import static loomwright.message.Arg.arg;

import java.util.List;
import java.util.Optional;
import loomwright.answer.Basis;
import loomwright.answer.Finding;
import loomwright.backfeed.Survey.Moment;
import loomwright.circuit.Battery;
import loomwright.circuit.Generator;
import loomwright.circuit.Plan;
import loomwright.circuit.Switch;
import loomwright.operation.FeedStrength;
import loomwright.operation.GeneratorOutput;
import loomwright.operation.SolvedStep;
import loomwright.operation.Step;
import loomwright.review.context.Check;
import loomwright.review.context.FindingCode;
import loomwright.review.context.ReviewContext;
import loomwright.review.context.ReviewText;

/** Switches that take the battery off a machine that goes on charging: each free switch, moved while the engine runs. */
public final class BatteryIsolation implements Check {
    private static final Basis PRACTICE = Basis.commonPractice(
            "an alternator whose battery is disconnected while it charges gives surges that destroy diodes and"
                    + " electronics");

    @Override
    public List<Finding> check(ReviewContext context) {
        return context.plan().listParts(Switch.class).stream()
                .filter(Switch::free)
                .flatMap(chosen -> find(context, chosen).stream())
                .toList();
    }

    private static Optional<Finding> find(ReviewContext context, Switch chosen) {
        for (Moment moment : context.moments()) {
            if (moment.solved().step() != Step.RUNNING || !batteryIsUsed(moment.solved())) {
                continue;
            }
            for (Generator generator : context.plan().listParts(Generator.class)) {
                if (GeneratorOutput.outputA(moment.solved(), generator) < FeedStrength.TRICKLE_A) {
                    continue;
                }
                for (Switch.Position position : chosen.positions()) {
                    Plan set = moment.situation().plan().withPart(chosen.withPosition(position.name()));
                    SolvedStep after = context.survey()
                            .settings()
                            .solve(set, Step.RUNNING, moment.solved().active());
                    if (after.solved()
                            && !batteryIsUsed(after)
                            && GeneratorOutput.outputA(after, generator) > FeedStrength.TRICKLE_A) {
                        return Optional.of(finding(generator, chosen, position));
                    }
                }
            }
            return Optional.empty();
        }
        return Optional.empty();
    }

    private static boolean batteryIsUsed(SolvedStep solved) {
        return solved.plan().listParts(Battery.class).stream()
                .anyMatch(battery ->
                        Math.abs(solved.currentA(solved.firstBranchOf(battery.id()))) > FeedStrength.TRICKLE_A);
    }

    private static Finding finding(Generator generator, Switch chosen, Switch.Position position) {
        return Finding.warning(
                        FindingCode.BATTERY_OFF_WHILE_CHARGING.with(
                                arg("generator", generator.thing()),
                                arg("switch", chosen.thing()),
                                arg("position", position.name())),
                        PRACTICE)
                .remedy(ReviewText.CUT_FIELD_WITH_ISOLATOR.with());
    }
}
