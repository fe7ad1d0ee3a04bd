package loomwright.workshop;

import static loomwright.message.Arg.arg;

import java.util.ArrayList;
import java.util.List;
import loomwright.answer.Answer;
import loomwright.answer.Basis;
import loomwright.answer.Caution;
import loomwright.answer.Finding;
import loomwright.answer.InputErrors;
import loomwright.ignition.primary.CoilData;
import loomwright.ignition.primary.CoilPreset;
import loomwright.message.Message;
import org.jspecify.annotations.Nullable;

/** The condenser across contact points. */
public final class Condenser {
    public static final Basis ENERGY_BASIS = Basis.computed(
            "energy of the primary, L I^2 / 2, goes to condenser and secondary, C V^2 / 2: C = L (I / V)^2 - N^2 Cs",
            "OpenStax University Physics vol. 2, section 14.5 (oscillations of an LC circuit); without losses, so the volts"
                    + " are the highest that can be");
    public static final Basis USUAL_BASIS = Basis.commonPractice(
            "condenser of contact points: 0.18 to 0.25 uF, to 0.3 uF tolerated; at most 400 V across the points. No law is"
                    + " known for the arc that it prevents");

    /** Usual values, uF. Common practice, no source. */
    static final double USUAL_LEAST_UF = 0.18;

    static final double USUAL_MOST_UF = 0.25;
    private static final double TOLERATED_MOST_UF = 0.3;
    private static final double USUAL_UF = 0.22;
    private static final double MOST_V = 400;
    private static final double USUAL_WANTED_V = 300;
    private static final double USUAL_CURRENT_A = 4;

    private Condenser() {}

    /**
     * What is asked.
     *
     * @param coilKind whose figures stand for those left out; FOR_BALLAST unless said
     * @param inductanceMh of the primary, 0.2 to 100
     * @param turnsRatio secondary over primary, 20 to 300
     * @param secondaryCapacitancePf of coil and lead, 5 to 1000
     * @param currentA when the points open, 0.1 to 30; 4 unless said
     * @param pointsV the most that the points may see, 50 to 1000; 300 unless said
     * @param condenserUf one that is there, to be judged, 0.001 to 10
     */
    public record Input(
            @Nullable CoilPreset coilKind,
            @Nullable Double inductanceMh,
            @Nullable Double turnsRatio,
            @Nullable Double secondaryCapacitancePf,
            @Nullable Double currentA,
            @Nullable Double pointsV,
            @Nullable Double condenserUf) {
        public Input {
            new InputErrors()
                    .range("/inductanceMh", inductanceMh, 0.2, 100)
                    .range("/turnsRatio", turnsRatio, 20, 300)
                    .range("/secondaryCapacitancePf", secondaryCapacitancePf, 5, 1000)
                    .range("/currentA", currentA, 0.1, 30)
                    .range("/pointsV", pointsV, 50, 1000)
                    .range("/condenserUf", condenserUf, 0.001, 10)
                    .reject();
        }
    }

    /**
     * The answer.
     *
     * @param leastUf least that keeps the points below the wanted volts, 0 where the secondary alone does
     * @param usualLeastUf usual values, from
     * @param usualMostUf to
     * @param condenserUf the one judged: as given, or 0.22
     * @param pointsV what the points see with it, at most
     * @param findings what is wrong with it
     */
    public record Result(
            double leastUf,
            double usualLeastUf,
            double usualMostUf,
            double condenserUf,
            double pointsV,
            List<Finding> findings) {}

    /** Answers. */
    public static Answer<Result> calculate(Input input) {
        CoilData usual = (input.coilKind() == null ? CoilPreset.FOR_BALLAST : input.coilKind()).data();
        double inductanceH = or(input.inductanceMh(), usual.inductanceH() * 1e3) / 1e3;
        double ratio = or(input.turnsRatio(), usual.turnsRatio());
        double secondaryF = or(input.secondaryCapacitancePf(), usual.secondaryCapacitanceF() * 1e12) / 1e12;
        double currentA = or(input.currentA(), USUAL_CURRENT_A);
        double wantedV = or(input.pointsV(), USUAL_WANTED_V);
        double condenserUf = or(input.condenserUf(), USUAL_UF);

        double seenF = ratio * ratio * secondaryF;
        double leastF = inductanceH * Math.pow(currentA / wantedV, 2) - seenF;
        double pointsV = currentA * Math.sqrt(inductanceH / (condenserUf / 1e6 + seenF));
        List<Finding> findings = findings(condenserUf, pointsV);
        List<Message> working = List.of(
                WorkshopMessage.CONDENSER_LAW.with(
                        arg("currentA", currentA),
                        arg("inductanceMh", inductanceH * 1e3),
                        arg("secondaryUf", seenF * 1e6),
                        arg("condenserUf", condenserUf),
                        arg("pointsV", pointsV)),
                leastF > 0
                        ? WorkshopMessage.NO_LAW_FOR_ARC.with(
                                arg("leastUf", leastF * 1e6),
                                arg("wantedV", wantedV),
                                arg("usualLeastUf", USUAL_LEAST_UF),
                                arg("usualMostUf", USUAL_MOST_UF))
                        : WorkshopMessage.CONDENSER_SECONDARY_HOLDS.with(
                                arg("wantedV", wantedV),
                                arg("usualLeastUf", USUAL_LEAST_UF),
                                arg("usualMostUf", USUAL_MOST_UF)));
        return new Answer<>(
                new Result(Math.max(0, leastF * 1e6), USUAL_LEAST_UF, USUAL_MOST_UF, condenserUf, pointsV, findings),
                working,
                List.of(ENERGY_BASIS, USUAL_BASIS),
                List.of(Caution.HIGH_TENSION, Caution.LOCAL_CODES));
    }

    private static List<Finding> findings(double condenserUf, double pointsV) {
        List<Finding> findings = new ArrayList<>();
        Message remedy = WorkshopMessage.FIT_USUAL_CONDENSER.with(
                arg("usualLeastUf", USUAL_LEAST_UF), arg("usualMostUf", USUAL_MOST_UF));
        if (condenserUf < USUAL_LEAST_UF) {
            findings.add(
                    Finding.warning(WorkshopMessage.CONDENSER_SMALL.with(arg("condenserUf", condenserUf)), USUAL_BASIS)
                            .remedy(remedy));
        } else if (condenserUf > TOLERATED_MOST_UF) {
            findings.add(
                    Finding.note(WorkshopMessage.CONDENSER_LARGE.with(arg("condenserUf", condenserUf)), USUAL_BASIS)
                            .remedy(remedy));
        }
        if (pointsV > MOST_V) {
            findings.add(Finding.warning(
                    WorkshopMessage.CONDENSER_VOLTS_HIGH.with(arg("pointsV", pointsV), arg("limitV", MOST_V)),
                    USUAL_BASIS));
        }
        return findings;
    }

    private static double or(@Nullable Double given, double usual) {
        return given == null ? usual : given;
    }
}
