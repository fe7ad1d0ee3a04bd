package loomwright.workshop;

import static loomwright.message.Arg.arg;
import static loomwright.message.Arg.texts;

import java.util.ArrayList;
import java.util.List;
import loomwright.answer.Accepted;
import loomwright.answer.Answer;
import loomwright.answer.Basis;
import loomwright.answer.Caution;
import loomwright.answer.InputError;
import loomwright.answer.InputErrors;
import loomwright.message.Message;
import org.jspecify.annotations.Nullable;

/** The length of resistance wire that has so many ohms, and the heat along it. */
public final class ResistanceWire {
    public static final Basis LAW =
            Basis.computed("length = R / (ohms per metre), ohms per metre = resistivity / area", "Ohm's law");
    public static final Basis ALLOYS = Basis.fromMemory(
            "resistivity at 20 C: constantan 0.49, manganin 0.44, nickel-chromium 1.00 ohm mm2/m",
            "OpenStax College Physics, section 20.3, table of resistivities");

    private ResistanceWire() {}

    /** An alloy. */
    public enum Alloy {
        CONSTANTAN(0.49),
        MANGANIN(0.44),
        NICKEL_CHROMIUM(1.00);

        private final double ohmMm2PerM;

        Alloy(double ohmMm2PerM) {
            this.ohmMm2PerM = ohmMm2PerM;
        }

        /** Ohms of a metre of one square millimetre, at 20 degrees. */
        double ohmMm2PerM() {
            return ohmMm2PerM;
        }
    }

    /**
     * What is asked: ohms per metre, or alloy and diameter.
     *
     * @param wantedOhm required, 0.01 to 1000
     * @param ohmPerM as printed on the reel, 0.001 to 1000
     * @param alloy with its diameter
     * @param diameterMm bare, 0.05 to 5
     * @param currentA through it, 0.001 to 100, for the heat
     */
    public record Input(
            @Nullable Double wantedOhm,
            @Nullable Double ohmPerM,
            @Nullable Alloy alloy,
            @Nullable Double diameterMm,
            @Nullable Double currentA) {
        public Input {
            InputErrors faults = new InputErrors()
                    .required("/wantedOhm", wantedOhm)
                    .range("/wantedOhm", wantedOhm, 0.01, 1000)
                    .range("/ohmPerM", ohmPerM, 0.001, 1000)
                    .range("/diameterMm", diameterMm, 0.05, 5)
                    .range("/currentA", currentA, 0.001, 100);
            faults.reject();
            faults.check(
                            ohmPerM != null || (alloy != null && diameterMm != null),
                            InputError.Code.MISSING,
                            "/ohmPerM",
                            null,
                            AcceptedBench.WIRE,
                            arg("first", "ohmPerM"),
                            texts("second", List.of("alloy", "diameterMm")))
                    .check(
                            ohmPerM == null || alloy == null,
                            InputError.Code.CONTRADICTION,
                            "/alloy",
                            alloy,
                            Accepted.NOT_BOTH,
                            arg("first", "ohmPerM"),
                            arg("second", "alloy"))
                    .reject();
        }
    }

    /**
     * The answer.
     *
     * @param lengthM to cut
     * @param ohmPerM of the wire
     * @param heatW in the whole length; absent without a current
     * @param heatWPerM along it; absent likewise
     * @param surfaceWPerCm2 of its surface; absent without current or diameter
     */
    public record Result(
            double lengthM,
            double ohmPerM,
            @Nullable Double heatW,
            @Nullable Double heatWPerM,
            @Nullable Double surfaceWPerCm2) {}

    /** Answers. */
    public static Answer<Result> cut(Input input) {
        double wantedOhm = input.wantedOhm() == null ? 0 : input.wantedOhm();
        Double diameterMm = input.diameterMm();
        double ohmPerM = ohmPerM(input);
        double lengthM = wantedOhm / ohmPerM;
        Double currentA = input.currentA();
        Double heatW = currentA == null ? null : Double.valueOf(currentA * currentA * wantedOhm);
        Double perM = heatW == null ? null : Double.valueOf(heatW / lengthM);
        List<Message> working = new ArrayList<>(List.of(WorkshopMessage.WIRE_LAW.with(
                arg("wantedOhm", wantedOhm), arg("ohmPerM", ohmPerM), arg("lengthM", lengthM))));
        if (heatW != null && perM != null) {
            working.add(WorkshopMessage.WIRE_HEAT.with(arg("heatW", heatW), arg("heatWPerM", perM)));
        }
        return new Answer<>(
                new Result(
                        lengthM,
                        ohmPerM,
                        heatW,
                        perM,
                        perM == null || diameterMm == null
                                ? null
                                : Double.valueOf(perM / (Math.PI * diameterMm / 10 * 100))),
                working,
                List.of(LAW, ALLOYS),
                List.of(Caution.HOT_BALLAST, Caution.LOCAL_CODES));
    }

    private static double ohmPerM(Input input) {
        Double given = input.ohmPerM();
        Alloy alloy = input.alloy();
        Double diameterMm = input.diameterMm();
        return given != null || alloy == null || diameterMm == null
                ? given == null ? 1 : given
                : alloy.ohmMm2PerM() / (Math.PI * diameterMm * diameterMm / 4);
    }
}
