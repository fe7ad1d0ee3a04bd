package loomwright.drawing.diagram;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/** Numbers as a person writes them beside a wire: three digits. */
final class DiagramNumbers {
    private static final double SMALLEST = 1e-3;
    private static final double LARGEST = 1e4;

    private DiagramNumbers() {}

    static String number(double value) {
        if (Math.abs(value) < 1e-12) {
            return "0";
        }
        BigDecimal rounded = new BigDecimal(value).round(new MathContext(3));
        return rounded.scale() < 0 ? rounded.setScale(0).toPlainString() : rounded.toPlainString();
    }

    /** A figure as somebody gave it: without trailing zeros. */
    static String given(double value) {
        BigDecimal rounded = new BigDecimal(value).round(new MathContext(6)).stripTrailingZeros();
        return rounded.scale() < 0 ? rounded.setScale(0).toPlainString() : rounded.toPlainString();
    }

    static String volts(double voltageV) {
        if (Math.abs(voltageV) < 0.005) {
            return "0 V";
        }
        BigDecimal rounded =
                new BigDecimal(voltageV).setScale(Math.abs(voltageV) < 9.995 ? 2 : 1, RoundingMode.HALF_UP);
        return rounded.toPlainString() + " V";
    }

    static String amps(double currentA) {
        double amount = Math.abs(currentA);
        if (amount >= LARGEST) {
            return number(amount / 1e3) + " kA";
        }
        return amount < 100 * SMALLEST ? number(amount / SMALLEST) + " mA" : number(amount) + " A";
    }

    static String ohms(double resistanceOhm) {
        return resistanceOhm < 0.1 ? given(resistanceOhm * 1e3) + " mΩ" : given(resistanceOhm) + " Ω";
    }
}
