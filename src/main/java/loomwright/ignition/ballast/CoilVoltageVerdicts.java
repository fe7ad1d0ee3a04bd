package loomwright.ignition.ballast;

import static loomwright.message.Arg.arg;

import java.util.Locale;
import loomwright.circuit.Condition;
import loomwright.ignition.ballast.FeedState.Verdict;
import loomwright.judgement.ignition.CoilKind;
import loomwright.judgement.ignition.CoilWindow;
import loomwright.message.Message;

/** A coil's voltage against the window of its kind, and what that means in each condition. */
final class CoilVoltageVerdicts {
    /** A module's limit is the edge of its window: the current that it holds is within it. */
    private static final double ROUNDING = 1e-9;

    private CoilVoltageVerdicts() {}

    static Verdict of(CoilWindow window, double coilV) {
        if (coilV < window.lowV()) {
            return Verdict.BELOW_WINDOW;
        }
        return coilV > window.highV() * (1 + ROUNDING) ? Verdict.ABOVE_WINDOW : Verdict.WITHIN_WINDOW;
    }

    static Message message(IgnitionFeed feed, Verdict verdict, Condition condition, boolean bypassed, double coilV) {
        CoilWindow window = feed.windowIn(condition);
        CoilKind kind = CoilKind.ofOhm(feed.coil20Ohm(), feed.nominalVoltageV());
        return BallastText.COIL_VERDICT.with(
                arg("coilV", coilV),
                arg("kind", kind.name().toLowerCase(Locale.ROOT).replace('_', '-')),
                arg("lowV", window.lowV()),
                arg("highV", window.highV()),
                arg("meaning", meaning(kind, verdict, condition, bypassed)));
    }

    private static String meaning(CoilKind kind, Verdict verdict, Condition condition, boolean bypassed) {
        boolean cranking = condition == Condition.CRANK;
        return switch (verdict) {
            case WITHIN_WINDOW -> "good";
            case BELOW_WINDOW ->
                kind == CoilKind.DIRECT ? "weak-direct" : cranking && !bypassed ? "weak-without-bypass" : "weak";
            case ABOVE_WINDOW -> !bypassed ? "hot" : cranking ? "bypassed-cranking" : "bypass-stays";
        };
    }
}
