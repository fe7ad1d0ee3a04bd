package loomwright.workshop;

import static loomwright.message.Arg.arg;

import java.util.ArrayList;
import java.util.List;
import loomwright.answer.Answer;
import loomwright.answer.Basis;
import loomwright.answer.Caution;
import loomwright.answer.Finding;
import loomwright.answer.InputError;
import loomwright.answer.InputErrors;
import loomwright.circuit.UsualVoltages;
import loomwright.circuit.VehicleSystem;
import loomwright.ignition.primary.CoilPreset;
import loomwright.ignition.primary.EngineHeat;
import loomwright.judgement.Level;
import loomwright.judgement.ignition.IgnitionMistake;
import loomwright.judgement.ignition.IgnitionRule;
import loomwright.judgement.ignition.PrimaryLoop;
import loomwright.message.Message;
import org.jspecify.annotations.Nullable;

/** Which coil suits a ballast, points or a module: every coil is put to the judge of ignitions. */
public final class CoilChoice {
    private static final double LEAST_OHM = 0.2;
    private static final double MOST_OHM = 20;
    /** From one coil that is tried to the next. */
    private static final double STEP = 1.01;

    private static final double USUAL_FEED_OHM = 0.05;
    private static final double MODULE_DROP_V = 1;
    private static final double POINTS_DROP_V = 0.15;
    private static final double NOMINAL_V = 12;

    private CoilChoice() {}

    /** What breaks the primary. */
    public enum SwitchedBy {
        CONTACT_BREAKER,
        MODULE
    }

    /**
     * What is asked.
     *
     * @param nominalVoltageV 6, 12 or 24; 12 unless said
     * @param ballastOhm 0 to 20; 0 unless said
     * @param switchedBy CONTACT_BREAKER unless said
     * @param moduleLimitA what a module limits the current to, 1 to 30; absent: it does not limit
     * @param switchRatingA what points or module may carry, 0.5 to 30
     * @param feedResistanceOhm out and back without ballast, 0 to 10; 0.05 unless said
     */
    public record Input(
            @Nullable Integer nominalVoltageV,
            @Nullable Double ballastOhm,
            @Nullable SwitchedBy switchedBy,
            @Nullable Double moduleLimitA,
            @Nullable Double switchRatingA,
            @Nullable Double feedResistanceOhm) {
        public Input {
            VehicleSystem.checkNominal(new InputErrors(), nominalVoltageV)
                    .range("/ballastOhm", ballastOhm, 0, 20)
                    .range("/moduleLimitA", moduleLimitA, 1, 30)
                    .range("/switchRatingA", switchRatingA, 0.5, 30)
                    .range("/feedResistanceOhm", feedResistanceOhm, 0, 10)
                    .check(
                            moduleLimitA == null || switchedBy == SwitchedBy.MODULE,
                            InputError.Code.CONTRADICTION,
                            "/moduleLimitA",
                            moduleLimitA,
                            AcceptedBench.ONLY_WITH,
                            arg("name", "switchedBy"),
                            arg("value", "module"))
                    .reject();
        }

        PrimaryLoop with(double coilOhm) {
            double nominalV = nominalVoltageV == null ? NOMINAL_V : nominalVoltageV;
            boolean module = switchedBy == SwitchedBy.MODULE;
            return new PrimaryLoop(
                    nominalV,
                    UsualVoltages.CHARGING_V * nominalV / NOMINAL_V,
                    feedResistanceOhm == null ? USUAL_FEED_OHM : feedResistanceOhm,
                    ballastOhm == null ? 0 : ballastOhm,
                    false,
                    coilOhm,
                    new PrimaryLoop.PrimaryContact(
                            module ? MODULE_DROP_V : POINTS_DROP_V, module, moduleLimitA, switchRatingA),
                    EngineHeat.usual(PrimaryLoop.USUAL_DWELL, coilOhm, null));
        }
    }

    /** Coils of these ohms have no finding. */
    public record Range(double fromOhm, double toOhm) {}

    /**
     * One kind of coil of the trade.
     *
     * @param coilKind which
     * @param primaryOhm its usual ohms
     * @param level worst of what is found
     * @param mistakes codes of what is found
     * @param closedA current with the primary closed, engine running
     * @param restHeatW heat in it with the key left on
     */
    public record Kind(
            CoilPreset coilKind,
            double primaryOhm,
            Level level,
            List<String> mistakes,
            double closedA,
            double restHeatW) {}

    /**
     * The answer.
     *
     * @param suitable ohms of the primary that suit, in rising order; empty if no coil does
     * @param kinds the usual coils, each judged
     */
    public record Result(List<Range> suitable, List<Kind> kinds, List<Finding> findings) {}

    /** Answers. */
    public static Answer<Result> choose(Input input) {
        List<Range> suitable = suitable(input);
        List<Kind> kinds = new ArrayList<>();
        List<Message> working = new ArrayList<>();
        for (CoilPreset preset : CoilPreset.values()) {
            double ohm = preset.data().primaryResistanceOhm();
            PrimaryLoop loop = input.with(ohm);
            kinds.add(new Kind(
                    preset,
                    ohm,
                    IgnitionRule.level(loop),
                    IgnitionRule.judge(loop).stream()
                            .map(IgnitionMistake::kind)
                            .map(IgnitionMistake.Kind::code)
                            .toList(),
                    loop.runningA(),
                    loop.restHeatW()));
            working.add(WorkshopMessage.COIL_CURRENT.with(
                    arg("coilOhm", ohm),
                    arg("closedA", loop.runningA()),
                    arg("restHeatW", loop.restHeatW()),
                    arg("switchedBy", loop.contact().module() ? "module" : "points")));
        }
        List<Finding> findings = suitable.isEmpty()
                ? List.of(Finding.warning(WorkshopMessage.NO_COIL_SUITS.with(), IgnitionRule.COMBINATION_BASIS)
                        .remedy(WorkshopMessage.CHANGE_BALLAST.with()))
                : List.of();
        return new Answer<>(
                new Result(suitable, kinds, findings),
                working,
                List.of(
                        IgnitionRule.COMBINATION_BASIS,
                        IgnitionRule.HEAT_BASIS,
                        IgnitionRule.CONTACTS_BASIS,
                        IgnitionRule.MODULE_BASIS,
                        Basis.commonPractice("feed 0.05 ohm, supply while running 1.18 times the nominal voltage")),
                List.of(Caution.HIGH_TENSION, Caution.HOT_BALLAST, Caution.LOCAL_CODES));
    }

    private static List<Range> suitable(Input input) {
        List<Range> found = new ArrayList<>();
        Double from = null;
        double last = 0;
        for (double ohm = LEAST_OHM; ohm <= MOST_OHM; ohm *= STEP) {
            boolean suits = IgnitionRule.level(input.with(ohm)) == Level.FITS;
            if (suits && from == null) {
                from = ohm;
            } else if (!suits && from != null) {
                found.add(new Range(from, last));
                from = null;
            }
            last = ohm;
        }
        if (from != null) {
            found.add(new Range(from, last));
        }
        return found;
    }
}
