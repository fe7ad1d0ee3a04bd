package loomwright.ignition.ballast;

import java.util.Locale;
import loomwright.circuit.Condition;
import loomwright.ignition.WorkingNumber;
import loomwright.ignition.ballast.FeedState.Verdict;
import loomwright.judgement.ignition.CoilKind;
import loomwright.judgement.ignition.CoilWindow;

/** A coil's voltage against the window of its kind, and what that means in each condition. */
final class CoilVoltageVerdicts {
    private CoilVoltageVerdicts() {}

    static Verdict of(CoilWindow window, double coilV) {
        if (coilV < window.lowV()) {
            return Verdict.BELOW_WINDOW;
        }
        return coilV > window.highV() ? Verdict.ABOVE_WINDOW : Verdict.WITHIN_WINDOW;
    }

    static String text(IgnitionFeed feed, Verdict verdict, Condition condition, boolean bypassed, double coilV) {
        CoilWindow window = feed.windowIn(condition);
        CoilKind kind = CoilKind.ofOhm(feed.coil20Ohm(), feed.nominalVoltageV());
        String range = String.format(
                Locale.ROOT, "%s to %s V", WorkingNumber.of(window.lowV()), WorkingNumber.of(window.highV()));
        return WorkingNumber.of(coilV) + " V at the coil with the contacts closed. "
                + switch (kind) {
                    case HIGH_ENERGY -> "For this high-energy coil ";
                    case WITH_BALLAST -> "For this coil, which is made for use with a ballast, ";
                    case DIRECT -> "For this coil, which is made for direct feed, ";
                }
                + range + " is good." + meaning(kind, verdict, condition, bypassed);
    }

    private static String meaning(CoilKind kind, Verdict verdict, Condition condition, boolean bypassed) {
        return switch (verdict) {
            case WITHIN_WINDOW -> "";
            case BELOW_WINDOW ->
                kind == CoilKind.DIRECT
                        ? " The spark is weak. Remove the ballast, or find the poor joint."
                        : condition == Condition.CRANK && !bypassed
                                ? " A bypass raises it while cranking."
                                : " The spark is weak. The ballast is too large, or a joint is poor.";
            case ABOVE_WINDOW ->
                bypassed && condition == Condition.CRANK
                        ? " This is right while cranking, and only then."
                        : bypassed
                                ? " The bypass is still connected. The coil and the contacts overheat."
                                : " The coil and the contacts overheat.";
        };
    }
}
