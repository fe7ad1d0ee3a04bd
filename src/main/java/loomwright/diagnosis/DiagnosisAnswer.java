package loomwright.diagnosis;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import loomwright.answer.Answer;
import loomwright.answer.Basis;
import loomwright.answer.Caution;
import loomwright.answer.InputError;
import loomwright.answer.Progress;
import loomwright.answer.RejectedInput;
import loomwright.circuit.PlanCautions;
import loomwright.circuit.fault.BadJoint;
import loomwright.circuit.fault.SingleFault;
import loomwright.circuit.fault.SingleFault.Kind;
import loomwright.circuit.fault.SingleFaults;
import loomwright.message.Unconverted;
import loomwright.network.NetworkLimits;
import loomwright.operation.IntentAssumptions;
import loomwright.operation.PlanAnswer;
import loomwright.operation.Quantity;

/** Names the faults that explain what was measured, and what to measure next. */
public final class DiagnosisAnswer {
    /** Faults that are told apart with the engine cranking or running, as the summary advises. */
    private static final Set<Kind> TOLD_BY_THE_ENGINE = EnumSet.of(Kind.BATTERY_WORN, Kind.NOT_CHARGING);

    private DiagnosisAnswer() {}

    /**
     * Tries the plan as drawn, every single fault, and pairs if no single one is enough. Cost: for each setting of the
     * switches in the readings one solution for each fault, {@value FaultSize#GRID} and more for each joint,
     * some thirty for a flat and for a worn battery.
     *
     * @throws RejectedInput with all faults of plan and readings, or OVER_LIMIT if there is too much to solve
     * @throws loomwright.answer.OutOfTime if it takes too long
     */
    public static Answer<DiagnosisReport> of(
            DiagnosisQuestion asked, DiagnosisLimits limits, NetworkLimits networkLimits, Progress progress) {
        DiagnosisQuestion question = asked.requireSound();
        checkSize(question, limits);
        Diagnosis found = new Diagnosis(question, limits, new Bench(question.plan(), limits, networkLimits, progress));
        DiagnosisReport report = new ReportWriter(found).write();
        return new Answer<>(
                report,
                Unconverted.lines(working(report)),
                basis(question),
                IntentAssumptions.of(asked.plan(), id -> List.of()),
                cautions(question, report));
    }

    /** What wears out within parts comes on top and does not count: it is one trial for a load, some tens for the battery. */
    private static void checkSize(DiagnosisQuestion question, DiagnosisLimits limits) {
        List<SingleFault> faults = SingleFaults.list(question.plan());
        long settings = question.readings().stream()
                .map(MeterReading::switches)
                .map(Map::copyOf)
                .distinct()
                .count();
        long joints = faults.stream().filter(BadJoint.class::isInstance).count();
        long solutions = settings * (faults.size() + (FaultSize.GRID - 1) * joints);
        if (solutions > limits.maxSolutions()) {
            throw new RejectedInput(new InputError(
                    InputError.Code.OVER_LIMIT,
                    "/plan/parts",
                    solutions + " solutions, loads and batteries not counted: " + faults.size() + " single faults, "
                            + joints
                            + " of them joints in " + FaultSize.GRID + " sizes, in " + settings
                            + " settings of the switches",
                    "a plan and readings that take at most " + limits.maxSolutions()
                            + " solutions; leave out the circuits that were not measured"));
        }
    }

    private static List<String> working(DiagnosisReport report) {
        List<String> working = new ArrayList<>();
        long deviating = report.readings().stream()
                .filter(DiagnosisReport.ReadingCheck::deviates)
                .count();
        working.add(deviating + " of " + report.readings().size()
                + " readings are further from the plan as drawn than meter, supply and parts account for.");
        working.add(report.tried().singleFaults() + " single faults tried; "
                + report.tried().notShown()
                + " of them would change none of the readings, so nothing is known of those.");
        working.add(
                report.tried().pairs() == 0
                        ? "Pairs of faults were not tried."
                        : report.tried().pairs()
                                + " pairs tried, made of single faults that explain some of the readings.");
        if (report.tried().withoutSolution() > 0) {
            working.add(report.tried().withoutSolution() + " trials have no solution and are left out.");
        }
        working.add("Deviation z = (measured - predicted)/u, u² = meter² + plan², plan: √2 x 2.9 % x V x (1 - V/E) for"
                + " volts, 2.9 % for ohms; the supply of each condition is fitted within its tolerance.");
        working.add(
                "Weight = odds of the faults beforehand x product of Student's t with 4 degrees of freedom of each z / u;"
                        + " for each fitted size less by the square root of the number of readings.");
        report.explanations()
                .forEach(e -> working.add(String.format(
                        Locale.ROOT,
                        "%d: %s%s probability %.3g, worst deviation %.2g u.",
                        e.rank(),
                        e.candidates().get(0).description(),
                        e.candidates().size() == 1
                                ? ""
                                : " Or one of " + (e.candidates().size() - 1) + " others alike:",
                        e.probability(),
                        e.worstDeviation())));
        return working;
    }

    private static List<Basis> basis(DiagnosisQuestion question) {
        List<Basis> basis = new ArrayList<>(PlanAnswer.basis(question.plan()));
        basis.add(Basis.fromMemory(
                "single faults before pairs; the next reading is the one of greatest entropy",
                "J. de Kleer, B. C. Williams, Diagnosing multiple faults, Artificial Intelligence 32, 1987"));
        basis.add(Basis.fromMemory(
                "likelihood that forgives wrong readings",
                "K. L. Lange, R. J. A. Little, J. M. G. Taylor, Robust statistical modeling using the t distribution,"
                        + " Journal of the American Statistical Association 84, 1989"));
        basis.add(Basis.fromMemory(
                "a fitted size counts against an explanation",
                "G. Schwarz, Estimating the dimension of a model, Annals of Statistics 6, 1978"));
        basis.add(Basis.fromMemory("limits become a standard deviation by 1/√3", "JCGM 100:2008 (GUM), 4.3.7"));
        basis.add(Basis.commonPractice("odds of the kinds of fault beforehand"));
        basis.add(Basis.commonPractice(
                "accuracy of a meter as one standard deviation, 5 per cent on resistances of parts"));
        basis.add(Basis.verified(
                "a blade fuse opens at twice its rating within 5 s, before a reading can be taken",
                "ISO 8820-3; SAE J1284"));
        basis.add(Basis.fromMemory("a blade fuse opens at 1.35 times its rating within half an hour", "ISO 8820-3"));
        return basis;
    }

    private static List<Caution> cautions(DiagnosisQuestion question, DiagnosisReport report) {
        Set<Caution> cautions = EnumSet.copyOf(PlanCautions.of(question.plan()));
        boolean mends = report.verdict() != DiagnosisReport.Verdict.PLAN_CONSISTENT;
        boolean ohms = report.nextReadings().stream().anyMatch(n -> n.quantity() == Quantity.OHMS);
        if (mends || ohms) {
            cautions.add(Caution.DISCONNECT_BATTERY);
        }
        if (engineTurns(report)) {
            cautions.add(Caution.MOVING_PARTS);
        }
        return List.copyOf(cautions);
    }

    /** Whether something is advised that is measured with the engine turning, which a plan without one does not warn of. */
    private static boolean engineTurns(DiagnosisReport report) {
        return report.nextReadings().stream().anyMatch(n -> n.condition().engineTurns())
                || report.explanations().stream()
                        .flatMap(e -> e.candidates().stream())
                        .flatMap(c -> c.faults().stream())
                        .anyMatch(f -> TOLD_BY_THE_ENGINE.contains(f.kind()));
    }
}
