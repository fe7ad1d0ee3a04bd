package loomwright.ignition.change;

import static loomwright.message.Arg.arg;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import loomwright.answer.Basis;
import loomwright.answer.Finding;
import loomwright.answer.Severity;
import loomwright.ignition.UsualIgnition;
import loomwright.ignition.change.ChangeInput.BypassFrom;
import loomwright.ignition.spark.SparkInput;
import loomwright.ignition.spark.SparkResult;
import loomwright.message.Arg;
import loomwright.message.Message;

/** What a bypass does that stays in place. */
final class BypassFindings {
    /** Findings of a starter that turns unintentionally. */
    static final Set<ChangeFinding> TURNS_THE_STARTER =
            EnumSet.of(ChangeFinding.BYPASS_STARTS_ENGINE, ChangeFinding.BYPASS_HOLDS_STARTER);

    /** 13 A at 10 V: Army manual TM 5-2420-230-24-2, hold-in winding of a 12 V solenoid. */
    private static final double SOLENOID_OHM = 0.77;

    private final ChangeInput input;
    private final SparkResult before;
    private final SparkResult after;
    private final List<Finding> findings = new ArrayList<>();
    private final List<Message> working = new ArrayList<>();

    BypassFindings(ChangeInput input, SparkResult before, SparkResult after) {
        this.input = input;
        this.before = before;
        this.after = after;
    }

    List<Finding> list() {
        bypass();
        return findings;
    }

    List<Message> working() {
        return working;
    }

    private void bypass() {
        if (!Boolean.TRUE.equals(input.bypass().bypassLeft())) {
            return;
        }
        double ballastOhm = ballastOhm(input.after());
        Arg ballastResistanceOhm = arg("ballastResistanceOhm", ballastOhm);
        if (ballastOhm == 0) {
            findings.add(Finding.warning(
                            ChangeFinding.BYPASS_WITHOUT_BALLAST.with(ballastResistanceOhm),
                            Basis.commonPractice("a bypass serves a ballast; without one it goes"))
                    .about(List.of("bypass"))
                    .remedy(ChangeFinding.REMOVE_BYPASS.with()));
        }
        BypassFrom given = input.bypass().bypassFrom();
        if (given != null && given != BypassFrom.START_WIRE) {
            findings.add(Finding.of(
                            ballastOhm == 0 ? Severity.WARNING : Severity.NOTE,
                            ChangeFinding.BYPASS_NOT_ISOLATED.with(
                                    ballastResistanceOhm, arg("ballast", ballastOhm == 0 ? "no" : "yes")),
                            Basis.commonPractice("two feeds joined at one terminal feed each other"))
                    .about(List.of("bypass"))
                    .remedy(ballastOhm == 0 ? ChangeFinding.REMOVE_BYPASS_OR_FIT_DIODE.with() : null));
            return;
        }
        startWire(ballastOhm);
    }

    private void startWire(double ballastOhm) {
        Double given = input.bypass().solenoidOhm();
        double solenoidOhm = given == null ? SOLENOID_OHM : given;
        BypassLeft was = left(input.before(), before, solenoidOhm);
        BypassLeft is = left(input.after(), after, solenoidOhm);
        working.add(ChangeText.BYPASS_AT_START_WIRE.with(
                arg("solenoidOhm", solenoidOhm), arg("beforeV", was.solenoidV()), arg("afterV", is.solenoidV())));
        Arg[] figures = {
            arg("solenoidV", is.solenoidV()),
            arg("beforeSolenoidV", was.solenoidV()),
            arg("bypassA", is.wireA()),
            arg("ballast", ballastOhm > 0 ? "yes" : "no")
        };
        Basis basis = Basis.commonPractice("a solenoid pulls in from 7 to 8 V and holds down to 3 to 5 V at 12 V");
        Finding found;
        if (is.pullsIn()) {
            found = Finding.danger(ChangeFinding.BYPASS_STARTS_ENGINE.with(figures), basis)
                    .remedy(ChangeFinding.REMOVE_BYPASS_OR_FIT_DIODE.with());
        } else if (is.holds()) {
            found = Finding.danger(ChangeFinding.BYPASS_HOLDS_STARTER.with(figures), basis)
                    .remedy(ChangeFinding.MOVE_BYPASS_OR_FIT_DIODE.with());
        } else {
            found = Finding.note(ChangeFinding.BYPASS_FEEDS_BACK.with(figures), basis);
        }
        findings.add(found.about(List.of("bypass", "solenoid")));
        if (ballastOhm == 0 || is.holds()) {
            return;
        }
        working.add(ChangeText.BALLAST_KEEPS_SOLENOID_OUT.with(arg("ballastOhm", ballastOhm)));
    }

    private static BypassLeft left(SparkInput side, SparkResult result, double solenoidOhm) {
        Double feedOhm = side.feed().feedResistanceOhm();
        double currentA = result.closed().currentA();
        double coilOhm = currentA > 0 ? result.closed().coilV() / currentA : 1;
        return BypassLeft.of(
                result.at().supplyV(),
                feedOhm == null ? UsualIgnition.FEED_OHM : feedOhm,
                ballastOhm(side),
                coilOhm,
                solenoidOhm);
    }

    private static double ballastOhm(SparkInput side) {
        Double ohm = side.feed().ballastResistanceOhm();
        return ohm == null ? 0 : ohm;
    }
}
