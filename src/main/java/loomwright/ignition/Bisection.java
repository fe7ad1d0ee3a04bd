package loomwright.ignition;

import java.util.function.DoubleUnaryOperator;

/** Root of a function with a change of sign, by halving: slow, and it cannot fail. */
public final class Bisection {
    private static final int MOST_HALVINGS = 200;

    private Bisection() {}

    /**
     * A point next to a change of sign of {@code f}, on the side of {@code to}.
     *
     * @param from where {@code f} has one sign
     * @param to where {@code f} has the other sign, or is zero
     * @param tolerance how wide the last bracket may be; one that numbers can't reach ends at neighbouring numbers
     */
    public static double root(DoubleUnaryOperator f, double from, double to, double tolerance) {
        boolean positive = f.applyAsDouble(to) >= 0;
        double far = from;
        double near = to;
        for (int i = 0; i < MOST_HALVINGS && Math.abs(near - far) > tolerance; i++) {
            double middle = 0.5 * (far + near);
            if (f.applyAsDouble(middle) >= 0 == positive) {
                near = middle;
            } else {
                far = middle;
            }
        }
        return near;
    }
}
