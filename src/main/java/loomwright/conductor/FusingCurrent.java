package loomwright.conductor;

import loomwright.answer.InputErrors;

/** The current that melts a copper wire. */
public final class FusingCurrent {
    /** Preece's constant of copper for a diameter in inches. */
    private static final double PREECE_COPPER_IN = 10244;
    /** Onderdonk's constants: temperature offset of copper, and the divisor of time. */
    private static final double ONDERDONK_OFFSET_C = 234;

    private static final double ONDERDONK_DIVISOR = 33;
    /** Above this the heat that leaves the wire makes the formula wrong. */
    public static final double ONDERDONK_MAX_S = 10;

    private FusingCurrent() {}

    /**
     * Current that melts a copper wire in a given short time, no heat leaving it.
     *
     * <p>I = A sqrt(log10((1083 - Ta) / (234 + Ta) + 1) / (33 t)), A in circular mils.
     *
     * @param areaMm2 area, above 0
     * @param timeS t, above 0, at most 10 s
     * @param ambientC Ta, -60 to 400 C
     * @return ampere
     * @throws loomwright.answer.RejectedInput OUT_OF_RANGE at /areaMm2, /timeS or /ambientC
     *     <p>Source: Onderdonk's equation in its printed form.
     */
    public static double onderdonkA(double areaMm2, double timeS, double ambientC) {
        new InputErrors()
                .range("/areaMm2", areaMm2, 1e-4, 1e4)
                .range("/timeS", timeS, 1e-4, ONDERDONK_MAX_S)
                .range("/ambientC", ambientC, Copper.MIN_TEMPERATURE_C, Copper.MAX_TEMPERATURE_C)
                .reject();
        double rise = (Copper.MELTING_C - ambientC) / (ONDERDONK_OFFSET_C + ambientC);
        return Copper.circularMils(areaMm2) * Math.sqrt(Math.log10(rise + 1) / (ONDERDONK_DIVISOR * timeS));
    }

    /**
     * Steady current that melts a bare copper wire in free air.
     *
     * <p>I = 10244 d^1.5, d in inches.
     *
     * @param diameterMm d, above 0
     * @return ampere
     * @throws loomwright.answer.RejectedInput OUT_OF_RANGE at /diameterMm
     *     <p>Source: Preece's equation.
     */
    public static double preeceA(double diameterMm) {
        new InputErrors().range("/diameterMm", diameterMm, 1e-2, 100).reject();
        return PREECE_COPPER_IN * Math.pow(diameterMm / Copper.MM_PER_INCH, 1.5);
    }
}
