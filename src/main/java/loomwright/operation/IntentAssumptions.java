package loomwright.operation;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import loomwright.answer.Assumption;
import loomwright.circuit.Condition;
import loomwright.circuit.Consumer;
import loomwright.circuit.LiveAlternative;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.message.Unconverted;
import loomwright.operation.UsualIntent.Rule;
import loomwright.operation.UsualIntent.Usual;

/** What {@link UsualIntent} filled in, told as assumptions; consumers that are alike in this are told together. */
public final class IntentAssumptions {
    private IntentAssumptions() {}

    /** What consumers have in common that are told together. */
    private record Group(Rule rule, List<Condition> conditions, List<LiveAlternative> when) {}

    /**
     * The assumptions of a plan as it was handed in, in its order.
     *
     * @param findings the codes of the findings of this answer about a consumer, by its id, that ask when it is meant to be
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
                Unconverted.message(
                        code(group.rule()),
                        consumers.stream().map(Part::displayName).collect(Collectors.joining(", ")) + ": "
                                + text(plan, group)),
                consumers.stream()
                        .flatMap(c -> findings.apply(c.id()).stream())
                        .distinct()
                        .toList())));
        return assumptions;
    }

    /** The code under which the assumptions of a rule are told. */
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

    private static String text(Plan plan, Group group) {
        String times = times(group.conditions());
        return switch (group.rule()) {
            case STARTER -> "assumed to be live, as usual for a starter, " + times + when(plan, group) + ".";
            case IGNITION -> "assumed to be live, as usual for an ignition coil, " + times + when(plan, group) + ".";
            case CHARGE_LAMP -> "assumed to be live, as usual for a charge lamp, " + times + when(plan, group) + ".";
            case SWITCHED -> "assumed to be live " + times + when(plan, group) + ". Its switches feed it then.";
            case FED -> "assumed to be live " + times + ". It is fed then.";
            case UNFED -> "assumed never to be live. No feed leads to it from the battery.";
        };
    }

    private static String times(List<Condition> conditions) {
        return conditions.size() == Condition.values().length
                ? "at any time"
                : Stream.of(Step.values())
                        .filter(step -> !step.passing() && conditions.contains(step.condition()))
                        .map(Step::description)
                        .collect(Collectors.joining("; ", "at these times: ", ""));
    }

    private static String when(Plan plan, Group group) {
        return group.when().isEmpty()
                ? ""
                : ", when "
                        + group.when().stream()
                                .map(one -> alternative(plan, one))
                                .collect(Collectors.joining(", or "));
    }

    private static String alternative(Plan plan, LiveAlternative one) {
        String switches = one.switches().entrySet().stream()
                .map(e -> plan.findPart(e.getKey()).orElseThrow().displayName() + " is at "
                        + String.join(" or ", e.getValue()))
                .collect(Collectors.joining(" and "));
        List<Condition> conditions = one.conditions();
        String times = conditions == null ? "" : times(conditions);
        return Stream.of(switches, times).filter(s -> !s.isEmpty()).collect(Collectors.joining(", "));
    }
}
