package loomwright.expression;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** The steps of a reduction in words and numbers. */
final class ReductionWording {
    private ReductionWording() {}

    /** A resistance with a name. */
    record Named(String name, double ohm) {
        String text() {
            return name + " = " + number(ohm) + " ohm";
        }
    }

    static Reduction.Step series(List<Named> parts, String result, double ohm) {
        String sum = parts.stream().map(p -> number(p.ohm())).collect(Collectors.joining(" + "));
        return new Reduction.Step(
                Reduction.Rule.SERIES,
                ohm,
                joined(parts, " in series with ") + ": " + result + " = " + sum + " = " + number(ohm) + " ohm");
    }

    static Reduction.Step parallel(List<Named> parts, String result, double ohm) {
        String sum = parts.stream().map(p -> "1/" + number(p.ohm())).collect(Collectors.joining(" + "));
        return new Reduction.Step(
                Reduction.Rule.PARALLEL,
                ohm,
                joined(parts, " parallel to ") + ": " + result + " = 1/(" + sum + ") = " + number(ohm) + " ohm");
    }

    static Reduction.Step leftOut(Named part, String why) {
        return new Reduction.Step(Reduction.Rule.LEFT_OUT, part.ohm(), part.text() + " is left out: " + why);
    }

    private static String joined(List<Named> parts, String word) {
        return parts.stream().map(Named::text).collect(Collectors.joining(word));
    }

    /** Four significant digits, as a person writes them: 4.105, 0.0012, 12000. */
    static String number(double value) {
        if (value == 0) {
            return "0";
        }
        double size = Math.abs(value);
        if (size >= 1e7 || size < 1e-4) {
            return String.format(Locale.ROOT, "%.3e", value);
        }
        int decimals = Math.max(0, 3 - (int) Math.floor(Math.log10(size)));
        String text = String.format(Locale.ROOT, "%." + decimals + "f", value);
        return text.contains(".") ? text.replaceAll("0+$", "").replaceAll("\\.$", "") : text;
    }
}
