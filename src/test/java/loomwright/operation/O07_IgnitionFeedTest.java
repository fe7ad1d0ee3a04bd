package loomwright.operation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import loomwright.circuit.Coil;
import loomwright.circuit.ContactBreaker;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import org.junit.jupiter.api.Test;

/** Ballast, bypass, breaker and module in the plan of a vehicle. */
class O07_IgnitionFeedTest {
    private final Plan asBuilt = Plans.example("sandpiper-as-built");

    @Test
    void withTheKeyOnABallastedCoilShowsSixToEightVolts() {
        // Common practice, no source: 6 to 8 V with the contacts closed.
        assertThat(Solved.of(asBuilt).acrossV(Step.RUN, "coil")).isBetween(6.0, 8.0);
    }

    @Test
    void whileCrankingTheBypassedElementCarriesNothingToSpeakOfAndTheCoilHasMoreThanWithoutBypass() {
        Solved bypassed = Solved.of(asBuilt);
        Solved without = Solved.of(asBuilt.with(
                asBuilt.parts(),
                asBuilt.wires().stream().filter(w -> !w.id().equals("W35")).toList()));
        // The feed through the key and the bypass differ by millivolts at the two ends of the element.
        assertThat(Math.abs(bypassed.currentA(Step.CRANK, "ballast.a", "ballast.tap1")))
                .isLessThan(0.2);
        assertThat(bypassed.acrossV(Step.CRANK, "coil") - without.acrossV(Step.CRANK, "coil"))
                .isGreaterThan(1.5);
    }

    @Test
    void withTheContactsOpenFullVoltageStandsAtTheCoilAndNothingFlows() {
        ContactBreaker points = (ContactBreaker) asBuilt.findPart("points").orElseThrow();
        Solved open = Solved.of(asBuilt.withPart(
                new ContactBreaker(points.id(), null, false, points.contactResistanceOhm(), points.ratingA())));
        assertThat(open.currentA(Step.RUN, "coil")).isCloseTo(0, within(1e-9));
        assertThat(open.voltageV(Step.RUN, "coil.1")).isCloseTo(open.voltageV(Step.RUN, "ballast.a"), within(1e-6));
    }

    @Test
    void theModuleHoldsTheCoilCurrentAtItsLimit() {
        Solved solved = Solved.of(Plans.example("sandpiper-electronic-module"));
        assertThat(solved.currentA(Step.RUNNING, "coil")).isCloseTo(6.5, within(1e-9));
    }

    @Test
    void withTheEngineStoppedTheModuleFeedsNoCurrent() {
        Solved solved = Solved.of(Plans.example("sandpiper-electronic-module"));
        assertThat(solved.currentA(Step.RUN, "coil")).isCloseTo(0, within(1e-9));
    }

    /** 6.5 A in 0.5 ohm are 3.25 V, far less than a third of the supply, and a good spark. */
    @Test
    void aCoilOfFewOhmsBehindAModuleWorksByItsAmperes() {
        Plan plan = Plans.example("sandpiper-electronic-module");
        Coil coil = (Coil) plan.findPart("coil").orElseThrow();
        Solved solved = Solved.of(plan.withPart(new Coil(
                coil.id(),
                coil.label(),
                0.5,
                coil.inductanceMh(),
                coil.turnsRatio(),
                coil.use(),
                coil.operateV(),
                coil.releaseV(),
                coil.meantLive(),
                coil.meantLiveWhen())));
        assertThat(solved.acrossV(Step.RUNNING, "coil")).isCloseTo(3.25, within(1e-9));
        assertThat(solved.activity(Step.RUNNING, "coil")).isEqualTo(FeedStrength.OPERATES);
    }
}
