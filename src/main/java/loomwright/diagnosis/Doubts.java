package loomwright.diagnosis;

import static loomwright.message.Arg.arg;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Stream;
import loomwright.circuit.Condition;
import loomwright.circuit.Switch;
import loomwright.circuit.fault.FaultWording;
import loomwright.diagnosis.DiagnosisReport.Doubt;
import loomwright.diagnosis.DiagnosisReport.DoubtKind;
import loomwright.diagnosis.DiagnosisReport.Shown;
import loomwright.message.Message;
import loomwright.operation.Quantity;
import org.jspecify.annotations.Nullable;

/**
 * Looks for a slip of whoever took the readings: leads reversed, millivolts for volts, a switch elsewhere than reported. Such a slip
 * is asked about first where it makes an explanation fit that is likelier than any that takes all readings as they are.
 */
final class Doubts {
    /** Half of all wrong readings are one of these slips (common practice, no source). */
    private static final double SLIP = 0.5 / 3;

    private static final double THOUSAND = 1000;
    /** No figure is expected more closely, V or ohm. */
    private static final double LEAST_WIDTH = 0.05;
    /** A figure is distinguished from its opposite if it is so many times what the meter may be off. */
    private static final double TELLING = 5;

    private static final int MOST_TRIED = 6;
    /** A switch stands elsewhere than reported as often as a reading is wrong. */
    private static final double SWITCH_LOG = Math.log(Likelihood.WRONG);

    private final Diagnosis found;
    private final Likelihood likelihood;
    private final DiagnosisQuestion question;

    Doubts(Diagnosis found) {
        this.found = found;
        this.likelihood = found.trials().likelihood();
        this.question = found.question();
    }

    /** The questions to be asked first; empty where the readings can be taken as they are. */
    List<Doubt> list() {
        double asTheyAre = found.groups().stream()
                .map(g -> g.get(0))
                .filter(c -> c.fit().explains())
                .mapToDouble(FaultCandidate::logWeight)
                .max()
                .orElse(Double.NEGATIVE_INFINITY);
        Optional<Weighed> best = Stream.concat(
                        Stream.concat(
                                        Stream.ofNullable(found.sound()),
                                        found.groups().stream().map(g -> g.get(0)))
                                .limit(MOST_TRIED)
                                .flatMap(c -> slips(c).stream()),
                        switches().stream())
                .max(Comparator.comparingDouble(Weighed::log));
        if (best.isPresent() && best.get().log() > asTheyAre) {
            return best.get().doubts();
        }
        FaultCandidate first = found.groups().get(0).get(0);
        boolean one = first.fit().wrong().size() == 1
                && found.probability(found.groups().get(0)) > found.unexplained();
        return one && asTheyAre < first.logWeight()
                ? List.of(again(first.fit().wrong().iterator().next()))
                : List.of();
    }

    private record Weighed(double log, List<Doubt> doubts) {}

    /** Whether every reading that is wrong by a candidate is a slip. */
    private Optional<Weighed> slips(FaultCandidate candidate) {
        double log = candidate.logWeight();
        List<Doubt> doubts = new ArrayList<>();
        for (int i : candidate.fit().wrong()) {
            Doubt doubt = slip(candidate, i);
            if (doubt == null) {
                return Optional.empty();
            }
            doubts.add(doubt);
            // What is wrong is no longer anything at all, but about what was to be expected, in the units that were
            // typed.
            double width = Math.max(LEAST_WIDTH, limit(i, candidate.figures().at(i))) / times(doubt, i);
            log += Math.log(SLIP / (width * likelihood.slip(i)));
        }
        return doubts.isEmpty() ? Optional.empty() : Optional.of(new Weighed(log, doubts));
    }

    /** By how many times the figure is then larger than what was typed. */
    private double times(Doubt doubt, int i) {
        Shown corrected = Objects.requireNonNull(doubt.corrected());
        Double volts = corrected.voltageV();
        Double ohms = corrected.resistanceOhm();
        double figure = volts != null ? volts : ohms != null ? ohms : likelihood.measured(i);
        return Math.abs(figure / likelihood.measured(i));
    }

    private double limit(int i, double figure) {
        return Likelihood.meterLimit(question, likelihood.measurements().get(i), figure);
    }

    private @Nullable Doubt slip(FaultCandidate candidate, int i) {
        Measurement m = likelihood.measurements().get(i);
        if (m.part() != null) {
            return null;
        }
        double measured = likelihood.measured(i);
        if (m.quantity() == Quantity.VOLTS && goes(candidate, i, -measured)) {
            return doubt(DoubtKind.LEADS_REVERSED, DiagnosisText.LEADS_REVERSED, i, -measured);
        } else if (goes(candidate, i, measured / THOUSAND)) {
            return doubt(DoubtKind.FACTOR_THOUSAND, DiagnosisText.FACTOR_THOUSAND, i, measured / THOUSAND);
        } else if (goes(candidate, i, measured * THOUSAND)) {
            return doubt(DoubtKind.FACTOR_THOUSAND, DiagnosisText.FACTOR_THOUSAND, i, measured * THOUSAND);
        }
        return null;
    }

    /** Whether a figure goes with a candidate within some per cent, and is no mere zero. */
    private boolean goes(FaultCandidate candidate, int i, double figure) {
        double predicted = candidate.figures().at(i);
        double limit = limit(i, predicted);
        double off = Math.abs(figure - predicted);
        return Math.abs(predicted)
                        > TELLING
                                * Likelihood.meterLimit(
                                        question, likelihood.measurements().get(i), 0)
                && off < 2 * limit + 0.05 * Math.abs(predicted);
    }

    private Doubt doubt(DoubtKind kind, DiagnosisText text, int i, double corrected) {
        Measurement m = likelihood.measurements().get(i);
        boolean volts = m.quantity() == Quantity.VOLTS;
        Message asked = text.with(
                arg("number", (long) i + 1),
                arg("red", m.probe().from().toString()),
                arg("black", m.probe().to().toString()),
                volts
                        ? arg("measured", DiagnosisText.VOLTS.with(arg("figureV", likelihood.measured(i))))
                        : arg("measured", DiagnosisText.OHMS.with(arg("figureOhm", likelihood.measured(i)))),
                volts
                        ? arg("corrected", DiagnosisText.VOLTS.with(arg("figureV", corrected)))
                        : arg("corrected", DiagnosisText.OHMS.with(arg("figureOhm", corrected))));
        return new Doubt(kind, List.of(i), asked, Shown.of(m.quantity(), corrected), Map.of());
    }

    private Doubt again(int i) {
        Measurement m = likelihood.measurements().get(i);
        String part = m.part();
        Message asked = part == null
                ? DiagnosisText.TAKE_AGAIN.with(
                        arg("number", (long) i + 1),
                        arg("red", m.probe().from().toString()),
                        arg("black", m.probe().to().toString()))
                : DiagnosisText.LOOK_AGAIN.with(
                        arg("part", FaultWording.thing(question.plan(), part)),
                        arg("sign", Sign.of(likelihood.measured(i))));
        return new Doubt(DoubtKind.TAKE_AGAIN, List.of(i), asked, null, Map.of());
    }

    /** The sound plan with one switch elsewhere than reported, for all readings that were taken in one setting. */
    private List<Weighed> switches() {
        FaultCandidate sound = found.sound();
        if (sound == null || sound.fit().explains()) {
            return List.of();
        }
        List<Measurement> all = likelihood.measurements();
        Set<Map<String, String>> settings = new LinkedHashSet<>();
        sound.fit().wrong().forEach(i -> settings.add(all.get(i).switches()));
        List<Weighed> weighed = new ArrayList<>();
        for (Map<String, String> setting : settings) {
            for (Switch chosen : question.plan().listParts(Switch.class)) {
                for (Switch.Position position : chosen.free() ? chosen.positions() : List.<Switch.Position>of()) {
                    Map<String, String> other = new TreeMap<>(setting);
                    other.put(chosen.id(), position.name());
                    List<Measurement> moved = all.stream()
                            .map(m -> m.switches().equals(setting)
                                    ? new Measurement(m.probe(), m.quantity(), m.step(), other, m.contacts(), m.part())
                                    : m)
                            .toList();
                    if (!moved.equals(all) && !position.equals(standing(chosen, setting))) {
                        weigh(chosen, position, setting, moved, weighed);
                    }
                }
            }
        }
        return weighed;
    }

    private static Switch.Position standing(Switch chosen, Map<String, String> setting) {
        String set = setting.get(chosen.id());
        return chosen.positions().stream()
                .filter(p -> p.name().equals(set))
                .findFirst()
                .orElseGet(() -> chosen.in(Condition.OFF));
    }

    private void weigh(
            Switch chosen,
            Switch.Position position,
            Map<String, String> setting,
            List<Measurement> moved,
            List<Weighed> weighed) {
        found.bench()
                .measureWithSpread(List.of(), Set.of(), moved)
                .map(measured -> likelihood.of(measured.figures()))
                .filter(Fit::explains)
                .ifPresent(fit -> {
                    List<Integer> readings = new ArrayList<>();
                    for (int i = 0; i < moved.size(); i++) {
                        if (likelihood.measurements().get(i).switches().equals(setting)) {
                            readings.add(i);
                        }
                    }
                    Message asked = DiagnosisText.SWITCH_ELSEWHERE.with(
                            arg("switch", chosen.thing()),
                            arg("position", position.name()),
                            arg("reported", standing(chosen, setting).name()));
                    weighed.add(new Weighed(
                            SWITCH_LOG + fit.logLikelihood(),
                            List.of(new Doubt(
                                    DoubtKind.SWITCH_ELSEWHERE,
                                    readings,
                                    asked,
                                    null,
                                    Map.of(chosen.id(), position.name())))));
                });
    }
}
