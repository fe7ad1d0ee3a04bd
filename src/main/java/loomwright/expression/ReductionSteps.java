package loomwright.expression;

import static loomwright.message.Arg.arg;
import static loomwright.message.Arg.messages;

import java.util.List;
import java.util.stream.Collectors;
import loomwright.message.Message;

/** The steps of a reduction. */
final class ReductionSteps {
    private ReductionSteps() {}

    /** A resistance with a name. */
    record Named(String name, double ohm) {
        Message message() {
            return ReductionText.RESISTANCE.with(arg("name", name), arg("resistanceOhm", ohm));
        }
    }

    static Reduction.Step series(List<Named> parts, Named whole) {
        String sum = parts.stream().map(Named::name).collect(Collectors.joining(" + "));
        return together(Reduction.Rule.SERIES, ReductionText.SERIES, parts, whole, sum);
    }

    static Reduction.Step parallel(List<Named> parts, Named whole) {
        String sum = parts.stream().map(p -> "1/" + p.name()).collect(Collectors.joining(" + "));
        return together(Reduction.Rule.PARALLEL, ReductionText.PARALLEL, parts, whole, "1/(" + sum + ")");
    }

    private static Reduction.Step together(
            Reduction.Rule rule, ReductionText text, List<Named> parts, Named whole, String formula) {
        return new Reduction.Step(
                rule,
                whole.ohm(),
                text.with(
                        messages("parts", parts.stream().map(Named::message).toList()),
                        arg("name", whole.name()),
                        arg("formula", formula),
                        arg("resistanceOhm", whole.ohm())));
    }

    static Reduction.Step deadEnd(Named part, String node) {
        return new Reduction.Step(
                Reduction.Rule.LEFT_OUT,
                part.ohm(),
                ReductionText.DEAD_END.with(arg("part", part.message()), arg("node", node)));
    }

    static Reduction.Step bothEndsAtOneNode(Named part) {
        return new Reduction.Step(
                Reduction.Rule.LEFT_OUT,
                part.ohm(),
                ReductionText.BOTH_ENDS_AT_ONE_NODE.with(arg("part", part.message())));
    }

    /** One side of a delta. */
    static Message side(Named side, String from, String to) {
        return ReductionText.DELTA_SIDE.with(arg("side", side.message()), arg("from", from), arg("to", to));
    }

    static Reduction.Step starDelta(String node, List<Named> star, double firstOhm, List<Message> sides) {
        return new Reduction.Step(
                Reduction.Rule.STAR_DELTA,
                firstOhm,
                ReductionText.STAR_DELTA.with(
                        arg("node", node),
                        messages("star", star.stream().map(Named::message).toList()),
                        messages("sides", sides)));
    }

    static Reduction.Step solved(String from, String to, double ohm) {
        return new Reduction.Step(
                Reduction.Rule.SOLVED,
                ohm,
                ReductionText.SOLVED.with(arg("from", from), arg("to", to), arg("resistanceOhm", ohm)));
    }
}
