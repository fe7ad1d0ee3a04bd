package loomwright.ignition.spark;

import static loomwright.message.Arg.plain;
import static loomwright.message.Arg.texts;

import java.util.List;
import java.util.Optional;
import loomwright.answer.Accepted;
import loomwright.answer.InputError;
import loomwright.answer.InputErrors;
import loomwright.circuit.UsualVoltages;
import loomwright.ignition.AssumedValue;
import loomwright.ignition.Assumptions;
import loomwright.ignition.SelfHeating;
import loomwright.ignition.UsualIgnition;
import loomwright.ignition.gap.BreakdownVoltage;
import loomwright.ignition.primary.CoilData;
import loomwright.ignition.primary.CoilPreset;
import loomwright.ignition.primary.Firing;
import loomwright.ignition.primary.PrimarySwitch;
import loomwright.message.Message;
import org.jspecify.annotations.Nullable;

/**
 * A question about an ignition, as it is asked: what is left out is taken as common, and the answer says so.
 *
 * <p>The parts are pages of one form: all names are different, and faults point at the bare name ({@code /gapMm}). Names
 * are in SI; a contract with other units maps {@code inductanceMh} to {@code inductanceH}, {@code secondaryCapacitancePf}
 * to {@code secondaryCapacitanceF}, {@code pressureKpa} to {@code pressurePa}, {@code manifoldPressureKpa} to {@code
 * manifoldPressurePa} and {@code dwellMs} to {@code dwellS}. Nothing is checked here: {@link Spark} does it, and names
 * all faults together.
 *
 * @param speedRpm of the crankshaft, 20 to 20 000; the start of the speed sweep if left out
 * @param feed supply, feed and ballast
 * @param coil the coil
 * @param coilTemperatureC of its primary winding, -40 to 250; 20 if left out
 * @param coilThermalResistanceKPerW from the winding to the air around it, 0 to 1000; if given, the hot coil is found
 *     too, starting from {@code coilTemperatureC}
 * @param primarySwitch breaker or module
 * @param engine cylinders and firing
 * @param gap gap and charge
 * @param burningV voltage of a burning spark with leads and secondary winding, 200 to 10 000; 1500 if left out
 * @param search sweeps and limits
 */
public record SparkInput(
        @Nullable Double speedRpm,
        FeedInput feed,
        CoilInput coil,
        @Nullable Double coilTemperatureC,
        @Nullable Double coilThermalResistanceKPerW,
        SwitchInput primarySwitch,
        EngineInput engine,
        GapInput gap,
        @Nullable Double burningV,
        SearchInput search) {

    /** Stands in for one at fault, so that the switch is still looked at. */
    private static final Firing ANY_FIRING = new Firing(4, 4, Firing.Arrangement.DISTRIBUTOR);

    private static final int HOTTEST_START_C = 150;
    /** Above this a supply is one of 24 V. */
    private static final double MOST_12V = 18;
    /** Up to this a supply may be one of 6 V; a 12 V one while cranking has more, or a coil of higher resistance. */
    private static final double MOST_6V = 7.6;

    /** Fewer have coils for a limiting module, at 12 V. */
    private static final double LEAST_6V_COIL_OHM = 0.9;

    private static final double MOST_6V_COIL_OHM = 2.2;
    private static final double TABLE_NOMINAL_V = 12;

    /** The question with every part resolved and checked. */
    record Resolved(
            SparkSystem system,
            double speedRpm,
            double supplyV,
            double usualSupplyV,
            double nominalV,
            @Nullable Double switchRatingA,
            boolean bypassed,
            Optional<SelfHeating> coilHeating,
            MarginSearch search,
            List<Message> assumed) {}

    Resolved resolve() {
        Assumptions assumptions = new Assumptions();
        InputErrors faults = assumptions.faults();
        double supplyV = assumptions.or(feed.supplyV(), AssumedValue.SUPPLY, usualSupplyV(), "V");
        double speed = speed(faults);
        Integer nominalV = feed.nominalVoltageV();
        faults.range("/supplyV", supplyV, 1, 60)
                .check(
                        nominalV == null || nominalV == 6 || nominalV == 12 || nominalV == 24,
                        InputError.Code.OUT_OF_RANGE,
                        "/nominalVoltageV",
                        nominalV,
                        Accepted.ONE_OF,
                        texts("names", List.of("6", "12", "24")));
        assumptions.or(
                nominalV == null ? null : (Double) nominalV.doubleValue(),
                AssumedValue.NOMINAL_VOLTAGE,
                nominalV(),
                "V");
        Optional<MarginSearch> searched = assumptions.part(() -> search.resolve(assumptions, feed));
        Optional<SparkSystem> system = system(assumptions);
        Optional<SelfHeating> heating = system.flatMap(s -> heating(assumptions, s));
        faults.reject();
        return new Resolved(
                system.orElseThrow(),
                speed,
                supplyV,
                usualSupplyV(),
                nominalV(),
                primarySwitch.ratingA(),
                feed.bypassedOrNot(),
                heating,
                searched.orElseThrow(),
                assumptions.lines());
    }

    /** The supply while charging. */
    private double usualSupplyV() {
        Integer given = feed.nominalVoltageV();
        double nominalV = given != null ? given : coil.preset() == CoilPreset.FOR_DIRECT_FEED_6V ? 6 : TABLE_NOMINAL_V;
        return UsualVoltages.CHARGING_V * (nominalV / TABLE_NOMINAL_V);
    }

    /** The nominal voltage of the vehicle: as given, else by the supply asked about and the coil: 6, 12 or 24. */
    double nominalV() {
        Integer given = feed.nominalVoltageV();
        if (given != null) {
            return given;
        }
        if (coil.preset() == CoilPreset.FOR_DIRECT_FEED_6V) {
            return 6;
        }
        Double ohm = coil.primaryResistanceOhm();
        double askedV = supplyV();
        boolean few = ohm != null && ohm >= LEAST_6V_COIL_OHM && ohm < MOST_6V_COIL_OHM && coil.preset() == null;
        return askedV > MOST_12V ? 24 : askedV <= MOST_6V && few ? 6 : 12;
    }

    /** The same ignition with what its contacts or module may carry, if that is given. */
    public SparkInput withSwitchRatingA(@Nullable Double ratingA) {
        return new SparkInput(
                speedRpm,
                feed,
                coil,
                coilTemperatureC,
                coilThermalResistanceKPerW,
                primarySwitch.withRatingA(ratingA),
                engine,
                gap,
                burningV,
                search);
    }

    /** The supply that is meant: as given, else as is usual with this coil. */
    public double supplyV() {
        Double given = feed.supplyV();
        return given == null ? usualSupplyV() : given;
    }

    /** The same ignition on a given supply. */
    public SparkInput withSupplyV(double supplyV) {
        return new SparkInput(
                speedRpm,
                new FeedInput(
                        supplyV,
                        feed.feedResistanceOhm(),
                        feed.ballastResistanceOhm(),
                        feed.bypassed(),
                        feed.nominalVoltageV()),
                coil,
                coilTemperatureC,
                coilThermalResistanceKPerW,
                primarySwitch,
                engine,
                gap,
                burningV,
                search);
    }

    /**
     * The same ignition with what belongs to the engine taken from another where it is left out here: nominal voltage,
     * speed, cylinders and firing, plug gap and compression.
     */
    public SparkInput completedFrom(SparkInput other) {
        boolean sweeps = search.speedSweep() != null;
        return new SparkInput(
                speedRpm == null && !sweeps ? other.speedRpm : speedRpm,
                feed.completedFrom(other.feed),
                coil,
                coilTemperatureC,
                coilThermalResistanceKPerW,
                primarySwitch,
                engine.completedFrom(other.engine),
                gap.completedFrom(other.gap),
                burningV,
                search);
    }

    /** The same ignition with both sweeps; the point asked about stays. */
    SparkInput withSweeps(SweepRange speeds, SweepRange supplies) {
        Double askedRpm = speedRpm == null && search.speedSweep() != null
                ? (Double) search.speedSweep().from()
                : speedRpm;
        return new SparkInput(
                askedRpm,
                feed,
                coil,
                coilTemperatureC,
                coilThermalResistanceKPerW,
                primarySwitch,
                engine,
                gap,
                burningV,
                new SearchInput(
                        search.reserveRatio(),
                        search.topSpeedRpm(),
                        search.crankingSpeedRpm(),
                        search.crankingBypassed(),
                        speeds,
                        supplies));
    }

    private double speed(InputErrors faults) {
        if (speedRpm == null && search.speedSweep() != null) {
            return search.speedSweep().from();
        }
        faults.check(
                        speedRpm != null,
                        InputError.Code.MISSING,
                        "/speedRpm",
                        null,
                        AcceptedSpark.SPEED,
                        plain("min", 20),
                        plain("max", 20_000),
                        texts("curves", List.of("speedFromRpm", "speedToRpm", "speedSteps")))
                .range("/speedRpm", speedRpm, 20, 20_000);
        return speedRpm == null ? 0 : speedRpm;
    }

    private Optional<SparkSystem> system(Assumptions assumptions) {
        Optional<Firing> firing = assumptions.part(() -> engine.resolve(assumptions));
        Optional<CoilData> coilData = assumptions.part(() -> coil.resolve(assumptions, nominalV()));
        Optional<PrimarySwitch> closing =
                assumptions.part(() -> primarySwitch.resolve(assumptions, firing.orElse(ANY_FIRING), nominalV()));
        Optional<BreakdownVoltage> breakdown = assumptions.part(() -> gap.resolve(assumptions));
        double feedOhm =
                assumptions.or(feed.feedResistanceOhm(), AssumedValue.FEED_RESISTANCE, UsualIgnition.FEED_OHM, "Ω");
        double temperatureC = assumptions.or(coilTemperatureC, AssumedValue.COIL_TEMPERATURE, 20, "°C");
        double burnV = assumptions.or(burningV, AssumedValue.BURNING_VOLTAGE, 1500, "V");
        if (firing.isEmpty() || coilData.isEmpty() || closing.isEmpty() || breakdown.isEmpty()) {
            SparkSystem.range(assumptions.faults(), feedOhm, feed.ballastOhm(), temperatureC, burnV);
            return Optional.empty();
        }
        return assumptions.part(() -> new SparkSystem(
                feedOhm,
                feed.ballastOhm(),
                coilData.get(),
                temperatureC,
                closing.get(),
                firing.get(),
                burnV,
                Demand.of(breakdown.get(), firing.get())));
    }

    private Optional<SelfHeating> heating(Assumptions assumptions, SparkSystem system) {
        if (coilThermalResistanceKPerW == null) {
            return Optional.empty();
        }
        double fromC = system.coilTemperatureC();
        assumptions
                .faults()
                .check(
                        fromC <= HOTTEST_START_C,
                        InputError.Code.CONTRADICTION,
                        "/coilTemperatureC",
                        fromC,
                        AcceptedSpark.COOL_START,
                        plain("max", HOTTEST_START_C));
        return fromC > HOTTEST_START_C
                ? Optional.empty()
                : assumptions.part(() -> new SelfHeating(
                        system.coil().primaryResistanceOhm(),
                        SelfHeating.COPPER_PER_K,
                        coilThermalResistanceKPerW,
                        fromC));
    }
}
