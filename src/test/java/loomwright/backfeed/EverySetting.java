package loomwright.backfeed;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Consumer;
import loomwright.circuit.ContactBreaker;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.Switch;
import loomwright.network.NetworkLimits;
import loomwright.operation.FeedStrength;
import loomwright.operation.Intent;
import loomwright.operation.PlanSolver;
import loomwright.operation.SolvedStep;
import loomwright.operation.Step;

/**
 * The plain way to everything that is fed unasked: each combination of free switches and contact points set in a copy of the
 * plan, each copy solved step by step, each load of each step looked at. It shares nothing with the search but the solver.
 */
public final class EverySetting {
    private EverySetting() {}

    /**
     * A load fed unasked at its strongest.
     *
     * @param fewestChanges switches and contacts that must be moved for it to be fed at all
     */
    public record Fed(FeedStrength strength, double effectiveV, int fewestChanges) {
        static Fed stronger(Fed one, Fed other) {
            Fed strongest = BY_STRENGTH.compare(one, other) <= 0 ? one : other;
            return new Fed(strongest.strength, strongest.effectiveV, Math.min(one.fewestChanges, other.fewestChanges));
        }
    }

    private static final Comparator<Fed> BY_STRENGTH =
            Comparator.comparing(Fed::strength).thenComparing(Fed::effectiveV, Comparator.reverseOrder());

    /** By load and step. */
    public static Map<String, Fed> fedUnasked(Plan plan) {
        Map<String, Fed> fed = new TreeMap<>();
        forEach(plan, (set, changes) -> {
            for (SolvedStep solved : new PlanSolver(NetworkLimits.defaults()).solve(set)) {
                for (var load : set.listParts(loomwright.circuit.Consumer.class)) {
                    if (solved.solved()
                            && !Intent.meantLive(load, set, solved.step())
                            && solved.activity(load) != FeedStrength.DEAD) {
                        fed.merge(
                                key(load.id(), solved.step()),
                                new Fed(solved.activity(load), solved.effectiveV(load), changes),
                                Fed::stronger);
                    }
                }
            }
        });
        return fed;
    }

    public static String key(String load, Step step) {
        return load + " " + step;
    }

    /** Each solved step of each setting. */
    static void forEachStep(Plan plan, Consumer<SolvedStep> look) {
        forEach(
                plan,
                (set, changes) ->
                        new PlanSolver(NetworkLimits.defaults()).solve(set).forEach(look));
    }

    @FunctionalInterface
    private interface Setting {
        void look(Plan set, int changes);
    }

    private static void forEach(Plan plan, Setting setting) {
        Map<Plan, Integer> all = new LinkedHashMap<>();
        all.put(plan, 0);
        for (Part part : plan.parts()) {
            List<Part> others = others(part);
            Map<Plan, Integer> more = new LinkedHashMap<>(all);
            all.forEach((set, changes) -> others.forEach(other -> more.put(set.withPart(other), changes + 1)));
            all = more;
        }
        all.forEach(setting::look);
    }

    private static List<Part> others(Part part) {
        List<Part> others = new ArrayList<>();
        if (part instanceof Switch chosen && chosen.free()) {
            String drawn = chosen.in(loomwright.circuit.Condition.OFF).name();
            chosen.positions().stream()
                    .map(Switch.Position::name)
                    .filter(name -> !name.equals(drawn))
                    .forEach(name -> others.add(chosen.withPosition(name)));
        } else if (part instanceof ContactBreaker points) {
            others.add(points.whenStopped(!points.closedWhenStopped()));
        }
        return others;
    }
}
