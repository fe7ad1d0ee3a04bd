package loomwright.mistakes;

import static loomwright.message.Arg.arg;

import java.util.ArrayList;
import java.util.List;
import loomwright.answer.Severity;
import loomwright.circuit.Battery;
import loomwright.circuit.Coil;
import loomwright.circuit.Motor;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.Relay;
import loomwright.circuit.fault.SingleFault;
import loomwright.circuit.fault.SwappedLeads;
import loomwright.circuit.fault.WireOff;
import loomwright.message.Message;
import loomwright.operation.SolvedStep;

/** What no reading shows but a person should know. All common practice, no source. */
final class FaultNotes {
    /** A share of the nominal voltage that makes a bare end worth a warning. */
    private static final double LIVE_FRACTION = 0.05;

    private FaultNotes() {}

    static List<Note> of(SingleFault fault, Plan plan, List<SolvedStep> faulty) {
        List<Note> notes = new ArrayList<>();
        if (fault instanceof SwappedLeads swapped) {
            ofSwap(plan, plan.findPart(swapped.one().part()).orElseThrow(), swapped, notes);
        } else if (fault instanceof WireOff off && isLive(off, plan, faulty)) {
            notes.add(warning(MistakeText.LOOSE_END_LIVE.with()));
        }
        return notes;
    }

    private static void ofSwap(Plan plan, Part part, SwappedLeads swapped, List<Note> notes) {
        if (part instanceof Coil) {
            notes.add(warning(sparkPolarity("yes")));
        } else if (part instanceof Battery && plan.listParts(Battery.class).size() == 1) {
            ofBattery(plan, notes);
        } else if (part instanceof Motor) {
            notes.add(warning(MistakeText.MOTOR_REVERSED.with()));
        } else if (part instanceof Relay
                && List.of(Relay.COIL_FEED, Relay.COIL_RETURN)
                        .containsAll(List.of(
                                swapped.one().terminal(), swapped.other().terminal()))) {
            notes.add(warning(MistakeText.RELAY_DIODE.with()));
        }
    }

    /** One of several works against the others, and the figures tell what comes of that. */
    private static void ofBattery(Plan plan, List<Note> notes) {
        notes.add(warning(MistakeText.BATTERY_REVERSED.with()));
        if (!plan.listParts(Coil.class).isEmpty()) {
            notes.add(warning(sparkPolarity("if-it-does")));
        }
    }

    private static Message sparkPolarity(String runs) {
        return MistakeText.SPARK_POLARITY.with(arg("runs", runs));
    }

    private static Note warning(Message message) {
        return new Note(Severity.WARNING, message);
    }

    private static boolean isLive(WireOff off, Plan plan, List<SolvedStep> faulty) {
        double limitV = LIVE_FRACTION * plan.system().nominalVoltageV();
        return faulty.stream()
                .filter(SolvedStep::solved)
                .anyMatch(s -> Math.abs(s.voltageV(s.node(off.looseEnd(plan))).orElse(0)) >= limitV);
    }
}
