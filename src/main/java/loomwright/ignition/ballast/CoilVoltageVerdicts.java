package loomwright.ignition.ballast;

import java.util.Locale;
import loomwright.circuit.Condition;
import loomwright.ignition.WorkingNumber;
import loomwright.ignition.ballast.FeedState.Verdict;

/** A coil's voltage against the window of the trade, and what that means in each condition. */
final class CoilVoltageVerdicts {
    private CoilVoltageVerdicts() {}

    static Verdict of(IgnitionFeed.Window window, double coilV) {
        if (coilV < window.lowV()) {
            return Verdict.BELOW_WINDOW;
        }
        return coilV > window.highV() ? Verdict.ABOVE_WINDOW : Verdict.WITHIN_WINDOW;
    }

    static String text(
            Verdict verdict, Condition condition, boolean bypassed, IgnitionFeed.Window window, double coilV) {
        String range = String.format(
                Locale.ROOT, "%s to %s V", WorkingNumber.of(window.lowV()), WorkingNumber.of(window.highV()));
        String at = WorkingNumber.of(coilV) + " V at the coil with the contacts closed, "
                + switch (verdict) {
                    case BELOW_WINDOW -> "below the usual ";
                    case WITHIN_WINDOW -> "within the usual ";
                    case ABOVE_WINDOW -> "above the usual ";
                }
                + range;
        return at + meaning(verdict, condition, bypassed);
    }

    private static String meaning(Verdict verdict, Condition condition, boolean bypassed) {
        return switch (verdict) {
            case WITHIN_WINDOW -> ".";
            case BELOW_WINDOW ->
                condition == Condition.CRANK && !bypassed
                        ? ": this is what a bypass is for."
                        : ": the spark will be weak; too much ballast, a poor joint, or a coil meant for direct feed.";
            case ABOVE_WINDOW ->
                bypassed && condition == Condition.CRANK
                        ? ": right for the moment of starting, and only for that."
                        : bypassed
                                ? ": the bypass is still joined; coil and contacts will run too hot."
                                : ": coil and contacts will run too hot unless the coil is meant for direct feed.";
        };
    }
}
