package loomwright.diagnosis;

import static loomwright.message.Arg.arg;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import loomwright.answer.Answer;
import loomwright.answer.Basis;
import loomwright.answer.Caution;
import loomwright.answer.Progress;
import loomwright.answer.RejectedInput;
import loomwright.circuit.PlanCautions;
import loomwright.circuit.fault.SingleFault.Kind;
import loomwright.message.Message;
import loomwright.network.NetworkLimits;
import loomwright.operation.IntentAssumptions;
import loomwright.operation.ModelAssumptions;
import loomwright.operation.PlanAnswer;
import loomwright.operation.Quantity;

/** Names the faults that explain what was measured, and what to measure next. */
public final class DiagnosisAnswer {
    /** Faults that are distinguished with the engine cranking or running, as the summary advises. */
    private static final Set<Kind> TOLD_BY_THE_ENGINE = EnumSet.of(Kind.BATTERY_WORN, Kind.NOT_CHARGING);

    private DiagnosisAnswer() {}

    /**
     * Tries the plan as drawn, every single fault, and pairs if no single one is enough. Cost: for each setting of the
     * switches in the readings one solution for each fault, some ten more for each that shows, some thirty for a flat and for
     * a worn battery.
     *
     * @throws RejectedInput with all faults of plan and readings
     * @throws loomwright.answer.OutOfTime if it takes too long
     */
    public static Answer<DiagnosisReport> of(
            DiagnosisQuestion asked, DiagnosisLimits limits, NetworkLimits networkLimits, Progress progress) {
        DiagnosisQuestion question = asked.requireSound();
        Diagnosis found = new Diagnosis(question, limits, new Bench(question.plan(), limits, networkLimits, progress));
        DiagnosisReport report = new ReportWriter(found).write();
        return new Answer<>(
                report,
                working(report),
                basis(question),
                ModelAssumptions.withFuses(IntentAssumptions.of(asked.plan(), id -> List.of()), asked.plan()),
                cautions(question, report));
    }

    private static List<Message> working(DiagnosisReport report) {
        List<Message> working = new ArrayList<>();
        long deviating =
                report.readings().stream().filter(r -> r.compared().deviates()).count();
        working.add(DiagnosisText.READINGS_DEVIATE.with(arg("deviating", deviating), arg("readings", (long)
                report.readings().size())));
        working.add(DiagnosisText.FAULTS_TRIED.with(
                arg("faults", (long) report.tried().singleFaults()),
                arg("hidden", (long) report.tried().notShown())));
        working.add(DiagnosisText.PAIRS_TRIED.with(
                arg("pairs", (long) report.tried().pairs())));
        if (report.tried().withoutSolution() > 0) {
            working.add(DiagnosisText.UNSOLVED.with(
                    arg("trials", (long) report.tried().withoutSolution())));
        }
        working.add(DiagnosisText.SPREAD.with());
        working.add(DiagnosisText.WEIGHTS.with());
        return working;
    }

    private static List<Basis> basis(DiagnosisQuestion question) {
        List<Basis> basis = new ArrayList<>(PlanAnswer.basis(question.plan()));
        basis.add(Basis.fromMemory(
                "single faults before pairs; the next reading is the one of greatest entropy",
                "J. de Kleer, B. C. Williams, Diagnosing multiple faults, Artificial Intelligence 32, 1987"));
        basis.add(Basis.fromMemory(
                "how readings move with the figures of the plan",
                "S. W. Director, R. A. Rohrer, The generalized adjoint network and network sensitivities, 1969"));
        basis.add(Basis.fromMemory(
                "a fitted size counts against an explanation", "D. J. C. MacKay, Bayesian interpolation, 1992"));
        basis.add(Basis.fromMemory("limits become a standard deviation by 1/√3", "JCGM 100:2008 (GUM), 4.3.7"));
        basis.add(Basis.commonPractice("odds of the kinds of fault beforehand"));
        basis.add(Basis.commonPractice(
                "tolerances of parts and meter as on the sheet of readings; one reading in fifty is wrong"));
        basis.add(Basis.verified(
                "a blade fuse opens at twice its rating within 5 s, before a reading can be taken",
                "ISO 8820-3; SAE J1284"));
        basis.add(Basis.fromMemory("a blade fuse opens at 1.35 times its rating within half an hour", "ISO 8820-3"));
        return basis;
    }

    private static List<Caution> cautions(DiagnosisQuestion question, DiagnosisReport report) {
        Set<Caution> cautions = EnumSet.copyOf(PlanCautions.of(question.plan()));
        boolean mends = report.conclusion().verdict() != DiagnosisReport.Verdict.PLAN_CONSISTENT;
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
        return report.nextReadings().stream()
                        .anyMatch(n -> n.setting().condition().engineTurns())
                || report.explanations().stream()
                        .flatMap(e -> e.candidates().stream())
                        .flatMap(c -> c.faults().stream())
                        .anyMatch(f -> TOLD_BY_THE_ENGINE.contains(f.kind()));
    }
}
