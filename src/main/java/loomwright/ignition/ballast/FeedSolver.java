package loomwright.ignition.ballast;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import loomwright.circuit.Ballast;
import loomwright.circuit.Battery;
import loomwright.circuit.Coil;
import loomwright.circuit.Condition;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.TerminalRef;
import loomwright.ignition.ballast.FeedState.ElementState;
import loomwright.ignition.ballast.FeedState.Reading;
import loomwright.network.NetworkLimits;
import loomwright.operation.Branch;
import loomwright.operation.PlanSolver;
import loomwright.operation.SolvedStep;

/** Solves the plan of a feed and reads the states off it; the only place here where currents come from. */
final class FeedSolver {
    /** Less than a meter of the trade shows. */
    private static final double NOTHING_A = 1e-3;

    private static final double ROUNDING = 1e-12;

    private final IgnitionFeed feed;
    private final Map<Condition, SolvedStep> closed;
    private final Map<Condition, SolvedStep> open;

    private FeedSolver(IgnitionFeed feed, FeedPlan.Bypass bypass) {
        this.feed = feed;
        this.closed = solve(FeedPlan.of(feed, bypass, true));
        this.open = solve(FeedPlan.of(feed, bypass, false));
    }

    /** The states of a feed by condition: key on, cranking, running. */
    static Map<Condition, FeedState> states(IgnitionFeed feed, boolean bypassed) {
        FeedSolver solver = new FeedSolver(feed, bypassed ? FeedPlan.Bypass.CLOSED : FeedPlan.Bypass.OPEN);
        Map<Condition, FeedState> states = new LinkedHashMap<>();
        for (Condition condition : List.of(Condition.RUN, Condition.CRANK, Condition.RUNNING)) {
            states.put(condition, solver.state(condition, bypassed));
        }
        return states;
    }

    /** Current through the coil with the contacts closed, A. */
    static double coilA(IgnitionFeed feed, Condition condition, boolean bypassed) {
        return current(in(feed, condition, bypassed), FeedPlan.COIL);
    }

    /** Heat in ballast and coil with the contacts closed. */
    record Heat(double ballastW, double coilW) {}

    static Heat heat(IgnitionFeed feed, Condition condition, boolean bypassed) {
        SolvedStep step = in(feed, condition, bypassed);
        return new Heat(power(step, FeedPlan.BALLAST), power(step, FeedPlan.COIL));
    }

    private static SolvedStep in(IgnitionFeed feed, Condition condition, boolean bypassed) {
        FeedPlan.Bypass bypass = bypassed ? FeedPlan.Bypass.CLOSED : FeedPlan.Bypass.OPEN;
        return get(solve(FeedPlan.of(feed, bypass, true)), condition);
    }

    private static Map<Condition, SolvedStep> solve(Plan plan) {
        Map<Condition, SolvedStep> steps = new LinkedHashMap<>();
        for (SolvedStep step : new PlanSolver(NetworkLimits.defaults()).solve(plan)) {
            steps.putIfAbsent(step.step().condition(), step);
        }
        return steps;
    }

    private FeedState state(Condition condition, boolean bypassed) {
        SolvedStep step = get(closed, condition);
        double share = feed.dwellFraction();
        double currentA = current(step, FeedPlan.COIL);
        double coilV = step.acrossV((Coil) part(step, FeedPlan.COIL));
        double coilW = power(step, FeedPlan.COIL);
        double ballastW = power(step, FeedPlan.BALLAST);
        double switchW = power(step, FeedPlan.switchId(feed));
        double supplyW = -power(step, FeedPlan.BATTERY);
        FeedState.Verdict verdict = CoilVoltageVerdicts.of(feed.windowIn(condition), coilV);
        return new FeedState(
                new FeedState.Electric(
                        currentA,
                        coilV,
                        share * currentA,
                        share * coilV,
                        current(step, FeedPlan.FEED_WIRE),
                        feed.ballast().bypassTap() == null ? 0 : current(step, FeedPlan.BYPASS_WIRE)),
                elements(step),
                new FeedState.HeatShares(
                        coilW, share * coilW, ballastW, switchW, supplyW - coilW - ballastW - switchW, supplyW),
                verdict,
                CoilVoltageVerdicts.message(feed, verdict, condition, bypassed, coilV),
                readings(step, get(open, condition)));
    }

    private static SolvedStep get(Map<Condition, SolvedStep> steps, Condition condition) {
        SolvedStep step = steps.get(condition);
        if (step == null) {
            throw new IllegalStateException("not solved: " + condition);
        }
        return step;
    }

    private List<ElementState> elements(SolvedStep step) {
        List<ElementState> elements = new ArrayList<>();
        for (int i = 0; i < step.branches().size(); i++) {
            Branch branch = step.branches().get(i);
            if (branch.id().equals(FeedPlan.BALLAST)) {
                double currentA = step.currentA(i);
                elements.add(new ElementState(
                        elements.size() + 1,
                        feed.elementOhm(elements.size()),
                        currentA,
                        step.acrossV(branch.fromNode(), branch.toNode()),
                        step.powerW(i),
                        feed.dwellFraction() * step.powerW(i),
                        Math.abs(currentA) < NOTHING_A));
            }
        }
        return elements;
    }

    private List<Reading> readings(SolvedStep closedStep, SolvedStep openStep) {
        List<TerminalRef> terminals = new ArrayList<>();
        terminals.add(part(closedStep, FeedPlan.BATTERY).terminal(Battery.PLUS));
        closedStep
                .plan()
                .findPart(FeedPlan.BALLAST)
                .map(Ballast.class::cast)
                .ifPresent(ballast -> ballast.terminals().forEach(name -> terminals.add(ballast.terminal(name))));
        Coil coil = (Coil) part(closedStep, FeedPlan.COIL);
        coil.terminals().forEach(name -> terminals.add(coil.terminal(name)));
        terminals.add(part(closedStep, FeedPlan.switchId(feed)).terminal("31"));
        return terminals.stream()
                .map(terminal -> new Reading(
                        terminal.toString(), volts(closedStep, terminal), openV(closedStep, openStep, terminal)))
                .toList();
    }

    /** With the primary open the return side of the switch lies at the battery's minus, and nothing flows. */
    private double openV(SolvedStep closedStep, SolvedStep openStep, TerminalRef terminal) {
        boolean returnSide =
                terminal.equals(part(closedStep, FeedPlan.switchId(feed)).terminal("31"));
        return returnSide ? 0.0 : volts(openStep, terminal);
    }

    private static double volts(SolvedStep step, TerminalRef terminal) {
        return clean(step.acrossV(terminal, part(step, FeedPlan.BATTERY).terminal(Battery.MINUS)));
    }

    private static Part part(SolvedStep step, String id) {
        return step.plan().findPart(id).orElseThrow();
    }

    /** Current through the first branch of a part or wire, which is its only one where this is asked. */
    private static double current(SolvedStep step, String id) {
        for (int i = 0; i < step.branches().size(); i++) {
            if (step.branches().get(i).id().equals(id)) {
                return clean(step.currentA(i));
            }
        }
        throw new IllegalArgumentException("nothing flows in " + id);
    }

    /** What is left of a zero after the arithmetic is none. */
    private static double clean(double figure) {
        return Math.abs(figure) < ROUNDING ? 0 : figure;
    }

    private static double power(SolvedStep step, String id) {
        double sum = 0;
        for (int i = 0; i < step.branches().size(); i++) {
            if (step.branches().get(i).id().equals(id)) {
                sum += step.powerW(i);
            }
        }
        return sum;
    }
}
