package loomwright.ignition.spark;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import loomwright.ignition.gap.BreakdownVoltage;
import loomwright.ignition.gap.GapConditions;
import loomwright.ignition.primary.CoilData;
import loomwright.ignition.primary.CoilData.Feed;
import loomwright.ignition.primary.CoilPreset;
import loomwright.ignition.primary.DwellLaw;
import loomwright.ignition.primary.Firing;
import loomwright.ignition.primary.Firing.Arrangement;
import loomwright.ignition.primary.PrimarySwitch;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;

/** What must hold for the spark of any ignition at any speed and supply. */
class SparkSystemTest {
    private static SparkSystem system(CoilData coil, PrimarySwitch primarySwitch, double ballastOhm, Firing firing) {
        BreakdownVoltage plug = BreakdownVoltage.of(new GapConditions(0.7, 1e6, 280));
        return new SparkSystem(0.05, ballastOhm, coil, 60, primarySwitch, firing, 1500, Demand.of(plug, firing));
    }

    @Provide
    Arbitrary<SparkSystem> systems() {
        Arbitrary<CoilData> coils = Combinators.combine(
                        Arbitraries.doubles().ofScale(3).between(0.3, 5),
                        Arbitraries.doubles().ofScale(5).between(0.001, 0.015),
                        Arbitraries.doubles().ofScale(1).between(60, 150))
                .as((ohms, henries, ratio) -> new CoilData(ohms, henries, ratio, 350, 80e-12, 0.5, Feed.DIRECT));
        Arbitrary<PrimarySwitch> switches = Arbitraries.of(
                new PrimarySwitch.ContactBreaker(0.15, new DwellLaw.FixedAngle(40)),
                new PrimarySwitch.Module(1, 6.0, new DwellLaw.FixedAngle(60), 6),
                new PrimarySwitch.Module(1, 7.0, new DwellLaw.ConstantTime(0.004, 0.8), 6),
                new PrimarySwitch.Module(0.8, 5.0, new DwellLaw.CurrentControlled(0.75), 6));
        Arbitrary<Firing> firings = Arbitraries.of(
                new Firing(4, 4, Arrangement.DISTRIBUTOR),
                new Firing(4, 4, Arrangement.WASTED_SPARK),
                new Firing(2, 2, Arrangement.COIL_PER_CYLINDER));
        Arbitrary<Double> ballasts = Arbitraries.doubles().ofScale(2).between(0, 2);
        return Combinators.combine(coils, switches, ballasts, firings).as(SparkSystemTest::system);
    }

    @Property(seed = "20260312")
    void powerFromTheSupplyIsHeatAndSpark(
            @ForAll("systems") SparkSystem system,
            @ForAll @DoubleRange(min = 50, max = 12_000) double rpm,
            @ForAll @DoubleRange(min = 0, max = 30) double volts) {
        SparkPoint at = system.at(rpm, volts, false);
        double spentW = at.heat().coilHeatW()
                + at.heat().ballastHeatW()
                + at.heat().feedHeatW()
                + at.heat().switchHeatW()
                + at.stored().releasedJ() / at.timing().cycleS();
        assertThat(spentW)
                .isCloseTo(
                        at.heat().supplyPowerW(),
                        within(1e-9 * (1e-3 + at.heat().supplyPowerW())));
    }

    @Property(seed = "20260313")
    void moreSupplyNeverGivesLessEnergyOrVoltage(
            @ForAll("systems") SparkSystem system,
            @ForAll @DoubleRange(min = 50, max = 12_000) double rpm,
            @ForAll @DoubleRange(min = 0, max = 30) double volts) {
        SparkPoint at = system.at(rpm, volts, false);
        SparkPoint more = system.at(rpm, volts + 0.5, false);
        assertThat(more.stored().energyJ()).isGreaterThanOrEqualTo(at.stored().energyJ() * (1 - 1e-9));
        assertThat(more.margin().availableV())
                .isGreaterThanOrEqualTo(at.margin().availableV() * (1 - 1e-9));
    }

    @Property(seed = "20260314")
    void aBypassNeverGivesLess(
            @ForAll("systems") SparkSystem system, @ForAll @DoubleRange(min = 50, max = 12_000) double rpm) {
        assertThat(system.at(rpm, 12, true).stored().energyJ())
                .isGreaterThanOrEqualTo(system.at(rpm, 12, false).stored().energyJ() * (1 - 1e-9));
    }

    @Property(seed = "20260315")
    void withAFixedAngleTheEnergyNeverRisesWithSpeed(@ForAll @DoubleRange(min = 100, max = 12_000) double rpm) {
        SparkSystem system = system(
                CoilPreset.FOR_DIRECT_FEED.data(),
                new PrimarySwitch.ContactBreaker(0.15, new DwellLaw.FixedAngle(55)),
                0,
                new Firing(4, 4, Arrangement.DISTRIBUTOR));
        assertThat(system.at(rpm * 1.02, 14, false).stored().energyJ())
                .isLessThanOrEqualTo(system.at(rpm, 14, false).stored().energyJ() * (1 + 1e-12));
    }

    @Property(seed = "20260316")
    void everyFigureIsFinite(
            @ForAll("systems") SparkSystem system,
            @ForAll @DoubleRange(min = 20, max = 20_000) double rpm,
            @ForAll @DoubleRange(min = 0, max = 60) double volts) {
        SparkPoint at = system.at(rpm, volts, false);
        assertThat(List.of(
                        at.build().residualA(),
                        at.build().peakA(),
                        at.build().heldS(),
                        at.stored().energyJ(),
                        at.stored().releasedJ(),
                        at.stored().sparkS(),
                        at.margin().availableV(),
                        at.margin().marginRatio(),
                        at.means().averageA(),
                        at.means().rmsA(),
                        at.heat().switchHeatW(),
                        at.heat().supplyPowerW()))
                .allSatisfy(figure -> assertThat(figure).isFinite().isGreaterThanOrEqualTo(-1e-12));
    }
}
