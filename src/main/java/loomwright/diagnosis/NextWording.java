package loomwright.diagnosis;

import static loomwright.message.Arg.arg;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.TerminalRef;
import loomwright.circuit.Wire;
import loomwright.circuit.fault.FaultWording;
import loomwright.diagnosis.DiagnosisReport.LeadPlace;
import loomwright.diagnosis.DiagnosisReport.LeadPlaces;
import loomwright.diagnosis.DiagnosisReport.LeadWire;
import loomwright.diagnosis.DiagnosisReport.MeterSetting;
import loomwright.diagnosis.DiagnosisReport.NextPurpose;
import loomwright.diagnosis.DiagnosisReport.NextReading;
import loomwright.diagnosis.DiagnosisReport.Outcome;
import loomwright.diagnosis.DiagnosisReport.Worth;
import loomwright.message.Arg;
import loomwright.message.Message;
import loomwright.operation.Contacts;
import loomwright.operation.MeterRange;
import loomwright.operation.MeterText;
import loomwright.operation.Point;
import loomwright.operation.Quantity;
import org.jspecify.annotations.Nullable;

/** Says where to put the leads of a meter, and what each outcome means. */
final class NextWording {
    /** More are not named beside an outcome. */
    private static final int MOST_NAMED = 3;

    private final Diagnosis found;
    private final NextReadings next;
    private final Plan plan;

    NextWording(Diagnosis found, NextReadings next) {
        this.found = found;
        this.next = next;
        this.plan = found.question().plan();
    }

    /** One way to explain, as a sentence. */
    Message candidate(FaultCandidate candidate) {
        if (candidate.sound()) {
            return DiagnosisText.NO_FAULT.with();
        }
        Arg fusesCount = arg("fusesCount", (long) candidate.fusesBlown().size());
        Arg fuses = Arg.things(
                "fuses",
                candidate.fusesBlown().stream()
                        .sorted()
                        .map(id -> FaultWording.thing(plan, id))
                        .toList());
        Arg fault = arg("fault", FaultWording.of(candidate.faults().get(0), plan));
        return candidate.faults().size() == 1
                ? DiagnosisText.FAULT.with(fault, fusesCount, fuses)
                : DiagnosisText.FAULTS.with(
                        fault, arg("second", FaultWording.of(candidate.faults().get(1), plan)), fusesCount, fuses);
    }

    /**
     * A measurement, for a person.
     *
     * @param candidates those whose figures it was chosen by, in their order
     * @param following of a procedure, the step that follows each class; empty outside of one
     */
    NextReading of(
            NextReadings.Chosen chosen,
            NextPurpose purpose,
            List<FaultCandidate> candidates,
            List<@Nullable Integer> following) {
        Measurement m = chosen.measurement();
        List<Outcome> outcomes = outcomes(chosen, candidates, following);
        double most = outcomes.stream()
                .filter(o -> o.lowest() != null && o.highest() != null)
                .mapToDouble(o -> Math.max(Math.abs(lowest(o)), Math.abs(highest(o))))
                .max()
                .orElse(0);
        boolean volts = m.quantity() == Quantity.VOLTS;
        List<Message> instruction = new ArrayList<>();
        instruction.add(state(m));
        Message meter = MeterRange.of(m.quantity(), most).description();
        instruction.add((volts ? DiagnosisText.MEASURE_VOLTS : DiagnosisText.MEASURE_OHMS)
                .with(
                        arg("red", lead(m.probe().from())),
                        arg("black", lead(m.probe().to())),
                        arg("meter", meter)));
        return new NextReading(
                purpose,
                m.probe().from().toString(),
                m.probe().to().toString(),
                new MeterSetting(m.condition(), m.switches(), m.contacts(), false),
                m.quantity(),
                new LeadPlaces(place(m.probe().from()), place(m.probe().to())),
                meter.text(),
                instruction,
                new Worth(chosen.gainBits(), chosen.cost()),
                outcomes);
    }

    private static double lowest(Outcome outcome) {
        Double lowest = outcome.lowest();
        return lowest == null ? 0 : lowest;
    }

    private static double highest(Outcome outcome) {
        Double highest = outcome.highest();
        return highest == null ? 0 : highest;
    }

    private List<Outcome> outcomes(
            NextReadings.Chosen chosen, List<FaultCandidate> candidates, List<@Nullable Integer> following) {
        Measurement m = chosen.measurement();
        List<Outcome> outcomes = new ArrayList<>();
        Set<Integer> classes = new TreeSet<>();
        for (int c : chosen.classes()) {
            if (c >= 0) {
                classes.add(c);
            }
        }
        for (int c : classes) {
            double low = Double.POSITIVE_INFINITY;
            double high = Double.NEGATIVE_INFINITY;
            Set<Integer> ranks = new TreeSet<>();
            Set<Message> named = new LinkedHashSet<>();
            int others = 0;
            for (int i = 0; i < candidates.size(); i++) {
                if (chosen.classes()[i] == c) {
                    Separation.Band band = chosen.bands().get(i);
                    low = Math.min(low, band.low());
                    high = Math.max(high, band.high());
                    ranks.add(rank(candidates.get(i)));
                    if (named.size() < MOST_NAMED) {
                        named.add(candidate(candidates.get(i)));
                    } else {
                        others++;
                    }
                }
            }
            boolean open = m.quantity() == Quantity.OHMS && low >= Bench.OPEN_OHM;
            double least = low - next.separation().reach(m, low);
            Message either = named.stream()
                    .reduce((before, item) -> DiagnosisText.OR.with(arg("before", before), arg("item", item)))
                    .orElseThrow();
            Message meaning = DiagnosisText.MEANS.with(arg("faults", either), arg("others", (long) others));
            outcomes.add(new Outcome(
                    open ? null : (Double) (m.quantity() == Quantity.OHMS ? Math.max(0, least) : least),
                    open ? null : (Double) (high + next.separation().reach(m, high)),
                    open,
                    List.copyOf(ranks),
                    meaning,
                    c < following.size() ? following.get(c) : null));
        }
        return outcomes;
    }

    private Message state(Measurement m) {
        List<Message> switches = m.switches().entrySet().stream()
                .map(e -> DiagnosisText.SWITCH_AT.with(
                        arg("switch", FaultWording.thing(plan, e.getKey())), arg("position", e.getValue())))
                .collect(Collectors.toCollection(ArrayList::new));
        if (m.contacts() != Contacts.EITHER && Contacts.matter(plan)) {
            switches.add(
                    DiagnosisText.CONTACTS_AT.with(arg("contacts", m.contacts() == Contacts.OPEN ? "open" : "closed")));
        }
        return DiagnosisText.STATE.with(
                arg("quantity", m.quantity() == Quantity.OHMS ? "ohms" : "volts"),
                arg("step", m.step()),
                arg("count", (long) switches.size()),
                Arg.messages("switches", switches));
    }

    private List<LeadWire> wires(TerminalRef terminal) {
        return plan.wires().stream()
                .filter(w -> w.from().equals(terminal) || w.to().equals(terminal))
                .map(w -> new LeadWire(w.id(), w.colour()))
                .toList();
    }

    private LeadPlace place(Point point) {
        TerminalRef terminal = point.terminal();
        if (terminal == null) {
            return new LeadPlace(MeterText.BARE_METAL.text(), null, List.of());
        }
        Part part = plan.findPart(terminal.part()).orElseThrow();
        return new LeadPlace(part.displayName(), terminal.terminal(), wires(terminal));
    }

    private Message lead(Point point) {
        TerminalRef terminal = point.terminal();
        if (terminal == null) {
            return MeterText.BARE_METAL.with();
        }
        Arg part = arg("part", FaultWording.thing(plan, terminal.part()));
        Arg name = arg("terminal", terminal.terminal());
        List<Message> wires = plan.wires().stream()
                .filter(w -> w.from().equals(terminal) || w.to().equals(terminal))
                .map(NextWording::wire)
                .toList();
        return wires.isEmpty()
                ? DiagnosisText.LEAD_ON.with(part, name)
                : DiagnosisText.LEAD_ON_WIRES.with(part, name, Arg.messages("wires", wires));
    }

    private static Message wire(Wire wire) {
        String colour = wire.colour();
        return DiagnosisText.WIRE_OF_COLOUR.with(
                arg("wire", wire.thing()),
                arg("coloured", colour == null ? "no" : "yes"),
                arg("colour", colour == null ? "" : colour));
    }

    private int rank(FaultCandidate candidate) {
        for (int g = 0; g < found.groups().size(); g++) {
            if (found.groups().get(g).contains(candidate)) {
                return g + 1;
            }
        }
        return 0;
    }
}
