package loomwright.operation;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import loomwright.answer.Answer;
import loomwright.answer.Basis;
import loomwright.answer.InputError;
import loomwright.answer.Progress;
import loomwright.answer.RejectedInput;
import loomwright.circuit.Battery;
import loomwright.circuit.FilamentLamp;
import loomwright.circuit.Plan;
import loomwright.circuit.PlanCautions;
import loomwright.circuit.PlanCheck;
import loomwright.circuit.Relay;
import loomwright.circuit.ResolvedSupply;
import loomwright.circuit.Solenoid;
import loomwright.message.Unconverted;
import loomwright.network.Lamp;
import loomwright.network.NetworkLimits;
import loomwright.operation.PlanReadings.StepFinding;

/** The readings of a plan in every step, with how they came about. */
public final class PlanAnswer {
    /** The finding of a step that is made only of a consumer that is meant to be live. */
    private static final String OVERLOADED = "overloaded";

    private PlanAnswer() {}

    /**
     * Solves a plan that a person handed in.
     *
     * @throws RejectedInput with all faults of the plan, or of its conductor sizes
     * @throws loomwright.network.NoConvergence if a network could not be solved within the limits
     */
    public static Answer<PlanReadings> of(Plan plan, NetworkLimits limits) {
        return of(plan, limits, Progress.UNWATCHED);
    }

    /** As {@link #of(Plan, NetworkLimits)}; what {@code progress} throws ends it. */
    public static Answer<PlanReadings> of(Plan given, NetworkLimits limits, Progress progress) {
        return of(given, SolutionOptions.USUAL, limits, progress);
    }

    /** The same with options: after moves, the step they end in alone. */
    public static Answer<PlanReadings> of(
            Plan given, SolutionOptions options, NetworkLimits limits, Progress progress) {
        Plan plan = requireSound(given);
        PlanSolver solver = new PlanSolver(limits, progress);
        List<SolvedStep> steps = options.after().isEmpty()
                ? solver.solve(plan)
                : List.of(MovedPlan.follow(plan, options.moves(), solver));
        PlanReadings readings = Reader.read(plan, steps);
        return new Answer<>(
                readings,
                Unconverted.lines(working(plan, steps)),
                basis(plan),
                IntentAssumptions.of(given, id -> findings(readings, id)),
                PlanCautions.of(plan));
    }

    private static List<String> findings(PlanReadings readings, String id) {
        return readings.steps().stream()
                        .flatMap(step -> step.findings().stream())
                        .anyMatch(finding -> finding.kind() == StepFinding.Kind.OVERLOADED
                                && finding.ids().contains(id))
                ? List.of(OVERLOADED)
                : List.of();
    }

    /**
     * Refuses a plan that makes no sense as a circuit.
     *
     * @return the plan with nothing left unsaid about when its consumers are meant to be live
     * @throws RejectedInput with all its faults
     */
    public static Plan requireSound(Plan plan) {
        List<InputError> faults = PlanCheck.check(plan);
        if (!faults.isEmpty()) {
            throw new RejectedInput(faults);
        }
        return UsualIntent.complete(plan);
    }

    private static List<String> working(Plan plan, List<SolvedStep> steps) {
        List<String> working = new ArrayList<>();
        working.add("Each wire is a resistance R = ohm per metre x length x (1 + 0.00393 (T - 20)) plus its joints;"
                + " terminals joined by negligible resistance are one node; the chassis is 0 V.");
        working.add("The steps are solved in the order they happen, so that a relay or solenoid keeps the state it had"
                + " until its voltage passes the limit for the other.");
        for (SolvedStep solved : steps) {
            ResolvedSupply supply = plan.supply(solved.step().condition());
            StringBuilder line = new StringBuilder(solved.step().description())
                    .append(": ")
                    .append(FourDigits.of(supply.emfV()))
                    .append(" V behind ")
                    .append(FourDigits.of(supply.internalResistanceOhm()))
                    .append(" ohm");
            if (solved.solved()) {
                for (Battery battery : plan.listParts(Battery.class)) {
                    double shownV = solved.acrossV(battery.terminal(Battery.PLUS), battery.terminal(Battery.MINUS));
                    line.append("; ")
                            .append(battery.id())
                            .append(" shows ")
                            .append(FourDigits.of(shownV))
                            .append(" V");
                }
                line.append("; check: currents at the nodes sum to ")
                        .append(shareInWords(solved.kirchhoffResidual()))
                        .append(" of the largest, powers to ")
                        .append(shareInWords(solved.powerResidual()));
            } else {
                line.append("; no solution");
            }
            working.add(line.toString());
        }
        return working;
    }

    /** What is left of a sum that should be nothing. Below a millionth of a millionth it is rounding. */
    private static String shareInWords(double share) {
        return share < 1e-12 ? "less than 1e-12" : String.format(Locale.ROOT, "%.1e", share);
    }

    /** Where the rules come from that a plan's figures rest on. */
    public static List<Basis> basis(Plan plan) {
        List<Basis> basis = new ArrayList<>();
        basis.add(Basis.computed("node voltages and currents", "Kirchhoff's laws and Ohm's law"));
        basis.add(Basis.fromMemory(
                "0.00393 per K of copper", "IEC 60028, International standard of resistance for copper"));
        if (!plan.listParts(FilamentLamp.class).isEmpty()) {
            basis.add(Basis.commonPractice("current of a filament lamp as its voltage to the power " + Lamp.EXPONENT));
        }
        if (!plan.listParts(Relay.class).isEmpty()) {
            basis.add(Basis.verified(
                    "a relay without figures of its own pulls in from 8 V and lets go below 1.5 V at 12 V",
                    "makers' data sheets for plug-in relays of 85 ohm in the pin layout of ISO 7588"));
        }
        if (!plan.listParts(Solenoid.class).isEmpty()) {
            basis.add(Basis.commonPractice(
                    "a solenoid without figures of its own pulls in from 8 V and lets go below 3 V at 12 V; its two"
                            + " windings have the same number of turns"));
        }
        basis.add(Basis.commonPractice("the voltages at which other loads count as working or dead"));
        return basis;
    }
}
