package loomwright.ignition.gap;

import loomwright.answer.InputErrors;

/**
 * A spark gap and the gas in it.
 *
 * @param gapMm distance of the electrodes, 0.2 to 3
 * @param pressurePa absolute, 50 000 to 50 000 000
 * @param temperatureC of the gas, -60 to 1500
 */
public record GapConditions(double gapMm, double pressurePa, double temperatureC) {
    static final double PA_PER_BAR = 1e5;
    static final double ZERO_C_IN_K = 273.15;

    /** Temperature to which the formulas for air refer its density. */
    private static final double REFERENCE_K = 293;

    private static final double PA_PER_ATM = 101_325;

    /** 1 atm is 760 Torr by definition. */
    private static final double TORR_PER_ATM = 760;

    public GapConditions {
        new InputErrors()
                .range("/gapMm", gapMm, 0.2, 3)
                .range("/pressurePa", pressurePa, 5e4, 5e7)
                .range("/temperatureC", temperatureC, -60, 1500)
                .reject();
    }

    double gapCm() {
        return gapMm / 10;
    }

    public double pressureBar() {
        return pressurePa / PA_PER_BAR;
    }

    public double temperatureK() {
        return temperatureC + ZERO_C_IN_K;
    }

    /** Pressure of air of the same density at 293 K, p x 293 / T, in atm: breakdown follows density, not pressure. */
    public double densityAtm() {
        return pressurePa / PA_PER_ATM * REFERENCE_K / temperatureK();
    }

    double densityTorr() {
        return densityAtm() * TORR_PER_ATM;
    }
}
