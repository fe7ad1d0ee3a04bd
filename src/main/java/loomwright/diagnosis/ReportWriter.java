package loomwright.diagnosis;

import static loomwright.message.Arg.arg;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import loomwright.circuit.Consumer;
import loomwright.circuit.Plan;
import loomwright.circuit.fault.BadJoint;
import loomwright.circuit.fault.DischargedBattery;
import loomwright.circuit.fault.FaultWording;
import loomwright.circuit.fault.OffValue;
import loomwright.circuit.fault.ShortBetween;
import loomwright.circuit.fault.ShortToEarth;
import loomwright.circuit.fault.SingleFault;
import loomwright.circuit.fault.SingleFault.Kind;
import loomwright.circuit.fault.WornBattery;
import loomwright.circuit.fault.WornContact;
import loomwright.diagnosis.DiagnosisReport.Certainty;
import loomwright.diagnosis.DiagnosisReport.ComparedFigures;
import loomwright.diagnosis.DiagnosisReport.Doubt;
import loomwright.diagnosis.DiagnosisReport.Explanation;
import loomwright.diagnosis.DiagnosisReport.NextPurpose;
import loomwright.diagnosis.DiagnosisReport.NextReading;
import loomwright.diagnosis.DiagnosisReport.ProcedureStep;
import loomwright.diagnosis.DiagnosisReport.ReadingCheck;
import loomwright.diagnosis.DiagnosisReport.Shown;
import loomwright.diagnosis.DiagnosisReport.Suspect;
import loomwright.diagnosis.DiagnosisReport.SuspectFault;
import loomwright.diagnosis.DiagnosisReport.Tried;
import loomwright.diagnosis.DiagnosisReport.Verdict;
import loomwright.message.Arg;
import loomwright.message.Argument.Thing;
import loomwright.message.Message;
import loomwright.operation.Point;
import loomwright.operation.Probe;
import org.jspecify.annotations.Nullable;

/** Puts a diagnosis into messages and tables. */
final class ReportWriter {
    /** From this share of the nominal voltage on a load is called fed (common practice, no source). */
    private static final double FED_SHARE = 0.75;
    /** More are not named. */
    private static final int MOST_FED = 5;
    /** From this probability on an explanation that was measured across is certain. */
    private static final double CERTAIN = 0.9;

    private final Diagnosis found;
    private final Plan plan;
    private final Likelihood likelihood;
    private final List<Measurement> measurements;
    private final NextReadings next;
    private final NextWording wording;

    ReportWriter(Diagnosis found) {
        this.found = found;
        this.plan = found.question().plan();
        this.likelihood = found.trials().likelihood();
        this.measurements = likelihood.measurements();
        this.next = new NextReadings(found.bench(), found.question());
        this.wording = new NextWording(found, next);
    }

    DiagnosisReport write() {
        List<Explanation> explanations = new ArrayList<>();
        for (List<FaultCandidate> group : found.groups()) {
            explanations.add(explanation(explanations.size() + 1, group));
        }
        List<Doubt> doubts = new Doubts(found).list();
        List<FaultCandidate> leading = found.leading();
        Optional<NextReading> confirming = confirming();
        List<NextReading> readings = new ArrayList<>(confirming.stream().toList());
        List<Double> weights = leading.stream().map(found::probability).toList();
        if (leading.size() > 1) {
            next.of(leading, weights).stream()
                    .map(chosen -> wording.of(chosen, NextPurpose.SEPARATE, leading, List.of()))
                    .forEach(readings::add);
        }
        List<ProcedureStep> procedure = new ArrayList<>();
        if (found.question().procedure() && leading.size() > 1) {
            next.procedure(leading, weights)
                    .forEach(step -> procedure.add(new ProcedureStep(
                            step.number(), wording.of(step.chosen(), NextPurpose.SEPARATE, leading, step.next()))));
        }
        Verdict verdict = verdict(explanations, doubts);
        Certainty certainty = certainty(explanations, verdict, confirming.isPresent());
        return new DiagnosisReport(
                plan.name(),
                new DiagnosisReport.Conclusion(verdict, certainty, summary(verdict, certainty, explanations, doubts)),
                doubts,
                checks(),
                explanations,
                found.unexplained(),
                readings,
                procedure,
                new Tried(
                        found.singles(),
                        found.pairs(),
                        found.notShown(),
                        found.trials().unsolved()));
    }

    /** Across the part that the one leading explanation accuses, if nobody has measured there. */
    private Optional<NextReading> confirming() {
        List<FaultCandidate> first = found.groups().get(0);
        FaultCandidate accused = first.get(0);
        if (first.size() > 1 || accused.sound() || found.probability(first) < Diagnosis.LEADS) {
            return Optional.empty();
        }
        Optional<Probe> across = found.toConfirm(accused);
        if (across.isEmpty()) {
            return Optional.empty();
        }
        List<FaultCandidate> others = new ArrayList<>();
        if (found.sound() != null) {
            others.add(found.sound());
        }
        found.groups().stream()
                .skip(1)
                .limit(3)
                .map(g -> g.get(0))
                .filter(c -> !c.sound())
                .forEach(others::add);
        List<FaultCandidate> all = new ArrayList<>(List.of(accused));
        all.addAll(others);
        return next.across(across.get(), accused, others)
                .map(chosen -> wording.of(chosen, NextPurpose.CONFIRM, all, List.of()));
    }

    private Verdict verdict(List<Explanation> explanations, List<Doubt> doubts) {
        Explanation first = explanations.get(0);
        if (!doubts.isEmpty()) {
            return Verdict.CHECK_READINGS;
        } else if (!first.explains() || found.unexplained() > first.probability()) {
            return Verdict.UNEXPLAINED;
        }
        return switch (first.faultCount()) {
            case 0 -> Verdict.PLAN_CONSISTENT;
            case 1 -> Verdict.SINGLE_FAULT;
            default -> Verdict.FAULT_PAIR;
        };
    }

    private Certainty certainty(List<Explanation> explanations, Verdict verdict, boolean confirmable) {
        Explanation first = explanations.get(0);
        if (verdict == Verdict.PLAN_CONSISTENT) {
            return first.probability() >= CERTAIN && !onlyComplained() && !complainedOtherwise()
                    ? Certainty.CONFIRMED
                    : Certainty.UNDECIDED;
        } else if (verdict == Verdict.UNEXPLAINED || verdict == Verdict.CHECK_READINGS) {
            return Certainty.UNDECIDED;
        } else if (first.candidates().size() > 1 || first.probability() < Diagnosis.LEADS) {
            return Certainty.UNDECIDED;
        } else if (first.confirmed()) {
            return first.probability() >= CERTAIN ? Certainty.CONFIRMED : Certainty.UNDECIDED;
        }
        return confirmable ? Certainty.TO_CONFIRM : Certainty.NOT_CONFIRMABLE;
    }

    /** Whether somebody complains and nobody has measured: then nothing is certain, however well the plan goes with it. */
    private boolean onlyComplained() {
        return IntStream.range(0, measurements.size())
                        .allMatch(i -> measurements.get(i).part() != null)
                && IntStream.range(0, measurements.size()).anyMatch(i -> Sign.of(likelihood.measured(i)) != Sign.WORKS);
    }

    /** Whether somebody saw something else than the vehicle as drawn shows: then that it is sound is not confirmed. */
    private boolean complainedOtherwise() {
        PredictedFigures planned = figures(0);
        return IntStream.range(0, measurements.size())
                .filter(i -> measurements.get(i).part() != null)
                .anyMatch(i -> !Seen.of(planned.at(i)).isCalled(Sign.of(likelihood.measured(i))));
    }

    private List<Message> summary(
            Verdict verdict, Certainty certainty, List<Explanation> explanations, List<Doubt> doubts) {
        List<Message> summary = new ArrayList<>();
        Explanation first = explanations.get(0);
        Arg fault = arg("fault", first.candidates().get(0).description());
        switch (verdict) {
            case CHECK_READINGS -> doubts.forEach(d -> summary.add(d.question()));
            case UNEXPLAINED -> {
                summary.add(DiagnosisText.UNEXPLAINED.with());
                if (first.faultCount() > 0) {
                    summary.add(DiagnosisText.NEAREST.with(
                            fault, arg("readings", (long) first.notExplained().size())));
                }
            }
            case PLAN_CONSISTENT -> {
                summary.add(DiagnosisText.PLAN_CONSISTENT.with());
                List<Thing> fed = fed();
                summary.add(DiagnosisText.LOAD_ITSELF.with(arg("fedCount", (long) fed.size()), Arg.things("fed", fed)));
            }
            case SINGLE_FAULT -> summary.add(DiagnosisText.ONE_FAULT.with(fault));
            case FAULT_PAIR -> summary.add(DiagnosisText.TWO_FAULTS.with(fault));
        }
        if (verdict == Verdict.SINGLE_FAULT || verdict == Verdict.FAULT_PAIR) {
            int others = first.candidates().size() - 1;
            if (others > 0) {
                summary.add(DiagnosisText.EQUAL_EXPLANATIONS.with(arg("others", (long) others)));
            } else if (certainty == Certainty.TO_CONFIRM) {
                summary.add(DiagnosisText.CONFIRM_FIRST.with());
            } else if (certainty == Certainty.NOT_CONFIRMABLE) {
                summary.add(DiagnosisText.NOT_CONFIRMED.with());
            }
            summary.addAll(advice(first));
        }
        boolean matters = found.groups().get(0).get(0).fit().contactsOpen().stream()
                .anyMatch(i -> Math.abs(figures(0).at(i) - figures(0).open(i)) > 0.5);
        if (matters) {
            summary.add(DiagnosisText.CONTACTS_SEEM_OPEN.with());
        }
        return summary;
    }

    private PredictedFigures figures(int group) {
        return found.groups().get(group).get(0).figures();
    }

    /** The loads that were measured to be fed. */
    private List<Thing> fed() {
        double leastV = FED_SHARE * plan.system().nominalVoltageV();
        return plan.listParts(Consumer.class).stream()
                .filter(load -> IntStream.range(0, measurements.size())
                        .anyMatch(i -> measurements.get(i).isVolts()
                                && feeds(measurements.get(i).probe(), load)
                                && Math.abs(likelihood.measured(i)) >= leastV))
                .map(Consumer::thing)
                .limit(MOST_FED)
                .toList();
    }

    /** Whether one lead is on what feeds a load, the other on its own return or on the chassis. */
    private static boolean feeds(Probe probe, Consumer load) {
        Point feed = new Point(load.terminal(load.feedTerminal()));
        return (probe.from().equals(feed) && takesBack(probe.to(), load))
                || (probe.to().equals(feed) && takesBack(probe.from(), load));
    }

    private static boolean takesBack(Point point, Consumer load) {
        return point.terminal() == null || point.terminal().equals(load.terminal(load.returnTerminal()));
    }

    /** How a battery is distinguished from what is around it, for an owner (common practice, no source). */
    private static List<Message> advice(Explanation explanation) {
        Set<Kind> kinds = explanation.candidates().stream()
                .flatMap(c -> c.faults().stream())
                .map(SuspectFault::kind)
                .collect(Collectors.toSet());
        List<Message> advice = new ArrayList<>();
        if (kinds.contains(Kind.BATTERY_DISCHARGED)) {
            advice.add(DiagnosisText.ADVICE_DISCHARGED.with());
        }
        if (kinds.contains(Kind.BATTERY_WORN)) {
            advice.add(DiagnosisText.ADVICE_WORN.with());
        }
        if (kinds.contains(Kind.NOT_CHARGING)) {
            advice.add(DiagnosisText.ADVICE_NOT_CHARGING.with());
        }
        return advice;
    }

    private Explanation explanation(int rank, List<FaultCandidate> group) {
        FaultCandidate first = group.get(0);
        List<Shown> predicted = new ArrayList<>();
        for (int i = 0; i < measurements.size(); i++) {
            predicted.add(shown(first, i));
        }
        return new Explanation(
                rank,
                first.faults().size(),
                first.fit().explains(),
                found.confirmed(first),
                found.probability(group),
                first.fit().worst(),
                first.fit().notExplained(),
                group.stream().map(this::suspect).toList(),
                predicted);
    }

    private Shown shown(FaultCandidate candidate, int i) {
        Measurement m = measurements.get(i);
        double closed = candidate.figures().at(i);
        double open = candidate.figures().open(i);
        double still = candidate.fit().contactsOpen().contains(i) ? open : closed;
        if (m.part() != null) {
            return Shown.of(
                    switch (Seen.of(still)) {
                        case WORKING -> Sign.WORKS;
                        case WEAK -> Sign.WEAK;
                        case GLOWING -> Sign.GLOWS;
                        case NOTHING -> Sign.DEAD;
                        case FUSE_BLOWN -> Sign.BLOWS_ITS_FUSE;
                    });
        }
        return Shown.of(m.quantity(), m.step().engineTurning() ? (closed + open) / 2 : still);
    }

    private Suspect suspect(FaultCandidate candidate) {
        List<SuspectFault> faults = candidate.faults().stream().map(this::fault).toList();
        List<String> fuses = candidate.fusesBlown().stream().sorted().toList();
        return new Suspect(wording.candidate(candidate), faults, fuses, found.probability(candidate));
    }

    private SuspectFault fault(SingleFault fault) {
        @Nullable Double ohm = null;
        if (fault instanceof BadJoint f) {
            ohm = f.resistanceOhm();
        } else if (fault instanceof WornBattery f) {
            ohm = f.resistanceOhm();
        } else if (fault instanceof ShortToEarth f) {
            ohm = f.resistanceOhm();
        } else if (fault instanceof ShortBetween f) {
            ohm = f.resistanceOhm();
        } else if (fault instanceof WornContact f) {
            ohm = f.resistanceOhm();
        }
        Double restV = fault instanceof DischargedBattery f ? (Double) f.leftV() : null;
        Double factor = fault instanceof OffValue f ? (Double) f.factor() : null;
        return new SuspectFault(fault.kind(), fault.ids(), FaultWording.of(fault, plan), ohm, restV, factor);
    }

    private List<ReadingCheck> checks() {
        FaultCandidate sound = found.sound();
        List<ReadingCheck> checks = new ArrayList<>();
        for (int i = 0; i < measurements.size(); i++) {
            Measurement m = measurements.get(i);
            Double deviation = sound == null ? null : sound.fit().deviations().get(i);
            boolean differs = sound == null
                    || ((sound.fit().deviates(i)
                                    || Math.abs(sound.fit().deviations().get(i)) > Fit.LIMIT)
                            && !withinTheMeter(sound, i));
            checks.add(new ReadingCheck(
                    i,
                    m.probe().from().toString(),
                    m.probe().to().toString(),
                    m.part(),
                    m.condition(),
                    m.switches(),
                    m.contacts(),
                    new ComparedFigures(
                            m.part() == null
                                    ? Shown.of(m.quantity(), likelihood.measured(i))
                                    : Shown.of(Sign.of(likelihood.measured(i))),
                            sound == null ? null : shown(sound, i),
                            deviation,
                            differs)));
        }
        return checks;
    }

    /** Whether a reading is no further from the plan's figure than a meter may be off by itself. */
    private boolean withinTheMeter(FaultCandidate sound, int i) {
        Measurement m = measurements.get(i);
        double planned = sound.fit().contactsOpen().contains(i)
                ? sound.figures().open(i)
                : sound.figures().at(i);
        return m.part() == null
                && Math.abs(likelihood.measured(i) - planned) <= Likelihood.meterLimit(found.question(), m, planned);
    }
}
