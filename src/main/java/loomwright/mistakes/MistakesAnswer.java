package loomwright.mistakes;

import static loomwright.message.Arg.arg;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import loomwright.answer.Answer;
import loomwright.answer.Basis;
import loomwright.answer.Caution;
import loomwright.answer.OutOfTime;
import loomwright.answer.Progress;
import loomwright.answer.Severity;
import loomwright.answer.SharedWork;
import loomwright.circuit.Plan;
import loomwright.circuit.PlanCautions;
import loomwright.circuit.fault.SingleFault;
import loomwright.circuit.fault.SingleFaults;
import loomwright.conductor.AmpacityTable;
import loomwright.message.Message;
import loomwright.mistakes.MistakesReport.KeyingAdvice;
import loomwright.mistakes.MistakesReport.Mistake;
import loomwright.mistakes.MistakesReport.WithoutMistake;
import loomwright.network.NetworkLimits;
import loomwright.operation.IntentAssumptions;
import loomwright.operation.ModelAssumptions;
import loomwright.operation.PlanAnswer;
import loomwright.operation.PlanSolver;

/** Every plausible single mistake of a plan with what comes of it, worst first. */
public final class MistakesAnswer {
    /** What most often does harm (common practice, no source); looked at first, lest the time be up. */
    private static final Set<SingleFault.Kind> FIRST = EnumSet.of(
            SingleFault.Kind.SHORT_TO_EARTH,
            SingleFault.Kind.LEADS_SWAPPED,
            SingleFault.Kind.CONNECTORS_CROSSED,
            SingleFault.Kind.WIRE_MISPLACED,
            SingleFault.Kind.RELAY_STUCK_CLOSED,
            SingleFault.Kind.SHORT_INSIDE,
            SingleFault.Kind.SWITCH_STUCK);

    private MistakesAnswer() {}

    /**
     * Solves all of them, as many as there is time for, those first that may start a fire. Cost: mistakes times settings of the
     * free switches times steps.
     *
     * @throws loomwright.answer.RejectedInput with all faults of the plan
     */
    public static Answer<MistakesReport> of(
            Plan given, MistakesOptions options, NetworkLimits networkLimits, Progress progress) {
        Plan plan = PlanAnswer.requireSound(given);
        List<SingleFault> faults = Stream.of(SingleFaults.list(plan), SingleFaults.listContacts(plan))
                .flatMap(List::stream)
                .sorted(Comparator.comparing(fault -> !FIRST.contains(fault.kind())))
                .toList();
        List<Mistake> mistakes = new ArrayList<>();
        WithoutMistake withoutMistake = WithoutMistake.UNKNOWN;
        try {
            Consequences consequences = new Consequences(plan, solver(networkLimits, progress));
            withoutMistake = consequences.withoutMistake();
            mistakes.addAll(SharedWork.inOrder(
                    faults.size(),
                    () -> {
                        PlanSolver solver = solver(networkLimits, progress);
                        return i -> consequences.of(faults.get(i), solver);
                    },
                    progress));
        } catch (OutOfTime over) {
            // Not even the sound plan was solved: nothing was looked at.
        }
        int settings = SwitchSetting.list(plan).size();
        List<KeyingAdvice> keying = keying(plan, mistakes);
        mistakes.sort(Comparator.comparing(Mistake::severity));
        MistakesReport report = new MistakesReport(
                plan.name(), settings, faults.size() - mistakes.size(), 0, withoutMistake, mistakes, keying);
        MistakesReport told = shortened(report, options);
        return new Answer<>(
                told,
                working(report, told.notListed()),
                basis(plan),
                ModelAssumptions.withFuses(IntentAssumptions.of(given, id -> List.of()), given),
                cautions(plan));
    }

    private static PlanSolver solver(NetworkLimits networkLimits, Progress progress) {
        return new PlanSolver(networkLimits, progress.untold());
    }

    /** A report with as much of it as is asked for: a whole car has thousands of mistakes. */
    private static MistakesReport shortened(MistakesReport report, MistakesOptions options) {
        List<Mistake> told = report.mistakes().stream()
                .filter(mistake -> mistake.severity().compareTo(options.severity()) <= 0)
                .limit(options.limit())
                .map(mistake -> options.details() ? mistake : mistake.withoutDetails())
                .toList();
        return new MistakesReport(
                report.plan(),
                report.settings(),
                report.left(),
                report.mistakes().size() - told.size(),
                report.withoutMistake(),
                told,
                report.keying());
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

    private static List<Message> working(MistakesReport report, int notListed) {
        List<Message> working = new ArrayList<>();
        working.add(MistakeText.MISTAKES_SOLVED.with(
                arg("mistakes", report.mistakes().size()), arg("settings", report.settings())));
        if (report.left() > 0) {
            working.add(MistakeText.MISTAKES_LEFT.with(arg("left", report.left())));
        }
        if (!report.withoutMistake().summary().isEmpty()) {
            working.add(MistakeText.WITHOUT_MISTAKE.with());
            working.addAll(report.withoutMistake().summary());
        }
        working.add(MistakeText.FUSES_OPENED.with());
        working.add(MistakeText.SEVERITIES.with(
                arg("dangers", count(report, Severity.DANGER)),
                arg("warnings", count(report, Severity.WARNING)),
                arg("notes", count(report, Severity.NOTE))));
        if (notListed > 0) {
            working.add(MistakeText.NOT_LISTED.with(arg("notListed", notListed)));
        }
        return working;
    }

    private static long count(MistakesReport report, Severity severity) {
        return report.mistakes().stream().filter(m -> m.severity() == severity).count();
    }

    private static List<Basis> basis(Plan plan) {
        List<Basis> basis = new ArrayList<>(PlanAnswer.basis(plan));
        basis.add(Basis.commonPractice(
                "which single mistakes are plausible, which terminals of a part have the same form,"
                        + " a bad joint of 3 ohm, a short to earth of 0.01 ohm"));
        basis.add(Basis.commonPractice("a tenth higher or lower voltage is noticed"));
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
