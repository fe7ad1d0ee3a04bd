package loomwright.readings;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import loomwright.circuit.Coil;
import loomwright.circuit.Consumer;
import loomwright.circuit.ContactBreaker;
import loomwright.circuit.Motor;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.message.Arg;
import loomwright.message.Message;
import loomwright.operation.Contacts;
import loomwright.operation.Quantity;
import loomwright.operation.SolvedStep;
import loomwright.readings.ReadingsSheet.Purpose;

/**
 * The readings worth taking, in the order to take them, each once.
 *
 * @param leftOut what is not among them, and why
 */
record Selection(List<ReadingCandidate> candidates, List<Message> leftOut) {

    static Selection of(ReadingsQuestion question, SolvedVariants variants) {
        return new Selecting(question, variants).select();
    }

    /** A selection in the making. */
    private static final class Selecting {
        private final ReadingsQuestion question;
        private final SolvedVariants variants;
        private final Plan plan;
        private final List<Message> leftOut = new ArrayList<>();

        Selecting(ReadingsQuestion question, SolvedVariants variants) {
            this.question = question;
            this.variants = variants;
            this.plan = variants.plan();
        }

        private boolean wanted(Part part) {
            return question.load() == null || part.id().equals(question.load());
        }

        private boolean isContacts(Part part) {
            return part instanceof ContactBreaker
                    && plan.findPart(String.valueOf(question.load()))
                            .filter(Coil.class::isInstance)
                            .isPresent();
        }

        /** In the order to take them: nothing at work first, then step by step. */
        private Selection select() {
            Rests rests = new Rests(variants, question.conditions());
            Circuits circuits = new Circuits(variants, question.conditions());
            List<ReadingCandidate> volts = new ArrayList<>(rests.supply());
            List<Consumer> loads = plan.parts().stream()
                    .filter(this::wanted)
                    .filter(Consumer.class::isInstance)
                    .map(Consumer.class::cast)
                    .toList();
            loads.forEach(load -> volts.addAll(rests.dead(load)));
            loads.forEach(load -> volts.addAll(circuits.of(load)));
            volts.sort(Comparator.comparing(c -> c.situation().step()));
            List<ReadingCandidate> all = new ArrayList<>(rests.wholeOhms());
            plan.parts().stream()
                    .filter(p -> wanted(p) || circuits.onTheWay().contains(p.id()) || isContacts(p))
                    .forEach(p -> all.addAll(rests.ohms(p)));
            all.sort(Comparator.comparing(c -> c.situation().contacts() != Contacts.EITHER));
            all.addAll(volts);
            if (!circuits.unfed().isEmpty()) {
                leftOut.add(ReadingText.NOT_POWERED.with(Arg.texts("loads", circuits.unfed())));
            }
            if (loads.stream().anyMatch(Motor.class::isInstance)) {
                leftOut.add(ReadingText.MOTORS_LEFT_OUT.with());
            }
            return new Selection(distinct(all), leftOut);
        }

        /** Points of one node, in one situation, are one reading, and halve a way for all loads: the first is kept. */
        private List<ReadingCandidate> distinct(List<ReadingCandidate> all) {
            record Place(List<Object> when, Quantity quantity, int from, int to) {}
            Set<Place> seen = new HashSet<>();
            List<ReadingCandidate> kept = new ArrayList<>();
            for (ReadingCandidate c : all) {
                ReadingState s = c.situation();
                SolvedStep solved = variants.in(s);
                int from = solved.node(c.probe().from());
                int to = solved.node(c.probe().to());
                boolean fresh = seen.add(new Place(List.of(s), c.quantity(), from, to));
                boolean first = seen.add(new Place(List.of(s.step(), s.setting()), c.quantity(), from, to));
                if (from != to && fresh && (first || c.purpose() != Purpose.HALF_SPLIT)) {
                    kept.add(c);
                }
            }
            return kept;
        }
    }
}
