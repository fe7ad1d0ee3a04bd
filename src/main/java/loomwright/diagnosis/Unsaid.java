package loomwright.diagnosis;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.IntStream;
import loomwright.circuit.Coil;
import loomwright.circuit.Consumer;
import loomwright.circuit.Electromagnet;
import loomwright.circuit.FilamentLamp;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.operation.Contacts;
import loomwright.operation.Point;
import loomwright.operation.Probe;
import loomwright.operation.Quantity;
import loomwright.operation.Step;

/**
 * What nobody complains of although somebody looked: the other lamps, motors and loads that should work when the part that is complained
 * of should. A fault that takes five of them is complained of by any one of the five, so it makes a complaint of this one a fifth as likely
 * as a fault that takes this one alone. Of two lamps of the same watts that are lit together both are looked at: that the other one fails as
 * well is left unsaid in one case of ten. So it is where the other one is said to work (common practice, no source).
 *
 * @param looks at the parts that work in the sound plan whenever a complaint is made of another
 * @param twins which of them are of the kind and the watts of the part that is complained of
 */
record Unsaid(List<Measurement> looks, List<Boolean> twins) {
    static final Unsaid NOTHING = new Unsaid(List.of(), List.of());

    private static final double TWIN_UNSAID = 0.1;

    Unsaid {
        looks = List.copyOf(looks);
        twins = List.copyOf(twins);
    }

    /** When somebody looked. */
    private record When(Step step, Map<String, String> switches) {}

    /** Nothing if the plan has no solution. */
    static Unsaid of(DiagnosisQuestion question, Bench bench) {
        Plan plan = question.plan();
        Map<When, Set<String>> complained = new LinkedHashMap<>();
        for (MeterReading reading : question.readings()) {
            Measurement m = reading.measurement(plan);
            if (m.part() != null && reading.sign() != Sign.WORKS) {
                complained
                        .computeIfAbsent(new When(m.step(), m.switches()), w -> new HashSet<>())
                        .add(m.part());
            }
        }
        List<Measurement> looks = new ArrayList<>();
        List<Boolean> twins = new ArrayList<>();
        complained.forEach((when, parts) -> {
            for (Consumer consumer : plan.listParts(Consumer.class)) {
                if (!parts.contains(consumer.id()) && isSeen(consumer)) {
                    looks.add(look(when, consumer));
                    twins.add(parts.stream()
                            .anyMatch(id -> areTwins(plan.findPart(id).orElseThrow(), consumer)));
                }
            }
        });
        return looks.isEmpty()
                ? NOTHING
                : bench.measure(List.of(), Set.of(), looks)
                        .map(sound -> working(looks, twins, sound.figures()))
                        .orElse(NOTHING);
    }

    private static Unsaid working(List<Measurement> looks, List<Boolean> twins, PredictedFigures sound) {
        List<Integer> working = IntStream.range(0, looks.size())
                .filter(i -> Seen.of(sound.at(i)) == Seen.WORKING)
                .boxed()
                .toList();
        return new Unsaid(
                working.stream().map(looks::get).toList(),
                working.stream().map(twins::get).toList());
    }

    private static boolean areTwins(Part one, Part other) {
        return one instanceof FilamentLamp a
                && other instanceof FilamentLamp b
                && a.ratedW().equals(b.ratedW());
    }

    private static boolean isSeen(Consumer consumer) {
        return !(consumer instanceof Coil || consumer instanceof Electromagnet);
    }

    private static Measurement look(When when, Consumer consumer) {
        Probe across = new Probe(
                new Point(consumer.terminal(consumer.feedTerminal())),
                new Point(consumer.terminal(consumer.returnTerminal())));
        return new Measurement(across, Quantity.VOLTS, when.step(), when.switches(), Contacts.EITHER, consumer.id());
    }

    /**
     * Natural logarithm of the share of complaints that say no more.
     *
     * @param predicted what is seen of each part, after the readings
     * @param from where that begins
     */
    double log(PredictedFigures predicted, int from) {
        int also = 0;
        double log = 0;
        for (int i = 0; from + i < predicted.count(); i++) {
            if (Seen.of(predicted.at(from + i)) != Seen.WORKING) {
                also++;
                log += twins.get(i) ? Math.log(TWIN_UNSAID) : 0;
            }
        }
        return log - Math.log1p(also);
    }
}
