package loomwright.ignition.change;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import loomwright.answer.Basis;
import loomwright.answer.Finding;
import loomwright.answer.Severity;
import loomwright.ignition.WorkingNumber;
import loomwright.ignition.change.ChangeInput.BypassFrom;
import loomwright.ignition.spark.SparkInput;
import loomwright.ignition.spark.SparkResult;

/** What a bypass does that stays in place. */
final class BypassFindings {
    private static final String STARTS_ENGINE = "bypass-starts-engine";
    private static final String HOLDS_STARTER = "bypass-holds-starter";
    /** Codes of findings of a starter that turns unasked. */
    static final Set<String> TURNS_THE_STARTER = Set.of(STARTS_ENGINE, HOLDS_STARTER);

    /** 13 A at 10 V: Army manual TM 5-2420-230-24-2, hold-in winding of a 12 V solenoid. */
    private static final double SOLENOID_OHM = 0.77;

    private final ChangeInput input;
    private final SparkResult before;
    private final SparkResult after;
    private final List<Finding> findings = new ArrayList<>();
    private final List<String> working = new ArrayList<>();

    BypassFindings(ChangeInput input, SparkResult before, SparkResult after) {
        this.input = input;
        this.before = before;
        this.after = after;
    }

    List<Finding> list() {
        bypass();
        return findings;
    }

    List<String> working() {
        return working;
    }

    private void bypass() {
        if (!Boolean.TRUE.equals(input.bypassLeft())) {
            return;
        }
        double ballastOhm = ballastOhm(input.after());
        if (ballastOhm == 0) {
            findings.add(new Finding(
                    Severity.WARNING,
                    "bypass-without-ballast",
                    List.of("bypass"),
                    "The ballast is gone and the bypass is still there: it bypasses nothing, and joins two feeds at the"
                            + " coil.",
                    List.of(new Finding.Figure("ballastResistanceOhm", 0)),
                    Basis.commonPractice("a bypass serves a ballast; without one it goes"),
                    "Take the bypass off at both ends and insulate what stays."));
        }
        BypassFrom given = input.bypassFrom();
        if (given != null && given != BypassFrom.START_WIRE) {
            findings.add(new Finding(
                    ballastOhm == 0 ? Severity.WARNING : Severity.NOTE,
                    "bypass-not-isolated",
                    List.of("bypass"),
                    ballastOhm == 0
                            ? "While cranking the bypass joins its contact to the ignition feed with nothing between:"
                                    + " everything at the key's ignition terminal is fed through the thin bypass wire too,"
                                    + " and stays alive while the starter turns, even with the key's contact open."
                            : "While cranking the bypass feeds back through the ballast of "
                                    + WorkingNumber.of(ballastOhm)
                                    + " ohm into the ignition feed: small as long as the ballast is there.",
                    List.of(new Finding.Figure("ballastResistanceOhm", ballastOhm)),
                    Basis.commonPractice("two feeds joined at one terminal feed each other"),
                    ballastOhm == 0 ? "Take the bypass off at both ends, or put a diode into it." : null));
            return;
        }
        startWire(ballastOhm);
    }

    private void startWire(double ballastOhm) {
        Double given = input.solenoidOhm();
        double solenoidOhm = given == null ? SOLENOID_OHM : given;
        BypassLeft was = left(input.before(), before, solenoidOhm);
        BypassLeft is = left(input.after(), after, solenoidOhm);
        working.add(
                "Bypass at the start wire, key on: solved as a plan, the solenoid of " + WorkingNumber.of(solenoidOhm)
                        + " ohm has " + IgnitionChange.beforeAndAfter(was.solenoidV(), is.solenoidV(), "V"));
        String volts = WorkingNumber.of(is.solenoidV()) + " V at the solenoid with the key on (before: "
                + WorkingNumber.of(was.solenoidV()) + " V), " + WorkingNumber.of(is.wireA())
                + " A through the bypass wire";
        List<Finding.Figure> figures = List.of(
                new Finding.Figure("solenoidV", is.solenoidV()),
                new Finding.Figure("beforeSolenoidV", was.solenoidV()),
                new Finding.Figure("bypassA", is.wireA()));
        Basis basis = Basis.commonPractice("a solenoid pulls in from 7 to 8 V and holds down to 3 to 5 V at 12 V");
        if (is.pullsIn()) {
            findings.add(new Finding(
                    Severity.DANGER,
                    STARTS_ENGINE,
                    List.of("bypass", "solenoid"),
                    "The bypass joins the ignition feed to the start wire: " + volts
                            + ". The starter turns as soon as the key is on, and does not stop.",
                    figures,
                    basis,
                    "Take the bypass off at both ends. If it has to stay, feed it from a contact of its own or put a"
                            + " diode into it."));
        } else if (is.holds()) {
            findings.add(new Finding(
                    Severity.DANGER,
                    HOLDS_STARTER,
                    List.of("bypass", "solenoid"),
                    "The bypass feeds back into the start wire: " + volts
                            + ". Once pulled in, the starter is held after the key is let go.",
                    figures,
                    basis,
                    "Feed the bypass from a contact of its own, or put a diode into it."));
        } else {
            findings.add(new Finding(
                    Severity.NOTE,
                    "bypass-feeds-back",
                    List.of("bypass", "solenoid"),
                    "The bypass feeds back into the start wire: " + volts + ", too little to hold the starter"
                            + (ballastOhm > 0 ? " as long as the ballast is there" : "") + ".",
                    figures,
                    basis,
                    null));
        }
        if (ballastOhm == 0 || is.holds()) {
            return;
        }
        working.add("The ballast of " + WorkingNumber.of(ballastOhm) + " ohm is what keeps the solenoid out.");
    }

    private static BypassLeft left(SparkInput side, SparkResult result, double solenoidOhm) {
        Double feedOhm = side.feed().feedResistanceOhm();
        double currentA = result.closed().currentA();
        double coilOhm = currentA > 0 ? result.closed().coilV() / currentA : 1;
        return BypassLeft.of(
                result.at().supplyV(), feedOhm == null ? 0.05 : feedOhm, ballastOhm(side), coilOhm, solenoidOhm);
    }

    private static double ballastOhm(SparkInput side) {
        Double ohm = side.feed().ballastResistanceOhm();
        return ohm == null ? 0 : ohm;
    }
}
