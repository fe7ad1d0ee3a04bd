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
                new BallastInput.BallastElements(elementsOhm, tap, null),
                new BallastInput.SupplyVolts(null, null, null),
                new BallastInput.PrimaryLeads(feedOhm, null, null, null, null, tap == null ? null : bypassOhm),
                coilOhm,
                new BallastInput.ClosedSwitch(null, null, null, null),
                null,
                new BallastInput.Warmth(null, null, null, null, null, null),
                new BallastInput.VoltsWindow(null, null));
    }

    static BallastInput turned(BallastInput input) {
        return new BallastInput(
                input.nominalVoltageV(),
                new BallastInput.BallastElements(
                        input.ballast().elementsOhm(), input.ballast().bypassTap(), true),
                input.supply(),
                new BallastInput.PrimaryLeads(
                        input.leads().feedResistanceOhm(),
                        null,
                        null,
                        null,
                        input.leads().returnResistanceOhm(),
                        input.leads().bypassResistanceOhm()),
                input.coilPrimaryOhm(),
                new BallastInput.ClosedSwitch(
                        null, null, null, input.primarySwitch().moduleLeastV()),
                null,
                new BallastInput.Warmth(null, null, null, null, null, null),
                new BallastInput.VoltsWindow(null, null));
    }

    /** One element, a supply at rest, a module or contacts, temperatures. */
    static BallastInput warm(
            double supplyV, double ballastOhm, double perK, @Nullable Double ballastKPerW, @Nullable Double coilKPerW) {
        return new BallastInput(
                null,
                new BallastInput.BallastElements(List.of(ballastOhm), null, null),
                new BallastInput.SupplyVolts(supplyV, null, null),
                new BallastInput.PrimaryLeads(0.05, null, null, null, null, null),
                1.5,
                new BallastInput.ClosedSwitch(null, null, null, null),
                0.6,
                new BallastInput.Warmth(20.0, null, null, perK, ballastKPerW, coilKPerW),
                new BallastInput.VoltsWindow(null, null));
    }

    static BallastInput module(double supplyV, double ballastOhm, double dropV, @Nullable Double limitA) {
        return new BallastInput(
                null,
                new BallastInput.BallastElements(List.of(ballastOhm), null, null),
                new BallastInput.SupplyVolts(supplyV, null, null),
                new BallastInput.PrimaryLeads(0.05, null, null, null, 0.02, null),
                1.5,
                new BallastInput.ClosedSwitch(null, dropV, limitA, null),
                null,
                new BallastInput.Warmth(null, null, null, null, null, null),
                new BallastInput.VoltsWindow(null, null));
    }

    /** One element of iron wire, hot, before a coil of 1.5 ohm. */
    static BallastInput hotIron(double elementOhm, double ballastC) {
        return new BallastInput(
                null,
                new BallastInput.BallastElements(List.of(elementOhm), null, null),
                new BallastInput.SupplyVolts(null, null, null),
                new BallastInput.PrimaryLeads(0.0, null, null, null, null, null),
                1.5,
                new BallastInput.ClosedSwitch(0.0, null, null, null),
                null,
                new BallastInput.Warmth(20.0, 20.0, ballastC, 0.0065, null, null),
                new BallastInput.VoltsWindow(null, null));
    }

    /** A feed wire by its size and length, in feet or metres. */
    static BallastInput byWire(String size, @Nullable Double lengthM, @Nullable Double lengthFt) {
        return new BallastInput(
                null,
                new BallastInput.BallastElements(List.of(1.5), null, null),
                new BallastInput.SupplyVolts(12.6, null, null),
                new BallastInput.PrimaryLeads(null, size, lengthM, lengthFt, null, null),
                1.5,
                new BallastInput.ClosedSwitch(null, null, null, null),
                null,
                new BallastInput.Warmth(null, null, null, null, null, null),
                new BallastInput.VoltsWindow(null, null));
    }
}
