package loomwright.operation;

import static loomwright.message.Arg.arg;
import static loomwright.message.Arg.messages;

import java.util.ArrayList;
import java.util.List;
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
import loomwright.judgement.LampLaw;
import loomwright.message.Arg;
import loomwright.message.Message;
import loomwright.network.NetworkLimits;

/** The readings of a plan in every step, with how they came about. */
public final class PlanAnswer {
    /** The finding of a step that is made only of a consumer that should be live. */
    private static final String OVERLOADED = "overloaded";

    /** Sums of currents and of powers that leave less than this of the largest are zero to every digit that is shown. */
    private static final double CLOSED = 1e-6;

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

    /** The same with options: the steps asked for; after moves the one they end in alone. */
    public static Answer<PlanReadings> of(
            Plan given, SolutionOptions options, NetworkLimits limits, Progress progress) {
        Plan plan = requireSound(given);
        PlanSolver solver = new PlanSolver(limits, progress);
        List<SolvedStep> steps = options.after().isEmpty()
                ? solver.solve(plan, options.lastStep()).stream()
                        .filter(solved -> options.step().contains(solved.step()))
                        .toList()
                : List.of(MovedPlan.follow(plan, options.moves(), solver));
        PlanReadings readings = Reader.read(plan, steps, solver);
        return new Answer<>(
                readings,
                working(plan, steps),
                basis(plan),
                ModelAssumptions.withLowBatteries(
                        ModelAssumptions.withWarming(IntentAssumptions.of(given, id -> findings(readings, id)), given),
                        given),
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
     * @return the plan with nothing left unsaid about when its consumers should be live
     * @throws RejectedInput with all its faults
     */
    public static Plan requireSound(Plan plan) {
        List<InputError> faults = PlanCheck.check(plan);
        if (!faults.isEmpty()) {
            throw new RejectedInput(faults);
        }
        return UsualIntent.complete(plan);
    }

    private static List<Message> working(Plan plan, List<SolvedStep> steps) {
        List<Message> working = new ArrayList<>();
        working.add(SolutionWorking.WIRES.with());
        working.add(SolutionWorking.ORDER.with());
        for (SolvedStep solved : steps) {
            ResolvedSupply supply = plan.batterySupply(solved.step().condition());
            Arg step = arg("step", solved.step());
            Arg emf = arg("emfV", supply.emfV());
            Arg internal = arg("internalResistanceOhm", supply.internalResistanceOhm());
            working.add(
                    solved.solved()
                            ? SolutionWorking.STEP.with(
                                    step,
                                    emf,
                                    internal,
                                    messages("batteries", batteries(plan, solved)),
                                    arg("kirchhoffResidualRatio", solved.kirchhoffResidual()),
                                    arg("powerResidualRatio", solved.powerResidual()),
                                    arg("closed", isClosed(solved) ? 1 : 0))
                            : SolutionWorking.STEP_WITHOUT_SOLUTION.with(step, emf, internal));
        }
        return working;
    }

    private static List<Message> batteries(Plan plan, SolvedStep solved) {
        return plan.listParts(Battery.class).stream()
                .map(battery -> SolutionWorking.BATTERY.with(
                        arg("battery", battery.thing()),
                        arg(
                                "terminalV",
                                solved.acrossV(battery.terminal(Battery.PLUS), battery.terminal(Battery.MINUS)))))
                .toList();
    }

    private static boolean isClosed(SolvedStep solved) {
        return solved.kirchhoffResidual() < CLOSED && solved.powerResidual() < CLOSED;
    }

    /** Where the rules come from that a plan's figures rest on. */
    public static List<Basis> basis(Plan plan) {
        List<Basis> basis = new ArrayList<>();
        basis.add(Basis.computed("node voltages and currents", "Kirchhoff's laws and Ohm's law"));
        basis.add(Basis.fromMemory(
                "0.00393 per K of copper", "IEC 60028, International standard of resistance for copper"));
        if (!plan.listParts(FilamentLamp.class).isEmpty()) {
            basis.add(LampLaw.CURRENT_BASIS);
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
