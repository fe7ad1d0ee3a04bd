package loomwright.operation;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import loomwright.circuit.Coil;
import loomwright.circuit.Condition;
import loomwright.circuit.Consumer;
import loomwright.circuit.Generator;
import loomwright.circuit.LightingConsumer;
import loomwright.circuit.LiveAlternative;
import loomwright.circuit.Load;
import loomwright.circuit.Motor;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.Relay;
import loomwright.circuit.Solenoid;
import loomwright.circuit.Switch;
import loomwright.circuit.TerminalRef;
import loomwright.message.MessageCode;

/**
 * When a consumer should be live whose plan leaves that unsaid: the usual of its kind, and of the switches that feed it.
 * docs/plans.md has the table (common practice, no source).
 */
public final class UsualIntent {

    /** By which rule a consumer has its times. */
    public enum Rule implements MessageCode {
        /** A starter solenoid, or a motor behind the contact of one. */
        STARTER,
        /** The primary of an ignition coil. */
        IGNITION,
        /** What leads to an alternator's D+ or a dynamo's D, and with its other end not to earth. */
        CHARGE_LAMP,
        /** Anything else behind a switch that the operator is free to set. */
        SWITCHED,
        /** Anything else that the key feeds, or the battery. */
        FED,
        /** Anything else without a forward way from the live pole. */
        UNFED;

        /** The conditions that its kind allows. */
        public List<Condition> conditions() {
            return switch (this) {
                case STARTER -> List.of(Condition.CRANK);
                case IGNITION -> List.of(Condition.RUN, Condition.CRANK, Condition.RUNNING);
                case CHARGE_LAMP -> List.of(Condition.RUN, Condition.CRANK);
                case SWITCHED, FED -> List.of(Condition.values());
                case UNFED -> List.of();
            };
        }

        /** Whether the kind alone says when; a forward way then only adds what its free switches must be. */
        public boolean byKind() {
            return this == STARTER || this == IGNITION || this == CHARGE_LAMP;
        }
    }

    /**
     * What counts for one consumer.
     *
     * @param conditions in which it should be live
     * @param when any one of these; empty for no restriction
     */
    public record Usual(Consumer consumer, Rule rule, List<Condition> conditions, List<LiveAlternative> when) {}

    private final Plan plan;
    private final Map<Condition, FeedWays> ways = new EnumMap<>(Condition.class);
    private final Set<TerminalRef> behindSolenoids;
    private final Set<String> chargeLamps;

    private UsualIntent(Plan faulty) {
        // What should be live does not follow from a contact that is stuck.
        Plan plan = sound(faulty);
        this.plan = plan;
        for (Condition condition : Condition.values()) {
            ways.put(condition, new FeedWays(plan, condition));
        }
        behindSolenoids = new HashSet<>();
        for (Solenoid solenoid : plan.listParts(Solenoid.class)) {
            behindSolenoids.addAll(Joined.with(plan, List.of(solenoid.terminal(Solenoid.MOTOR))));
        }
        chargeLamps = chargeLamps(plan);
    }

    private static Plan sound(Plan plan) {
        Plan sound = plan;
        for (Switch chosen : plan.listParts(Switch.class)) {
            if (chosen.contactFaults() != null) {
                sound = sound.withPart(chosen.sound());
            }
        }
        return sound;
    }

    /** What counts for each consumer whose times the plan leaves unsaid, in the order of the plan. */
    public static List<Usual> of(Plan plan) {
        List<Consumer> unsaid = plan.listParts(Consumer.class).stream()
                .filter(c -> c.meantLive() == null)
                .toList();
        if (unsaid.isEmpty()) {
            return List.of();
        }
        UsualIntent intent = new UsualIntent(plan);
        return unsaid.stream().map(intent::usual).toList();
    }

    /** The same plan with nothing about this left unsaid; the very same if nothing was. */
    public static Plan complete(Plan plan) {
        return complete(plan, of(plan));
    }

    /** As {@link #complete(Plan)}, with what was found before. */
    static Plan complete(Plan plan, List<Usual> usual) {
        if (usual.isEmpty()) {
            return plan;
        }
        Map<String, Part> said = new LinkedHashMap<>();
        for (Usual one : usual) {
            said.put(one.consumer().id(), one.consumer().withMeantLive(one.conditions(), one.when()));
        }
        return plan.with(
                plan.parts().stream()
                        .map(part -> said.getOrDefault(part.id(), part))
                        .toList(),
                plan.wires());
    }

    /**
     * The lamps, loads and relay windings that stand between the live side and an alternator's D+, and so have current while the
     * alternator has none to give, by id.
     */
    public static Set<String> chargeLamps(Plan plan) {
        List<TerminalRef> exciters = plan.listParts(Generator.class).stream()
                .map(generator -> ((Part) generator).terminal(generator.lampTerminal()))
                .toList();
        Set<TerminalRef> joined = exciters.isEmpty() ? Set.of() : Joined.with(plan, exciters);
        Set<String> lamps = new HashSet<>();
        for (Part part : plan.parts()) {
            if (part instanceof LightingConsumer || part instanceof Load || part instanceof Relay) {
                Consumer consumer = (Consumer) part;
                TerminalRef feed = consumer.terminal(consumer.feedTerminal());
                TerminalRef back = consumer.terminal(consumer.returnTerminal());
                if (joined.contains(feed) != joined.contains(back)
                        && !Joined.isEarthed(plan, joined.contains(back) ? feed : back)) {
                    lamps.add(consumer.id());
                }
            }
        }
        return lamps;
    }

    private Usual usual(Consumer consumer) {
        Map<Condition, PositionFormula> formulas = formulas(consumer);
        Rule rule = rule(consumer, formulas);
        if (rule.byKind()) {
            formulas = ofKind(rule, formulas);
        }
        List<Condition> conditions = new ArrayList<>();
        Map<Map<String, List<String>>, List<Condition>> alternatives = new LinkedHashMap<>();
        formulas.forEach((condition, formula) -> {
            if (!formula.isNever()) {
                conditions.add(condition);
                formula.positions()
                        .forEach(positions -> alternatives
                                .computeIfAbsent(positions, key -> new ArrayList<>())
                                .add(condition));
            }
        });
        List<LiveAlternative> when = new ArrayList<>();
        alternatives.forEach((positions, counting) ->
                when.add(new LiveAlternative(counting.equals(conditions) ? null : counting, positions)));
        boolean unrestricted = when.size() == 1 && when.get(0).switches().isEmpty();
        return stated(consumer, new Usual(consumer, rule, conditions, unrestricted ? List.of() : when));
    }

    /** Where the plan says by which switches, but not in which conditions, its switches count. */
    private static Usual stated(Consumer consumer, Usual usual) {
        List<LiveAlternative> when = consumer.meantLiveWhen();
        if (when.isEmpty()) {
            return usual;
        }
        Set<Condition> conditions = EnumSet.noneOf(Condition.class);
        for (LiveAlternative one : when) {
            List<Condition> own = one.conditions();
            conditions.addAll(own == null ? usual.conditions() : own);
        }
        return new Usual(
                consumer,
                usual.rule(),
                List.copyOf(conditions.isEmpty() ? EnumSet.allOf(Condition.class) : conditions),
                when);
    }

    private Rule rule(Consumer consumer, Map<Condition, PositionFormula> formulas) {
        if (consumer instanceof Solenoid
                || (consumer instanceof Motor && behindSolenoids.contains(consumer.terminal(Motor.FEED)))) {
            return Rule.STARTER;
        } else if (consumer instanceof Coil) {
            return Rule.IGNITION;
        } else if (chargeLamps.contains(consumer.id())) {
            return Rule.CHARGE_LAMP;
        } else if (formulas.values().stream().allMatch(PositionFormula::isNever)) {
            return Rule.UNFED;
        }
        boolean free =
                formulas.values().stream().flatMap(f -> f.positions().stream()).anyMatch(p -> !p.isEmpty());
        return free ? Rule.SWITCHED : Rule.FED;
    }

    /** In the conditions of its kind, in which a missing way is a fault and says nothing. */
    private static Map<Condition, PositionFormula> ofKind(Rule rule, Map<Condition, PositionFormula> formulas) {
        PositionFormula any = PositionFormula.NEVER;
        for (Condition condition : rule.conditions()) {
            any = any.or(get(formulas, condition));
        }
        PositionFormula otherwise = any.isNever() ? PositionFormula.ALWAYS : any;
        Map<Condition, PositionFormula> ofKind = new EnumMap<>(Condition.class);
        for (Condition condition : rule.conditions()) {
            PositionFormula here = get(formulas, condition);
            ofKind.put(condition, here.isNever() ? otherwise : here);
        }
        return ofKind;
    }

    /** In each condition while it has both ways; while it is fed, if it never has a way back: that is a fault. */
    private Map<Condition, PositionFormula> formulas(Consumer consumer) {
        Map<Condition, PositionFormula> feed = fedInSeries(consumer, new HashSet<>());
        TerminalRef back = consumer.terminal(consumer.returnTerminal());
        if (consumer instanceof Coil || isLost(back)) {
            return feed;
        }
        Map<Condition, PositionFormula> both = new EnumMap<>(Condition.class);
        feed.forEach(
                (condition, fed) -> both.put(condition, fed.and(get(condition).returned(back))));
        return both;
    }

    private Map<Condition, PositionFormula> fed(Consumer consumer) {
        Map<Condition, PositionFormula> fed = new EnumMap<>(Condition.class);
        ways.forEach((condition, own) -> fed.put(condition, own.fed(consumer.terminal(consumer.feedTerminal()))));
        return fed;
    }

    /** Whether no way leads back to the earthed pole, whatever the condition and the switches. */
    private boolean isLost(TerminalRef back) {
        return ways.values().stream().allMatch(own -> own.returned(back).isNever());
    }

    /** While it is fed, by itself or through those ahead of it in series, which have no way back of their own. */
    private Map<Condition, PositionFormula> fedInSeries(Consumer behind, Set<String> known) {
        Map<Condition, PositionFormula> own = fed(behind);
        if (!known.add(behind.id()) || isEver(own)) {
            return own;
        }
        Set<TerminalRef> joined = Joined.with(plan, List.of(behind.terminal(behind.feedTerminal())));
        return plan.listParts(Consumer.class).stream()
                .filter(ahead -> joined.contains(ahead.terminal(ahead.returnTerminal())))
                .filter(ahead -> isLost(ahead.terminal(ahead.returnTerminal())))
                .map(ahead -> fedInSeries(ahead, known))
                .filter(UsualIntent::isEver)
                .findFirst()
                .orElse(own);
    }

    private static boolean isEver(Map<Condition, PositionFormula> formulas) {
        return formulas.values().stream().anyMatch(formula -> !formula.isNever());
    }

    private FeedWays get(Condition condition) {
        return Objects.requireNonNull(ways.get(condition));
    }

    private static PositionFormula get(Map<Condition, PositionFormula> formulas, Condition condition) {
        return Objects.requireNonNull(formulas.get(condition));
    }
}
