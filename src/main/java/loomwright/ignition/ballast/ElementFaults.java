package loomwright.ignition.ballast;

import java.util.ArrayList;
import java.util.List;
import loomwright.circuit.Bounds;
import loomwright.circuit.Condition;
import loomwright.ignition.WorkingNumber;
import loomwright.ignition.ballast.BallastResult.Defect;
import loomwright.ignition.ballast.BallastResult.ElementFault;
import org.jspecify.annotations.Nullable;

/** Each element of a ballast with each defect, solved like the sound one. */
final class ElementFaults {
    private ElementFaults() {}

    /** Warm elements are taken as they are: the law of temperature does not apply to a short or a break. */
    static List<ElementFault> of(IgnitionFeed asked, FeedState sound) {
        IgnitionFeed feed = asked.frozen();
        List<ElementFault> faults = new ArrayList<>();
        for (int element = 0; element < feed.elements20Ohm().size(); element++) {
            for (Defect defect : Defect.values()) {
                faults.add(fault(feed, sound, element, defect));
            }
        }
        return faults;
    }

    private static ElementFault fault(IgnitionFeed feed, FeedState sound, int element, Defect defect) {
        double ohm = switch (defect) {
            case HALF_SHORTED -> feed.elements20Ohm().get(element) / 2;
            case SHORTED -> 2 * Bounds.MIN_RESISTANCE_OHM;
            case OPEN -> Bounds.MAX_RESISTANCE_OHM / 2;
        };
        IgnitionFeed faulty = feed.withElement(element, ohm);
        FeedState state = FeedSolver.states(faulty, false).get(Condition.RUN);
        if (state == null) {
            throw new IllegalStateException("key on was not solved");
        }
        double ballastOutV = state.readings().stream()
                .filter(reading -> reading.terminal().equals("ballast.b"))
                .findFirst()
                .orElseThrow()
                .contactsClosedV();
        Double ballastOhm = defect == Defect.OPEN
                ? null
                : (Double) faulty.elementsOhm().stream().mapToDouble(one -> one).sum();
        // An open element is one of so many ohms that what still flows is nothing to any meter.
        boolean open = defect == Defect.OPEN;
        return new ElementFault(
                element + 1,
                defect,
                ballastOhm,
                open ? 0 : state.currentA(),
                open ? 0 : state.coilV(),
                open ? 0 : ballastOutV,
                text(element + 1, defect, ballastOhm, state, sound, feed));
    }

    private static String text(
            int element,
            Defect defect,
            @Nullable Double ballastOhm,
            FeedState state,
            FeedState sound,
            IgnitionFeed feed) {
        if (defect == Defect.OPEN || ballastOhm == null) {
            return "Element " + element
                    + " open: no current and 0 V at the coil with the contacts closed, full supply up"
                    + " to the break; an ohmmeter across the ballast shows no connection"
                    + (feed.bypassTap() == null || feed.bypassTap() < element
                            ? "."
                            : ". The engine fires while cranking and stops when the key is let go.");
        }
        return "Element " + element + (defect == Defect.SHORTED ? " shorted: " : " half shorted: ")
                + WorkingNumber.of(state.coilV()) + " V at the coil instead of " + WorkingNumber.of(sound.coilV())
                + " V, "
                + WorkingNumber.of(state.currentA()) + " A instead of " + WorkingNumber.of(sound.currentA())
                + " A; an ohmmeter across the ballast shows " + WorkingNumber.of(ballastOhm) + " ohm.";
    }
}
