package loomwright.ignition.ballast;

import java.util.List;
import org.jspecify.annotations.Nullable;

/** Feeds that the tests ask about. */
final class Feeds {
    private Feeds() {}

    /** A feed without resistance but for the elements, the coil and what is said. */
    static BallastInput ideal(List<Double> elementsOhm, @Nullable Integer tap, double coilOhm) {
        return with(elementsOhm, tap, coilOhm, null, 0, 0);
    }

    static BallastInput with(
            List<Double> elementsOhm,
            @Nullable Integer tap,
            double coilOhm,
            @Nullable Double nominalVoltageV,
            double feedOhm,
            double bypassOhm) {
        return new BallastInput(
                nominalVoltageV,
                elementsOhm,
                tap,
                null,
                null,
                null,
                null,
                feedOhm,
                null,
                null,
                null,
                null,
                tap == null ? null : bypassOhm,
                coilOhm,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null);
    }

    static BallastInput turned(BallastInput input) {
        return new BallastInput(
                input.nominalVoltageV(),
                input.elementsOhm(),
                input.bypassTap(),
                true,
                input.supplyAtRestV(),
                input.supplyCrankingV(),
                input.supplyChargingV(),
                input.feedResistanceOhm(),
                null,
                null,
                null,
                input.returnResistanceOhm(),
                input.bypassResistanceOhm(),
                input.coilPrimaryOhm(),
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                input.moduleLeastV());
    }

    /** One element, a supply at rest, a module or contacts, temperatures. */
    static BallastInput warm(
            double supplyV, double ballastOhm, double perK, @Nullable Double ballastKPerW, @Nullable Double coilKPerW) {
        return new BallastInput(
                null,
                List.of(ballastOhm),
                null,
                null,
                supplyV,
                null,
                null,
                0.05,
                null,
                null,
                null,
                null,
                null,
                1.5,
                null,
                null,
                null,
                0.6,
                20.0,
                null,
                null,
                perK,
                ballastKPerW,
                coilKPerW,
                null,
                null,
                null);
    }

    static BallastInput module(double supplyV, double ballastOhm, double dropV, @Nullable Double limitA) {
        return new BallastInput(
                null,
                List.of(ballastOhm),
                null,
                null,
                supplyV,
                null,
                null,
                0.05,
                null,
                null,
                null,
                0.02,
                null,
                1.5,
                null,
                dropV,
                limitA,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null);
    }

    /** One element of iron wire, hot, before a coil of 1.5 ohm. */
    static BallastInput hotIron(double elementOhm, double ballastC) {
        return new BallastInput(
                null,
                List.of(elementOhm),
                null,
                null,
                null,
                null,
                null,
                0.0,
                null,
                null,
                null,
                null,
                null,
                1.5,
                0.0,
                null,
                null,
                null,
                20.0,
                20.0,
                ballastC,
                0.0065,
                null,
                null,
                null,
                null,
                null);
    }

    /** A feed wire by its size and length, in feet or metres. */
    static BallastInput byWire(String size, @Nullable Double lengthM, @Nullable Double lengthFt) {
        return new BallastInput(
                null,
                List.of(1.5),
                null,
                null,
                12.6,
                null,
                null,
                null,
                size,
                lengthM,
                lengthFt,
                null,
                null,
                1.5,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null);
    }
}
