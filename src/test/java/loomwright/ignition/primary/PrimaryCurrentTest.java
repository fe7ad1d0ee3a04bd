package loomwright.ignition.primary;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.hipparchus.ode.ODEState;
import org.hipparchus.ode.ODEStateAndDerivative;
import org.hipparchus.ode.OrdinaryDifferentialEquation;
import org.hipparchus.ode.nonstiff.DormandPrince853Integrator;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;

/** The current in the primary: rise, limit, break, and what one cycle leaves to the next. */
class PrimaryCurrentTest {
    private static final double NONE = Double.POSITIVE_INFINITY;

    @ParameterizedTest(name = "{0}")
    @CsvFileSource(resources = "/ignition/coil-current.csv", numLinesToSkip = 1)
    void theCurrentFollowsThePublishedExamples(
            String source,
            double drivingV,
            double resistanceOhm,
            double inductanceH,
            double residualA,
            double timeS,
            double expectedA,
            double toleranceA) {
        PrimaryCircuit circuit = new PrimaryCircuit(drivingV, resistanceOhm, inductanceH, NONE, 1);
        assertThat(circuit.unlimitedA(residualA, timeS)).as(source).isCloseTo(expectedA, within(toleranceA));
    }

    @Provide
    Arbitrary<PrimaryCurrent> cycles() {
        Arbitrary<PrimaryCircuit> circuits = Combinators.combine(
                        Arbitraries.doubles().ofScale(6).between(3, 30),
                        Arbitraries.doubles().ofScale(6).between(0.3, 8),
                        Arbitraries.doubles().ofScale(6).between(0.001, 0.02),
                        Arbitraries.doubles().ofScale(6).between(0.2, 1.5),
                        Arbitraries.doubles().ofScale(6).between(500, 6000))
                .as((volts, ohms, henries, limitShare, rate) ->
                        new PrimaryCircuit(volts, ohms, henries, limitShare * volts / ohms, rate));
        Arbitrary<Dwell> dwells = Combinators.combine(
                        Arbitraries.doubles().ofScale(6).between(0.001, 0.05),
                        Arbitraries.doubles().ofScale(6).between(0.05, 0.95))
                .as((cycleS, duty) -> new Dwell(duty * cycleS, cycleS));
        return Combinators.combine(circuits, dwells).as(PrimaryCurrent::steady);
    }

    /** Second method: current, charge and squared current by a general integrator, stepped to the limit and past it. */
    @Property(seed = "20260305", tries = 300)
    void currentChargeAndHeatAgreeWithAGeneralIntegrator(@ForAll("cycles") PrimaryCurrent current) {
        PrimaryCircuit circuit = current.circuit();
        OrdinaryDifferentialEquation rise = new OrdinaryDifferentialEquation() {
            @Override
            public int getDimension() {
                return 3;
            }

            @Override
            public double[] computeDerivatives(double t, double[] y) {
                double slope = (circuit.drivingV() - circuit.resistanceOhm() * y[0]) / circuit.inductanceH();
                return new double[] {slope, y[0], y[0] * y[0]};
            }
        };
        double limitS = limitReachedS(rise, current);
        double[] risen = integrate(rise, current.residualA(), limitS);
        double heldS = current.dwell().dwellS() - limitS;
        double endA = risen[0];
        double chargeC = risen[1] + heldS * endA;
        double squareA2S = risen[2] + heldS * endA * endA;
        assertThat(current.peakA()).isCloseTo(endA, within(1e-9 * endA));
        assertThat(current.chargeC()).isCloseTo(chargeC, within(1e-9 * chargeC));
        assertThat(current.squareA2S()).isCloseTo(squareA2S, within(1e-8 * squareA2S));
        assertThat(current.atA(limitS / 2))
                .isCloseTo(integrate(rise, current.residualA(), limitS / 2)[0], within(1e-9 * endA));
    }

    /**
     * When the integrated current, not our formula, passes the limit; the dwell if it doesn't. Newton's steps with the
     * slope of the equation: the rise is concave, so they come to the limit from below.
     */
    private static double limitReachedS(OrdinaryDifferentialEquation rise, PrimaryCurrent current) {
        double dwellS = current.dwell().dwellS();
        double limitA = current.circuit().limitA();
        // A limit at the very end of the rise is never passed but by the integrator's rounding.
        if (integrate(rise, current.residualA(), dwellS)[0] <= limitA * (1 + 1e-10)) {
            return dwellS;
        }
        double timeS = 0;
        for (int step = 0; step < 40; step++) {
            double[] state = integrate(rise, current.residualA(), timeS);
            double onS = (limitA - state[0]) / rise.computeDerivatives(timeS, state)[0];
            timeS += onS;
            if (onS < 1e-15) {
                break;
            }
        }
        return timeS;
    }

    private static double[] integrate(OrdinaryDifferentialEquation equation, double residualA, double untilS) {
        if (untilS < 1e-12) {
            return new double[] {residualA, 0, 0};
        }
        DormandPrince853Integrator integrator = new DormandPrince853Integrator(1e-15, 0.1, 1e-13, 1e-12);
        ODEStateAndDerivative end =
                integrator.integrate(equation, new ODEState(0, new double[] {residualA, 0, 0}), untilS);
        return end.getPrimaryState();
    }

    /** Second method: the cycle run again and again from rest comes to the closed fixed point. */
    @Property(seed = "20260306")
    void cyclesRunOneAfterAnotherComeToTheSteadyOne(@ForAll("cycles") PrimaryCurrent steady) {
        double residualA = 0;
        for (int cycle = 0; cycle < 5000; cycle++) {
            PrimaryCurrent current = new PrimaryCurrent(steady.circuit(), residualA, steady.dwell());
            double fallA = steady.circuit().releaseAPerS() * steady.dwell().offS();
            residualA = Math.max(0, current.peakA() - fallA);
        }
        assertThat(steady.residualA()).isCloseTo(residualA, within(1e-9 * (1 + residualA)));
    }

    @Property(seed = "20260307")
    void whatTheSourceGivesInOneCycleIsHeatAndSpark(@ForAll("cycles") PrimaryCurrent current) {
        PrimaryCircuit circuit = current.circuit();
        double givenJ = circuit.drivingV() * current.chargeC();
        double spentJ = circuit.resistanceOhm() * current.squareA2S() + current.limitingJ() + current.releasedJ();
        assertThat(spentJ).isCloseTo(givenJ, within(1e-9 * givenJ));
    }

    @Property(seed = "20260308")
    void averageIsAtMostEffectiveIsAtMostPeak(@ForAll("cycles") PrimaryCurrent current) {
        assertThat(current.averageA()).isLessThanOrEqualTo(current.rmsA() * (1 + 1e-9));
        assertThat(current.rmsA()).isLessThanOrEqualTo(current.peakA() * (1 + 1e-9));
        assertThat(current.residualA()).isBetween(0.0, current.peakA());
        assertThat(current.peakA()).isLessThanOrEqualTo(circuitLimit(current));
        assertThat(current.limitingJ()).isNotNegative();
    }

    private static double circuitLimit(PrimaryCurrent current) {
        return Math.min(current.circuit().limitA(), current.circuit().finalA()) * (1 + 1e-12);
    }

    @Property(seed = "20260309")
    void moreLimitMoreDwellAndLessOffTimeNeverTakeCurrentAway(@ForAll("cycles") PrimaryCurrent current) {
        PrimaryCircuit old = current.circuit();
        Dwell dwell = current.dwell();
        PrimaryCircuit higherLimit = new PrimaryCircuit(
                old.drivingV(), old.resistanceOhm(), old.inductanceH(), old.limitA() * 1.1, old.releaseAPerS());
        assertThat(PrimaryCurrent.steady(higherLimit, dwell).peakA())
                .isGreaterThanOrEqualTo(current.peakA() * (1 - 1e-12));
        Dwell longer = new Dwell(dwell.dwellS() * 1.05, dwell.cycleS());
        assertThat(PrimaryCurrent.steady(old, longer).peakA()).isGreaterThanOrEqualTo(current.peakA() * (1 - 1e-12));
        Dwell shorterOff = new Dwell(dwell.dwellS(), dwell.dwellS() + dwell.offS() * 0.9);
        assertThat(PrimaryCurrent.steady(old, shorterOff).residualA()).isGreaterThanOrEqualTo(current.residualA());
    }
}
