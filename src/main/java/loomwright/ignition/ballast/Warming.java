package loomwright.ignition.ballast;

import static loomwright.message.Arg.arg;

import loomwright.answer.OutOfTime;
import loomwright.circuit.Condition;
import loomwright.ignition.ballast.FeedSolver.Heat;
import loomwright.ignition.ballast.IgnitionFeed.Temperatures;
import loomwright.message.MessageCode;

/**
 * The two ends of the warming of ballast and coil, and what a forgotten key does.
 *
 * @param coldStart cranking with everything as cold as the air, the bypass joined if there is one
 * @param hotIdle running for long
 * @param keyLeftOn key on, engine stopped, contacts closed for long
 */
public record Warming(End coldStart, End hotIdle, End keyLeftOn) {
    /** What insulation and joints are believed to survive. Common practice, no source. */
    private static final double COIL_CEILING_C = 200;

    private static final double BALLAST_CEILING_C = 600;

    private static final int MOST_STEPS = 80;
    private static final double TOLERANCE_K = 1e-8;
    private static final double DIFFERENCE_K = 0.01;
    private static final double BEYOND_ANY_C = 5000;

    private enum Code implements MessageCode {
        NOT_SETTLED
    }

    /**
     * One end.
     *
     * @param ballastOhm of all elements
     * @param currentA contacts closed
     * @param ballastHeatW over the dwell, which for a forgotten key is all the time
     * @param survives whether neither gets hotter than it is believed to stand: coil 200 C, ballast 600 C
     */
    public record End(
            double ballastC,
            double coilC,
            double ballastOhm,
            double coilOhm,
            double currentA,
            double coilV,
            double ballastHeatW,
            double coilHeatW,
            boolean survives) {}

    static Warming of(IgnitionFeed feed) {
        double ambientC = feed.temperatures().ambientC();
        IgnitionFeed cold = feed.at(new Temperatures(ambientC, ambientC, ambientC));
        return new Warming(
                end(cold, Condition.CRANK, feed.ballast().bypassTap() != null, feed.dwellFraction()),
                end(
                        settle(cold, Condition.RUNNING, feed.dwellFraction()),
                        Condition.RUNNING,
                        false,
                        feed.dwellFraction()),
                end(settle(cold, Condition.RUN, 1), Condition.RUN, false, 1));
    }

    private static End end(IgnitionFeed feed, Condition condition, boolean bypassed, double share) {
        double currentA = FeedSolver.coilA(feed, condition, bypassed);
        Heat heat = FeedSolver.heat(feed, condition, bypassed);
        Temperatures at = feed.temperatures();
        return new End(
                at.ballastC(),
                at.coilC(),
                feed.elementsOhm().stream().mapToDouble(ohm -> ohm).sum(),
                feed.coilOhm(),
                currentA,
                currentA * feed.coilOhm(),
                share * heat.ballastW(),
                share * heat.coilW(),
                at.coilC() <= COIL_CEILING_C && at.ballastC() <= BALLAST_CEILING_C);
    }

    /**
     * The fixed point T = T_ambient + R_th d P(T) of ballast and coil together, reached from cold.
     *
     * <p>Follows dT/dt = F(T) - T in implicit steps that double, so it ends at the state that the parts really come to,
     * and near it each step is one of Newton's.
     */
    private static IgnitionFeed settle(IgnitionFeed cold, Condition condition, double share) {
        double ballastC = cold.temperatures().ballastC();
        double coilC = cold.temperatures().coilC();
        double step = 0.25;
        for (int i = 0; i < MOST_STEPS; i++) {
            Rise here = rise(cold, ballastC, coilC, condition, share);
            if (Math.max(Math.abs(here.ballastK()), Math.abs(here.coilK())) < TOLERANCE_K) {
                return warm(cold, ballastC, coilC);
            }
            Rise ballastWarmer = rise(cold, ballastC + DIFFERENCE_K, coilC, condition, share);
            Rise coilWarmer = rise(cold, ballastC, coilC + DIFFERENCE_K, condition, share);
            double a = 1 / step - (ballastWarmer.ballastK() - here.ballastK()) / DIFFERENCE_K;
            double b = -(coilWarmer.ballastK() - here.ballastK()) / DIFFERENCE_K;
            double c = -(ballastWarmer.coilK() - here.coilK()) / DIFFERENCE_K;
            double d = 1 / step - (coilWarmer.coilK() - here.coilK()) / DIFFERENCE_K;
            double determinant = a * d - b * c;
            ballastC = bounded(ballastC + (d * here.ballastK() - b * here.coilK()) / determinant, cold);
            coilC = bounded(coilC + (a * here.coilK() - c * here.ballastK()) / determinant, cold);
            step *= 2;
        }
        throw new OutOfTime(Code.NOT_SETTLED.with(arg("steps", MOST_STEPS)));
    }

    /** How much hotter each part would become than it is. */
    private record Rise(double ballastK, double coilK) {}

    private static Rise rise(IgnitionFeed cold, double ballastC, double coilC, Condition condition, double share) {
        Heat heat = FeedSolver.heat(warm(cold, ballastC, coilC), condition, false);
        double ambientC = cold.temperatures().ambientC();
        return new Rise(
                ambientC + cold.thermal().ballastKPerW() * share * heat.ballastW() - ballastC,
                ambientC + cold.thermal().coilKPerW() * share * heat.coilW() - coilC);
    }

    private static IgnitionFeed warm(IgnitionFeed cold, double ballastC, double coilC) {
        return cold.at(new Temperatures(cold.temperatures().ambientC(), ballastC, coilC));
    }

    private static double bounded(double temperatureC, IgnitionFeed cold) {
        return Math.min(BEYOND_ANY_C, Math.max(cold.temperatures().ambientC(), temperatureC));
    }
}
