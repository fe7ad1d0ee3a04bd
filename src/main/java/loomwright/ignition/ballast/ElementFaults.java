package loomwright.ignition.ballast;

import static loomwright.message.Arg.arg;

import java.util.ArrayList;
import java.util.List;
import loomwright.circuit.Bounds;
import loomwright.circuit.Condition;
import loomwright.ignition.ballast.BallastResult.Defect;
import loomwright.ignition.ballast.BallastResult.ElementFault;
import loomwright.message.Message;
import org.jspecify.annotations.Nullable;

/** Each element of a ballast with each defect, solved like the sound one. */
final class ElementFaults {
    private ElementFaults() {}

    /** Warm elements are taken as they are: the law of temperature does not apply to a short or a break. */
    static List<ElementFault> of(IgnitionFeed asked, FeedState sound) {
        IgnitionFeed feed = asked.frozen();
        List<ElementFault> faults = new ArrayList<>();
        for (int element = 0; element < feed.ballast().elements20Ohm().size(); element++) {
            for (Defect defect : Defect.values()) {
                faults.add(fault(feed, sound, element, defect));
            }
        }
        return faults;
    }

    private static ElementFault fault(IgnitionFeed feed, FeedState sound, int element, Defect defect) {
        double ohm = switch (defect) {
            case HALF_SHORTED -> feed.ballast().elements20Ohm().get(element) / 2;
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
                open ? 0 : state.electric().currentA(),
                open ? 0 : state.electric().coilV(),
                open ? 0 : ballastOutV,
                effect(element + 1, defect, ballastOhm, state, sound, feed));
    }

    private static Message effect(
            int element,
            Defect defect,
            @Nullable Double ballastOhm,
            FeedState state,
            FeedState sound,
            IgnitionFeed feed) {
        if (defect == Defect.OPEN || ballastOhm == null) {
            Integer tap = feed.ballast().bypassTap();
            return BallastText.ELEMENT_OPEN.with(
                    arg("element", element), arg("bypassed", tap == null || tap < element ? "no" : "yes"));
        }
        return BallastText.ELEMENT_SHORTED.with(
                arg("element", element),
                arg("how", defect == Defect.SHORTED ? "whole" : "half"),
                arg("coilV", state.electric().coilV()),
                arg("soundV", sound.electric().coilV()),
                arg("currentA", state.electric().currentA()),
                arg("soundA", sound.electric().currentA()),
                arg("ballastOhm", ballastOhm));
    }
}
