package loomwright.operation;

import static loomwright.message.Arg.arg;
import static loomwright.message.Arg.list;
import static loomwright.message.Arg.messages;
import static loomwright.message.Arg.things;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Stream;
import loomwright.answer.Assumption;
import loomwright.circuit.Condition;
import loomwright.circuit.Consumer;
import loomwright.circuit.LiveAlternative;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.message.Arg;
import loomwright.message.Argument.SwitchPosition;
import loomwright.message.Message;
import loomwright.operation.UsualIntent.Rule;
import loomwright.operation.UsualIntent.Usual;

/** What {@link UsualIntent} filled in, as assumptions; one covers all consumers that are alike in this. */
public final class IntentAssumptions {
    private IntentAssumptions() {}

    /** What the consumers of one assumption have in common. */
    private record Group(Rule rule, List<Condition> conditions, List<LiveAlternative> when) {}

    /**
     * The assumptions of a plan as it was handed in, in its order.
     *
     * @param findings the codes of the findings of this answer about a consumer, by its id, that ask when it should be
     *     live
     */
    public static List<Assumption> of(Plan plan, Function<String, List<String>> findings) {
        Map<Group, List<Consumer>> groups = new LinkedHashMap<>();
        for (Usual usual : UsualIntent.of(plan)) {
            groups.computeIfAbsent(new Group(usual.rule(), usual.conditions(), usual.when()), key -> new ArrayList<>())
                    .add(usual.consumer());
        }
        List<Assumption> assumptions = new ArrayList<>();
        groups.forEach((group, consumers) -> assumptions.add(new Assumption(
                code(group.rule()),
                consumers.stream().map(Part::id).toList(),
                assumed(group),
                text(plan, group, consumers),
                consumers.stream()
                        .flatMap(c -> findings.apply(c.id()).stream())
                        .distinct()
                        .toList())));
        return assumptions;
    }

    /** The code of the assumptions of a rule. */
    public static String code(Rule rule) {
        return "meant-live-" + rule.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    private static Map<String, Object> assumed(Group group) {
        Map<String, Object> assumed = new LinkedHashMap<>();
        assumed.put("meantLive", group.conditions());
        if (!group.when().isEmpty()) {
            assumed.put("meantLiveWhen", group.when());
        }
        return assumed;
    }

    private static Message text(Plan plan, Group group, List<Consumer> consumers) {
        return group.rule()
                .with(
                        things("loads", consumers.stream().map(Part::thing).toList()),
                        arg("count", consumers.size()),
                        arg("times", times(group.conditions())),
                        arg("ways", group.when().size()),
                        messages(
                                "alternatives",
                                group.when().stream()
                                        .map(one -> alternative(plan, one))
                                        .toList()));
    }

    private static Message times(List<Condition> conditions) {
        return conditions.size() == Condition.values().length
                ? IntentText.ANY_TIME.with()
                : IntentText.TIMES.with(messages(
                        "steps",
                        Stream.of(Step.values())
                                .filter(step -> !step.passing() && conditions.contains(step.condition()))
                                .map(step -> IntentText.TIME.with(arg("step", step)))
                                .toList()));
    }

    private static Message alternative(Plan plan, LiveAlternative one) {
        Arg positions = list(
                "positions",
                one.switches().entrySet().stream()
                        .map(e -> new SwitchPosition(plan.thing(e.getKey()), String.join("/", e.getValue())))
                        .toList());
        List<Condition> conditions = one.conditions();
        if (conditions == null) {
            return IntentText.SWITCHES.with(positions);
        }
        return one.switches().isEmpty()
                ? times(conditions)
                : IntentText.SWITCHES_AND_TIMES.with(positions, arg("times", times(conditions)));
    }
}
