package loomwright.operation;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Supplier;
import loomwright.circuit.Condition;
import loomwright.circuit.Consumer;
import loomwright.circuit.Generator;
import loomwright.circuit.LiveAlternative;
import loomwright.circuit.Plan;
import loomwright.circuit.Switch;

/**
 * What should be live: what the plan says, or {@link UsualIntent} where it leaves that unsaid.
 *
 * <p>These questions are cheap for a plan that {@link UsualIntent#complete} has been asked for, which every answer does
 * before it begins, so that a remedy or a fault put into the plan does not change what is meant; otherwise the usual is
 * worked out at each of them.
 */
public final class Intent {
    private Intent() {}

    /**
     * Whether a consumer should be live in a step, with the switches as they stand in the plan. A charge lamp that is
     * to be lit with the key on is lit while the engine runs down after the key was turned off as well, and while it runs too slowly for
     * any machine to charge, which is normal.
     */
    public static boolean meantLive(Consumer consumer, Plan plan, Step step) {
        return meantLive(consumer, plan, step, () -> UsualIntent.chargeLamps(plan));
    }

    /** The same, where somebody knows the plan's charge lamps, which are a search. */
    static boolean meantLive(Consumer consumer, Plan plan, Step step, Supplier<Set<String>> chargeLamps) {
        Consumer said = said(consumer, plan);
        if (isLitAsUsual(said, plan, step, chargeLamps)) {
            return true;
        }
        Condition condition = step.condition();
        if (!conditionsOf(said).contains(condition)) {
            return false;
        }
        List<LiveAlternative> alternatives = said.meantLiveWhen();
        for (LiveAlternative one : alternatives) {
            if (one.countsIn(condition) && agrees(one, plan, condition)) {
                return true;
            }
        }
        return alternatives.isEmpty();
    }

    /** The conditions in which a consumer should be live at all. */
    public static List<Condition> conditions(Consumer consumer, Plan plan) {
        return conditionsOf(said(consumer, plan));
    }

    /**
     * The settings of free switches in which a consumer should be live in a step: switch id to the positions of which one
     * must be chosen, all switches of a map together.
     *
     * @param chargeLamps those of the plan, see {@link UsualIntent#chargeLamps}
     * @return any one of them will do; empty for never, a map without switches for always
     */
    public static List<Map<String, List<String>>> settings(
            Consumer consumer, Plan plan, Step step, Set<String> chargeLamps) {
        Consumer said = said(consumer, plan);
        if (isLitAsUsual(said, plan, step, () -> chargeLamps)) {
            return List.of(Map.of());
        }
        Condition condition = step.condition();
        if (!conditionsOf(said).contains(condition)) {
            return List.of();
        } else if (said.meantLiveWhen().isEmpty()) {
            return List.of(Map.of());
        }
        List<Map<String, List<String>>> settings = new ArrayList<>();
        for (LiveAlternative one : said.meantLiveWhen()) {
            Map<String, List<String>> free = new LinkedHashMap<>();
            boolean possible = one.countsIn(condition);
            for (Map.Entry<String, List<String>> entry : one.switches().entrySet()) {
                Switch chosen = find(plan, entry.getKey());
                if (chosen.free()) {
                    free.put(entry.getKey(), entry.getValue());
                } else {
                    possible &= entry.getValue().contains(chosen.in(condition).name());
                }
            }
            if (possible) {
                settings.add(free);
            }
        }
        return settings;
    }

    private static Consumer said(Consumer consumer, Plan plan) {
        if (consumer.meantLive() != null) {
            return consumer;
        }
        return (Consumer) UsualIntent.complete(plan).findPart(consumer.id()).orElseThrow();
    }

    private static List<Condition> conditionsOf(Consumer said) {
        List<Condition> conditions = said.meantLive();
        if (conditions == null) {
            throw new IllegalStateException(said.id() + " is of a plan that leaves its times unsaid");
        }
        return conditions;
    }

    private static boolean isLitAsUsual(Consumer said, Plan plan, Step step, Supplier<Set<String>> chargeLamps) {
        return (step == Step.OFF_ENGINE_TURNING || step == Step.RUNNING)
                && conditionsOf(said).contains(Condition.RUN)
                && chargeLamps.get().contains(said.id())
                && (step == Step.OFF_ENGINE_TURNING || turnsTooSlowly(plan));
    }

    private static boolean turnsTooSlowly(Plan plan) {
        List<Generator> machines = plan.listParts(Generator.class);
        return !machines.isEmpty() && machines.stream().noneMatch(OutputOverSpeed::charges);
    }

    private static boolean agrees(LiveAlternative one, Plan plan, Condition condition) {
        for (Map.Entry<String, List<String>> entry : one.switches().entrySet()) {
            Switch chosen = find(plan, entry.getKey());
            if (!entry.getValue().contains(chosen.in(condition).name())) {
                return false;
            }
        }
        return true;
    }

    private static Switch find(Plan plan, String switchId) {
        // The plan's own check has made sure that every switch named there exists.
        return (Switch) plan.findPart(switchId).orElseThrow();
    }
}
