package loomwright.mistakes;

import static loomwright.message.Arg.arg;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import loomwright.answer.Answer;
import loomwright.answer.Basis;
import loomwright.answer.Caution;
import loomwright.answer.InputError;
import loomwright.answer.Progress;
import loomwright.answer.RejectedInput;
import loomwright.answer.Severity;
import loomwright.circuit.Plan;
import loomwright.circuit.PlanCautions;
import loomwright.circuit.fault.SingleFault;
import loomwright.circuit.fault.SingleFaults;
import loomwright.conductor.AmpacityTable;
import loomwright.message.Message;
import loomwright.mistakes.MistakesReport.KeyingAdvice;
import loomwright.mistakes.MistakesReport.Mistake;
import loomwright.network.NetworkLimits;
import loomwright.operation.IntentAssumptions;
import loomwright.operation.PlanAnswer;
import loomwright.operation.PlanSolver;

/** Every plausible single mistake of a plan with what comes of it, worst first. */
public final class MistakesAnswer {
    private MistakesAnswer() {}

    /**
     * Solves all of them. Cost: mistakes times settings of the free switches times steps.
     *
     * @throws RejectedInput with all faults of the plan, or OVER_LIMIT if there is too much to solve
     */
    public static Answer<MistakesReport> of(
            Plan given, MistakesLimits limits, NetworkLimits networkLimits, Progress progress) {
        Plan plan = PlanAnswer.requireSound(given);
        List<SingleFault> faults = SingleFaults.list(plan);
        int settings = SwitchSetting.list(plan).size();
        long solutions = (long) faults.size() * settings;
        if (solutions > limits.maxSolutions()) {
            throw new RejectedInput(new InputError(
                    InputError.Code.OVER_LIMIT,
                    "/parts",
                    solutions + " solutions: " + faults.size() + " mistakes in " + settings + " settings",
                    "a plan whose mistakes times settings of the free switches are at most " + limits.maxSolutions()
                            + "; tie switches to the condition or leave out what does not matter here"));
        }
        Consequences consequences = new Consequences(plan, new PlanSolver(networkLimits));
        List<Mistake> mistakes = new ArrayList<>();
        for (SingleFault fault : faults) {
            mistakes.add(consequences.of(fault));
            progress.at(mistakes.size(), faults.size());
        }
        List<KeyingAdvice> keying = keying(plan, mistakes);
        mistakes.sort(Comparator.comparing(Mistake::severity));
        MistakesReport report = new MistakesReport(plan.name(), settings, mistakes, keying);
        return new Answer<>(
                report, working(report), basis(plan), IntentAssumptions.of(given, id -> List.of()), cautions(plan));
    }

    private static List<KeyingAdvice> keying(Plan plan, List<Mistake> mistakes) {
        Map<List<String>, KeyingAdvice> advice = new LinkedHashMap<>();
        for (Mistake mistake : mistakes) {
            if (mistake.kind() == SingleFault.Kind.CONNECTORS_CROSSED && mistake.severity() != Severity.NOTE) {
                KeyingAdvice one = new KeyingAdvice(
                        mistake.ids(),
                        mistake.severity(),
                        Keying.change(plan, mistake.ids().get(1)),
                        MistakeText.GENDER_DOES_NOT_HELP.with());
                advice.merge(mistake.ids(), one, (a, b) -> b.severity().compareTo(a.severity()) < 0 ? b : a);
            }
        }
        return List.copyOf(advice.values());
    }

    private static List<Message> working(MistakesReport report) {
        return List.of(
                MistakeText.MISTAKES_SOLVED.with(
                        arg("mistakes", report.mistakes().size()), arg("settings", report.settings())),
                MistakeText.FUSES_OPENED.with(),
                MistakeText.SEVERITIES.with(
                        arg("dangers", count(report, Severity.DANGER)),
                        arg("warnings", count(report, Severity.WARNING)),
                        arg("notes", count(report, Severity.NOTE))));
    }

    private static long count(MistakesReport report, Severity severity) {
        return report.mistakes().stream().filter(m -> m.severity() == severity).count();
    }

    private static List<Basis> basis(Plan plan) {
        List<Basis> basis = new ArrayList<>(PlanAnswer.basis(plan));
        basis.add(Basis.commonPractice(
                "which single mistakes are plausible, which terminals of a part have the same form,"
                        + " a bad joint of 3 ohm, a short to earth of 0.01 ohm"));
        basis.add(Basis.commonPractice("a tenth more or less voltage is noticed"));
        basis.add(Basis.fromMemory("a blade fuse opens at 1.35 times its rating within half an hour", "ISO 8820-3"));
        basis.add(Basis.verified(
                "continuous current of wires, 80 C insulation unless said", AmpacityTable.US_33CFR183.label()));
        basis.add(Basis.fromMemory("melting current of a fusible link", "Preece's equation"));
        basis.add(Basis.commonPractice("electronics fed backwards conduct like a silicon diode from return to supply"));
        return basis;
    }

    private static List<Caution> cautions(Plan plan) {
        Set<Caution> cautions = EnumSet.copyOf(PlanCautions.of(plan));
        cautions.add(Caution.DISCONNECT_BATTERY);
        return List.copyOf(cautions);
    }
}
