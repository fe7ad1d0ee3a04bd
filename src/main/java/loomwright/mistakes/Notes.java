package loomwright.mistakes;

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
import loomwright.operation.SolvedStep;

/** What no reading shows but a person should know. All common practice, no source. */
final class Notes {
    /** A share of the nominal voltage that makes a bare end worth a warning. */
    private static final double LIVE_FRACTION = 0.05;

    private static final String SPARK =
            "the spark has the wrong polarity: it jumps from the cooler electrode and needs more"
                    + " voltage, so misfiring begins earlier.";

    private Notes() {}

    static List<Note> of(SingleFault fault, Plan plan, List<SolvedStep> faulty) {
        List<Note> notes = new ArrayList<>();
        if (fault instanceof SwappedLeads swapped) {
            ofSwap(plan, plan.findPart(swapped.one().part()).orElseThrow(), swapped, notes);
        } else if (fault instanceof WireOff off && isLive(off, plan, faulty)) {
            notes.add(warning("The loose end is live: bare, it shorts to whatever metal it touches."));
        }
        return notes;
    }

    private static void ofSwap(Plan plan, Part part, SwappedLeads swapped, List<Note> notes) {
        if (part instanceof Coil) {
            notes.add(warning("The engine runs, but " + SPARK));
        } else if (part instanceof Battery && plan.listParts(Battery.class).size() == 1) {
            ofBattery(plan, notes);
        } else if (part instanceof Motor) {
            notes.add(
                    warning("A motor with permanent magnets turns backwards; one with a wound field turns as before."));
        } else if (part instanceof Relay
                && List.of(Relay.COIL_FEED, Relay.COIL_RETURN)
                        .containsAll(List.of(
                                swapped.one().terminal(), swapped.other().terminal()))) {
            notes.add(warning("A relay with a diode across its winding shorts the feed through that diode."));
        }
    }

    /** One of several works against the others, and the figures tell what comes of that. */
    private static void ofBattery(Plan plan, List<Note> notes) {
        notes.add(warning(
                "Everything is fed the wrong way round: what has a rectifier or other electronics in it, drawn in the"
                        + " plan or not, burns out at once; a dynamo has to be polarised anew before it charges; a motor with"
                        + " permanent magnets turns backwards."));
        if (!plan.listParts(Coil.class).isEmpty()) {
            notes.add(warning("If the engine runs, " + SPARK));
        }
    }

    private static Note warning(String text) {
        return new Note(Severity.WARNING, text);
    }

    private static boolean isLive(WireOff off, Plan plan, List<SolvedStep> faulty) {
        double limitV = LIVE_FRACTION * plan.system().nominalVoltageV();
        return faulty.stream()
                .filter(SolvedStep::solved)
                .anyMatch(s -> Math.abs(s.voltageV(s.node(off.looseEnd(plan))).orElse(0)) >= limitV);
    }
}
