package loomwright.circuit;

import loomwright.answer.Basis;

/**
 * A lead-acid battery as the circuit sees it. Volts and ohms are for the whole battery of the given nominal voltage; a 12
 * V battery has six cells.
 *
 * <p>It has two slopes: a small resistance while it gives current, a far larger one while it takes charge.
 */
public final class BatteryLaw {
    /** State of charge that a vehicle in use is taken for. Common practice, no source. */
    public static final double USUAL_CHARGE = 0.8;
    /** Capacity where nobody says. Common practice, no source. */
    public static final double USUAL_CAPACITY_AH = 60;

    public static final Basis EMF_BASIS = Basis.verified(
            "battery at rest, 12 V, 25 C: 12.65, 12.45, 12.24, 12.06, 11.89 V at 100, 75, 50, 25, 0 % charge; 3 mV per K",
            "secondary tables; US Army TM 5-3805-262-20 has 12.6, 12.4, 12.2, 12.0, 11.7 V");
    public static final Basis DISCHARGE_BASIS = Basis.verified(
            "battery giving current: 2.1 V / CCA at 27 C, 3.3 V / CCA at 0 C, 5.3 V / CCA at -18 C",
            "cranking test of SAE: (12.5 - 7.2) V / CCA at -18 C; cranking power 100, 65 and 40 %: US Army TM"
                    + " 5-4210-230-14&P-1");
    public static final Basis CHARGE_BASIS =
            Basis.commonPractice("battery taking charge, steady: 90, 25, 12 and 6 V per Ah at 100, 90, 80 and 50 %"
                    + " charge, so that 14.2 V gives 1/60, 1/15, 1/7 and 1/3 of the capacity");
    public static final Basis CRANKING_CURRENT_BASIS =
            Basis.commonPractice("cold cranking current where nobody says: 8 A per Ah of capacity");

    /** Temperature at which the resistance while giving current is taken where nobody says, C: that of its source. */
    public static final double USUAL_DISCHARGE_C = 27;
    /** Temperature at which the volts at rest are taken where nobody says, C: that of their source. */
    public static final double USUAL_C = 25;

    private static final double CELLS_12V = 12;
    private static final double VOLTS_PER_K = 0.003;
    private static final double CCA_PER_AH = 8;
    private static final Curve EMF =
            new Curve(new double[] {0, 0.25, 0.5, 0.75, 1}, new double[] {11.89, 12.06, 12.24, 12.45, 12.65});
    private static final Curve DISCHARGE = new Curve(new double[] {-18, 0, 27}, new double[] {5.3, 3.3, 2.1});
    private static final Curve LOG_CHARGE = new Curve(
            new double[] {0.5, 0.8, 0.9, 1}, new double[] {Math.log(6), Math.log(12), Math.log(25), Math.log(90)});

    private BatteryLaw() {}

    /**
     * Volts at rest with nothing connected.
     *
     * @param charge state of charge, 0 to 1
     * @param temperatureC of the acid, -40 to 60
     * @param nominalVoltageV 6, 12 or 24, or that of a part of it
     */
    public static double emfV(double charge, double temperatureC, double nominalVoltageV) {
        double at12V = EMF.at(charge) + VOLTS_PER_K * (temperatureC - USUAL_C);
        return at12V * nominalVoltageV / CELLS_12V;
    }

    /** Cold cranking current (SAE test, -18 C) of a battery of which only the capacity is known, in A. */
    public static double usualCrankingCurrentA(double capacityAh) {
        return CCA_PER_AH * capacityAh;
    }

    /**
     * Resistance while it gives current, new.
     *
     * @param coldCrankingA cold cranking current by the SAE test, above 0
     * @param temperatureC of the acid; outside -18 to 27 the figure of the nearest end
     * @param nominalVoltageV 6, 12 or 24, or that of a part of it
     */
    public static double dischargeOhm(double coldCrankingA, double temperatureC, double nominalVoltageV) {
        return DISCHARGE.at(temperatureC) / coldCrankingA * nominalVoltageV / CELLS_12V;
    }

    /**
     * Resistance above which a battery is worn out at 20 C: it would fail the load test of 9.6 V at half its cold cranking
     * current.
     */
    public static double wornOutOhm(double coldCrankingA, double nominalVoltageV) {
        return 6.0 / coldCrankingA * nominalVoltageV / CELLS_12V;
    }

    /**
     * Resistance while it takes charge, after some minutes.
     *
     * @param capacityAh above 0
     * @param charge state of charge; below 0.5 the figure of 0.5
     * @param nominalVoltageV 6, 12 or 24, or that of a part of it
     */
    public static double chargeOhm(double capacityAh, double charge, double nominalVoltageV) {
        return Math.exp(LOG_CHARGE.at(charge)) / capacityAh * nominalVoltageV / CELLS_12V;
    }
}
