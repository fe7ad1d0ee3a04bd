package loomwright.ignition.spark;

import java.util.ArrayList;
import java.util.List;
import loomwright.ignition.FeedNeed;
import loomwright.ignition.SelfHeating;
import loomwright.ignition.WorkingNumber;
import loomwright.ignition.gap.BreakdownFormula;
import loomwright.ignition.gap.BreakdownVoltage;
import loomwright.ignition.primary.CoilData;
import loomwright.ignition.primary.DwellLaw;
import loomwright.ignition.primary.PrimaryCircuit;
import loomwright.ignition.primary.SecondaryVoltage;

/** The steps of a spark calculation with the numbers in them, as a textbook sets them out. */
final class SparkWorking {
    private final SparkSystem system;
    private final SparkInput.Resolved question;
    private final SparkResult result;
    private final SparkPoint at;
    private final PrimaryCircuit circuit;
    private final List<String> lines = new ArrayList<>();

    private SparkWorking(SparkInput.Resolved question, SparkResult result) {
        this.question = question;
        this.system = question.system();
        this.result = result;
        this.at = result.at();
        this.circuit = system.circuit(at.supplyV(), at.bypassed());
    }

    static List<String> lines(SparkInput.Resolved question, SparkResult result) {
        SparkWorking working = new SparkWorking(question, result);
        working.circuit();
        working.time();
        working.current();
        working.voltage();
        working.heat();
        working.boundaries();
        return List.copyOf(working.lines);
    }

    private void circuit() {
        if (system.coilTemperatureC() != 20) {
            add(
                    "Coil at %s C: R = R20 (1 + 0.00393 (T - 20)) = %s x (1 + 0.00393 x %s) = %s ohm",
                    system.coilTemperatureC(),
                    system.coil().primaryResistanceOhm(),
                    system.coilTemperatureC() - 20,
                    system.coilResistanceOhm());
        }
        add(
                "Loop: R = feed + ballast + coil = %s + %s + %s = %s ohm"
                        + (at.bypassed() ? " (ballast bypassed)" : ""),
                system.feedResistanceOhm(),
                system.ballastOhm(at.bypassed()),
                system.coilResistanceOhm(),
                circuit.resistanceOhm());
        add(
                "Driving voltage: V = supply - drop = %s - %s = %s V",
                at.supplyV(), system.primarySwitch().dropV(), circuit.drivingV());
        add("Final current: V / R = %s / %s = %s A", circuit.drivingV(), circuit.resistanceOhm(), circuit.finalA());
        add(
                "Time constant: L / R = %s mH / %s ohm = %s ms",
                circuit.inductanceH() * 1e3, circuit.resistanceOhm(), circuit.timeConstantS() * 1e3);
    }

    private void time() {
        add(
                "Time between sparks of a coil: T = 60 x turns / n = 60 x %s / %s = %s ms",
                system.firing().turnsPerSpark(), at.speedRpm(), at.cycleS() * 1e3);
        DwellLaw law = system.primarySwitch().dwellLaw();
        if (law instanceof DwellLaw.FixedAngle angle) {
            double perRpm = 6 * system.firing().breakerTurnsPerCrankTurn();
            add(
                    "Dwell: t = angle / (%s n) = %s / (%s x %s) = %s ms",
                    perRpm, angle.dwellDegrees(), perRpm, at.speedRpm(), at.dwellS() * 1e3);
        } else if (law instanceof DwellLaw.ConstantTime constant) {
            add(
                    "Dwell: t = min(%s ms, %s T) = %s ms",
                    constant.dwellS() * 1e3, constant.maxDutyFraction(), at.dwellS() * 1e3);
        } else if (law instanceof DwellLaw.CurrentControlled controlled) {
            add(
                    "Dwell: time to reach the limit of %s A, at most %s T = %s ms: t = %s ms",
                    circuit.limitA(),
                    controlled.maxDutyFraction(),
                    controlled.maxDutyFraction() * at.cycleS() * 1e3,
                    at.dwellS() * 1e3);
        }
        add("Duty: t / T = %s / %s = %s", at.dwellS() * 1e3, at.cycleS() * 1e3, at.dutyFraction());
    }

    private void current() {
        add(
                "Residual current: the spark takes U / (N L) = %s / (%s x %s mH) = %s A/ms for %s ms and leaves i0 = %s A",
                system.burningV(),
                system.coil().turnsRatio(),
                circuit.inductanceH() * 1e3,
                circuit.releaseAPerS() / 1e3,
                at.sparkS() * 1e3,
                at.residualA());
        if (at.heldS() > 0) {
            add(
                    "Current at break: the module's limit, %s A, reached after %s ms and held for %s ms",
                    at.peakA(), (at.dwellS() - at.heldS()) * 1e3, at.heldS() * 1e3);
        } else {
            add(
                    "Current at break: i = V/R + (i0 - V/R) exp(-t R/L) = %s + (%s - %s) x exp(-%s) = %s A",
                    circuit.finalA(),
                    at.residualA(),
                    circuit.finalA(),
                    at.dwellS() / circuit.timeConstantS(),
                    at.peakA());
        }
        add(
                "Energy: E = L i^2 / 2 = 0.5 x %s mH x %s^2 = %s mJ, of which %s mJ are given off before the next dwell",
                circuit.inductanceH() * 1e3, at.peakA(), at.energyJ() * 1e3, at.releasedJ() * 1e3);
    }

    private void voltage() {
        CoilData coil = system.coil();
        SecondaryVoltage secondary = SecondaryVoltage.of(coil, at.energyJ());
        add(
                "Available by energy: sqrt(2 eta E / C) = sqrt(2 x %s x %s mJ / %s pF) = %s kV",
                coil.efficiencyFraction(),
                at.energyJ() * 1e3,
                coil.secondaryCapacitanceF() * 1e12,
                secondary.byEnergyV() / 1e3);
        add(
                "Available by clamp: N U = %s x %s = %s kV; the lower counts: %s kV",
                coil.turnsRatio(), coil.primaryClampV(), secondary.byClampV() / 1e3, at.availableV() / 1e3);
        Demand demand = result.demand();
        BreakdownVoltage plug = demand.plug();
        add(
                "Gas in the gap: %s bar, %s K, as dense as air of 293 K at p x 293 / T = %s atm",
                plug.gap().pressureBar(), plug.gap().temperatureK(), plug.gap().densityAtm());
        for (BreakdownVoltage.ByFormula one : plug.all()) {
            add(
                    "Required by " + one.formula().formula() + ": "
                            + one.formula().working(plug.gap()) + " = %s kV"
                            + (one.withinRange() ? "" : " (not meant for this gap)"),
                    one.voltageV() / 1e3);
        }
        if (plug.formula() == null) {
            add(
                    "Required: middle of %s kV and %s kV = %s kV",
                    plug.lowestV() / 1e3, plug.highestV() / 1e3, plug.voltageV() / 1e3);
        }
        if (demand.secondGapV() > 0) {
            add(
                    "Second plug in series, on its exhaust stroke: "
                            + BreakdownFormula.LINEAR.working(Demand.exhaust(plug)) + " = %s kV; both %s kV",
                    demand.secondGapV() / 1e3,
                    demand.requiredV() / 1e3);
        }
        add(
                "Margin: available / required = %s / %s = %s",
                at.availableV() / 1e3, at.requiredV() / 1e3, at.marginRatio());
    }

    private void heat() {
        add(
                "Average current: integral of i over the dwell / T = %s A; effective current %s A",
                at.averageA(), at.rmsA());
        add("Coil heat: I_eff^2 R = %s^2 x %s = %s W", at.rmsA(), system.coilResistanceOhm(), at.coilHeatW());
        if (at.ballastHeatW() > 0) {
            add(
                    "Ballast heat: I_eff^2 R = %s^2 x %s = %s W",
                    at.rmsA(), system.ballastOhm(at.bypassed()), at.ballastHeatW());
        }
        add("Breaker or module: %s W", at.switchHeatW());
        SparkResult.Closed closed = result.closed();
        add(
                "Key on, engine stopped, primary closed: %s A, %s V at the coil, %s W in the coil, %s W in the ballast",
                closed.currentA(), closed.coilV(), closed.coilHeatW(), closed.ballastHeatW());
        SparkResult.HotCoil hot = result.hotCoil();
        if (hot != null && hot.end() instanceof SelfHeating.Settled settled) {
            add(
                    "Coil warmed up: T = T_start + R_th P(R(T)) settles at %s C, %s ohm, %s W",
                    settled.hot().temperatureC(),
                    settled.hot().resistanceOhm(),
                    settled.hot().powerW());
        }
    }

    private void boundaries() {
        FeedNeed need = result.feedNeed();
        add(
                "Largest lasting current of the feed, "
                        + (need.when() == FeedNeed.When.KEY_ON
                                ? "key on, every contact closed"
                                : "running at " + WorkingNumber.of(need.speedRpm() == null ? 0 : need.speedRpm())
                                        + " rpm")
                        + ": %s A",
                need.currentA());
        boundary(result.marginEndsRpm(), "The margin (ratio 1)");
        boundary(
                result.reserveEndsRpm(),
                "The reserve (ratio " + WorkingNumber.of(question.search().reserveRatio()) + ")");
        Boundary starts = result.startsAboveV();
        add(
                starts.kind() == Boundary.Kind.AT
                        ? "At cranking speed, %s rpm, it starts above %s V"
                        : "At cranking speed, %s rpm, it does not start even with %s V",
                question.search().crankingSpeedRpm(),
                starts.value());
    }

    private void boundary(Boundary ends, String what) {
        add(
                what
                        + switch (ends.kind()) {
                            case AT -> " ends at %s rpm";
                            case NOT_REACHED -> " holds to %s rpm";
                            case NEVER_THERE -> " is not there at %s rpm";
                        },
                ends.value());
    }

    private void add(String line, double... values) {
        lines.add(WorkingNumber.line(line, values));
    }
}
