package loomwright.ignition.ballast;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.stream.IntStream;
import loomwright.circuit.Condition;
import loomwright.ignition.SelfHeating;
import loomwright.ignition.primary.EngineHeat;
import loomwright.judgement.ignition.CoilKind;
import loomwright.judgement.ignition.CoilWindow;
import loomwright.judgement.ignition.PrimaryLoop;
import org.jspecify.annotations.Nullable;

/**
 * An ignition feed with nothing left open.
 *
 * @param closing what closes the primary
 */
record IgnitionFeed(
        double nominalVoltageV,
        TappedBallast ballast,
        Supplies supplies,
        LeadsOhm leads,
        double coil20Ohm,
        Closing closing,
        double dwellFraction,
        Temperatures temperatures,
        Thermal thermal,
        Window window) {

    /** Terminal voltage of the battery in each condition. */
    record Supplies(double atRestV, double crankingV, double chargingV) {
        double in(Condition condition) {
            return switch (condition) {
                case CRANK -> crankingV;
                case RUNNING -> chargingV;
                case OFF, ACCESSORY, RUN -> atRestV;
            };
        }
    }

    /** Contacts with a resistance, or a module with a drop and perhaps a limit. */
    record Closing(
            boolean module,
            double contactOhm,
            double dropV,
            @Nullable Double limitA,
            double deadBelowV) {}

    /** How warm things are. */
    record Temperatures(double ambientC, double ballastC, double coilC) {}

    /** How things warm up; a thermal resistance of 0 keeps a part at the ambient temperature. */
    record Thermal(boolean asked, double ballastCoefficientPerK, double ballastKPerW, double coilKPerW) {}

    /** What the coil should have if the question says so, and the battery at most while cranking. */
    record Window(@Nullable Double lowV, @Nullable Double highV, double crankingV) {}

    double elementOhm(int element) {
        return SelfHeating.resistanceOhm(
                ballast.elements20Ohm().get(element), thermal.ballastCoefficientPerK(), temperatures.ballastC());
    }

    List<Double> elementsOhm() {
        return IntStream.range(0, ballast.elements20Ohm().size())
                .mapToObj(this::elementOhm)
                .toList();
    }

    double coilOhm() {
        return SelfHeating.resistanceOhm(coil20Ohm, SelfHeating.COPPER_PER_K, temperatures.coilC());
    }

    /**
     * The window of the coil in a condition: as asked, else by what the coil is made for. A coil for use with a ballast
     * needs while cranking what it has at rest, which is what the bypass is for.
     */
    CoilWindow windowIn(Condition condition) {
        boolean cranking =
                condition == Condition.CRANK && CoilKind.ofOhm(coil20Ohm, nominalVoltageV) == CoilKind.WITH_BALLAST;
        CoilWindow usual = CoilWindow.of(
                coil20Ohm,
                nominalVoltageV,
                cranking ? supplies.atRestV() : supplies.in(condition),
                closing.dropV(),
                closing.limitA());
        Double low = window.lowV();
        Double high = window.highV();
        return new CoilWindow(low == null ? usual.lowV() : low, high == null ? usual.highV() : high);
    }

    /** The elements as they are, warm or not, and no longer changed by temperature. */
    IgnitionFeed frozen() {
        Thermal still = new Thermal(thermal.asked(), 0, thermal.ballastKPerW(), thermal.coilKPerW());
        return new IgnitionFeed(
                nominalVoltageV,
                new TappedBallast(elementsOhm(), ballast.bypassTap()),
                supplies,
                leads,
                coil20Ohm,
                closing,
                dwellFraction,
                temperatures,
                still,
                window);
    }

    /** The primary circuit as it is judged, with the bypass open as it is while the engine runs. */
    PrimaryLoop loop() {
        return new PrimaryLoop(
                nominalVoltageV,
                supplies.chargingV(),
                leads.feedOhm() + leads.returnOhm() + closing.contactOhm(),
                elementsOhm().stream().mapToDouble(ohm -> ohm).sum(),
                false,
                coil20Ohm,
                new PrimaryLoop.PrimaryContact(closing.dropV(), closing.module(), closing.limitA(), null),
                EngineHeat.usual(dwellFraction, coil20Ohm, null));
    }

    IgnitionFeed withElements(List<Double> ohm) {
        return with(ohm, ballast.bypassTap(), temperatures);
    }

    /** Without a ballast there is nothing to bypass. */
    IgnitionFeed withoutBallast() {
        return with(List.of(), null, temperatures);
    }

    IgnitionFeed withElement(int element, double ohm) {
        List<Double> changed = new ArrayList<>(ballast.elements20Ohm());
        changed.set(element, ohm);
        return withElements(changed);
    }

    IgnitionFeed withTap(int tap) {
        return with(ballast.elements20Ohm(), tap, temperatures);
    }

    IgnitionFeed at(Temperatures warm) {
        return with(ballast.elements20Ohm(), ballast.bypassTap(), warm);
    }

    /** End for end: the elements in the other order; the bypass stays at its tap, which has as many on its other side. */
    IgnitionFeed turned() {
        List<Double> other = new ArrayList<>(ballast.elements20Ohm());
        Collections.reverse(other);
        int count = other.size();
        Integer tap = ballast.bypassTap() == null || ballast.bypassTap() == count
                ? ballast.bypassTap()
                : (Integer) (count - ballast.bypassTap());
        return with(other, tap, temperatures);
    }

    private IgnitionFeed with(List<Double> ohm, @Nullable Integer tap, Temperatures warm) {
        return new IgnitionFeed(
                nominalVoltageV,
                new TappedBallast(ohm, tap),
                supplies,
                leads,
                coil20Ohm,
                closing,
                dwellFraction,
                warm,
                thermal,
                window);
    }

    /**
     * The elements of the ballast, and where the bypass joins.
     *
     * @param elements20Ohm the elements as they are mounted, from the feed end, at 20 C
     * @param bypassTap where the bypass feeds, counted as they are mounted; absent without a bypass
     */
    record TappedBallast(
            List<Double> elements20Ohm, @Nullable Integer bypassTap) {
        TappedBallast {
            elements20Ohm = List.copyOf(elements20Ohm);
        }
    }

    /** The wires. */
    record LeadsOhm(double feedOhm, double returnOhm, double bypassOhm) {}
}
