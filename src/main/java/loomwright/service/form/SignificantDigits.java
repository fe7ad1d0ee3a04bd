package loomwright.service.form;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/** Rounds numbers that leave the service, so that 0.1 + 0.2 is 0.3 to the person who reads it. */
public final class SignificantDigits {
    public static final int DIGITS = 10;

    /** Powers of ten that a double holds exactly: 10^22 is the last. */
    private static final double[] POWER = new double[23];

    static {
        for (int i = 0; i < POWER.length; i++) {
            POWER[i] = new BigDecimal(BigDecimal.ONE.unscaledValue(), -i).doubleValue();
        }
    }

    private SignificantDigits() {}

    /**
     * {@code value} to {@value #DIGITS} significant digits.
     *
     * <p>x = rint(v·10^s) / 10^s with s = 9 − ⌊log₁₀|v|⌋. The quotient of two exactly held integers is the double nearest
     * to the decimal, so it prints with no more digits than asked for. A value within about 1e-6 of the tenth digit's
     * half may go the other way than exact arithmetic would. Outside 1e-13 to 1e31 exact arithmetic does the work.
     *
     * @param value any finite number
     * @return the rounded number; 0 for −0
     * @throws IllegalArgumentException if {@code value} is NaN or infinite, which is an error of ours
     */
    public static double round(double value) {
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException("a calculation gave " + value);
        }
        if (value == Math.rint(value) && Math.abs(value) < 1e10) {
            return value + 0.0;
        }
        int shift = places(value);
        if (shift >= POWER.length || -shift >= POWER.length) {
            return new BigDecimal(value)
                    .round(new MathContext(DIGITS, RoundingMode.HALF_EVEN))
                    .doubleValue();
        }
        return shift >= 0 ? scaled(value, shift) / POWER[shift] : Math.rint(value / POWER[-shift]) * POWER[-shift];
    }

    /** How many of its {@value #DIGITS} digits stand after the point; may be negative. */
    static int places(double value) {
        return DIGITS - 1 - (int) Math.floor(Math.log10(Math.abs(value)));
    }

    /** A whole number: the digits of {@code value} to 0 to 22 places after the point. */
    static double scaled(double value, int places) {
        return Math.rint(value * POWER[places]);
    }
}
