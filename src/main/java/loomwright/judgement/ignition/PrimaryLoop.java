package loomwright.judgement.ignition;

import org.jspecify.annotations.Nullable;

/**
 * The primary circuit of an ignition with its contacts closed, as far as it is judged.
 *
 * @param nominalV 6, 12 or 24
 * @param runningV supply with the engine running
 * @param feedOhm from the battery and back, without ballast and coil
 * @param ballastOhm of the ballast that is fitted, 0 for none
 * @param bypassed whether the ballast is bypassed while running
 * @param coilOhm of the primary at 20 degrees, above 0
 * @param runningHeat what its coil has to get rid of in the mean while the engine runs
 */
public record PrimaryLoop(
        double nominalV,
        double runningV,
        double feedOhm,
        double ballastOhm,
        boolean bypassed,
        double coilOhm,
        PrimaryContact contact,
        RunningHeat runningHeat) {
    /** Volts at rest over the nominal voltage. */
    private static final double REST = 1.05;
    /** Share of the time that the primary is closed. Common practice, no source. */
    public static final double USUAL_DWELL = 0.6;

    /** The supply with the engine stopped. */
    double restV() {
        return REST * nominalV;
    }

    double ballastInOhm() {
        return bypassed ? 0 : ballastOhm;
    }

    /** Of everything in series. */
    public double totalOhm() {
        return feedOhm + ballastInOhm() + coilOhm;
    }

    /** Without any limit. */
    double unlimitedA(double supplyV) {
        return Math.max(0, supplyV - contact.dropV()) / totalOhm();
    }

    /** Amperes with the engine running and the primary closed. */
    public double runningA() {
        return limited(unlimitedA(runningV));
    }

    /** Amperes with the key left on; a module switches off by itself and counts as closed only if it does not limit. */
    public double restA() {
        return limited(unlimitedA(restV()));
    }

    /** Heat in the coil with the key left on and the primary closed. */
    public double restHeatW() {
        return restA() * restA() * coilOhm;
    }

    /** Mean heat in the coil while the engine runs, W. */
    double meanHeatW() {
        return runningHeat.meanW(this);
    }

    /** Heat in the ballast with the key left on and the primary closed. */
    public double ballastRestHeatW() {
        return restA() * restA() * ballastInOhm();
    }

    private double limited(double currentA) {
        return contact.limitA() == null ? currentA : Math.min(currentA, contact.limitA());
    }

    /** Ohms as they would be at 12 V. */
    double at12V(double ohm) {
        return CoilKind.ohmAt12V(ohm, nominalV);
    }

    double from12V(double ohm) {
        return ohm / at12V(1);
    }

    PrimaryLoop withBallast(double ohm) {
        return new PrimaryLoop(nominalV, runningV, feedOhm, ohm, false, coilOhm, contact, runningHeat);
    }

    /** The same with another coil and a ballast of other ohms. */
    PrimaryLoop withCoilAndBallast(double coil, double ballast) {
        return new PrimaryLoop(nominalV, runningV, feedOhm, ballast, false, coil, contact, runningHeat);
    }

    PrimaryLoop withCoil(double ohm) {
        return new PrimaryLoop(nominalV, runningV, feedOhm, 0, false, ohm, contact, runningHeat);
    }

    /** What its coil is made for, by its ohms. */
    public CoilKind coilKind() {
        return CoilKind.ofOhm(coilOhm, nominalV);
    }

    PrimaryLoop withModule(double limit) {
        return new PrimaryLoop(
                nominalV,
                runningV,
                feedOhm,
                0,
                false,
                coilOhm,
                new PrimaryContact(1.0, true, limit, null),
                runningHeat);
    }

    /**
     * What switches the coil.
     *
     * @param dropV of the closed switch
     * @param module whether a module switches it; else contacts
     * @param limitA what the module limits the current to; absent: it does not limit
     * @param switchRatingA what the contacts or the module may carry; absent if unknown
     */
    public record PrimaryContact(
            double dropV,
            boolean module,
            @Nullable Double limitA,
            @Nullable Double switchRatingA) {}
}
