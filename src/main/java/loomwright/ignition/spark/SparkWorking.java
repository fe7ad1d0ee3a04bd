package loomwright.ignition.spark;

import static loomwright.message.Arg.arg;
import static loomwright.message.Arg.quantities;

import java.util.ArrayList;
import java.util.List;
import loomwright.ignition.FeedNeed;
import loomwright.ignition.SelfHeating;
import loomwright.ignition.gap.BreakdownFormula;
import loomwright.ignition.gap.BreakdownVoltage;
import loomwright.ignition.gap.GapText;
import loomwright.ignition.primary.CoilData;
import loomwright.ignition.primary.DwellLaw;
import loomwright.ignition.primary.PrimaryCircuit;
import loomwright.ignition.primary.SecondaryVoltage;
import loomwright.message.Arg;
import loomwright.message.Argument.Quantity;
import loomwright.message.Message;
import loomwright.message.MessageCode;

/** The steps of a spark calculation with the numbers in them, as a textbook sets them out. */
final class SparkWorking {
    private final SparkSystem system;
    private final SparkInput.Resolved question;
    private final SparkResult result;
    private final SparkPoint at;
    private final PrimaryCircuit circuit;
    private final List<Message> lines = new ArrayList<>();

    private SparkWorking(SparkInput.Resolved question, SparkResult result) {
        this.question = question;
        this.system = question.system();
        this.result = result;
        this.at = result.at();
        this.circuit = system.circuit(at.supplyV(), at.bypassed());
    }

    static List<Message> lines(SparkInput.Resolved question, SparkResult result) {
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
                    SparkText.COIL_WARM,
                    arg("temperatureC", system.coilTemperatureC()),
                    arg("coldOhm", system.coil().primaryResistanceOhm()),
                    arg("resistanceOhm", system.coilResistanceOhm()));
        }
        add(
                SparkText.LOOP,
                arg("feedOhm", system.feedResistanceOhm()),
                arg("ballastOhm", system.ballastOhm(at.bypassed())),
                arg("coilOhm", system.coilResistanceOhm()),
                arg("resistanceOhm", circuit.resistanceOhm()),
                arg("bypassed", at.bypassed() ? "yes" : "no"));
        add(
                SparkText.DRIVING,
                arg("supplyV", at.supplyV()),
                arg("dropV", system.primarySwitch().dropV()),
                arg("drivingV", circuit.drivingV()));
        add(
                SparkText.FINAL_CURRENT,
                arg("drivingV", circuit.drivingV()),
                arg("resistanceOhm", circuit.resistanceOhm()),
                arg("finalA", circuit.finalA()));
        add(
                SparkText.TIME_CONSTANT,
                inductance(),
                arg("resistanceOhm", circuit.resistanceOhm()),
                arg("timeConstantS", circuit.timeConstantS()));
    }

    private Arg inductance() {
        return arg("inductance", new Quantity(circuit.inductanceH(), "H"));
    }

    private void time() {
        add(
                SparkText.CYCLE,
                arg("turnsFactor", system.firing().turnsPerSpark()),
                arg("speedRpm", at.speedRpm()),
                arg("cycleS", at.timing().cycleS()));
        DwellLaw law = system.primarySwitch().dwellLaw();
        if (law instanceof DwellLaw.FixedAngle angle) {
            add(
                    SparkText.DWELL_BY_ANGLE,
                    arg("perRpmFactor", 6 * system.firing().breakerTurnsPerCrankTurn()),
                    arg("angle", new Quantity(angle.dwellDegrees(), "°")),
                    arg("speedRpm", at.speedRpm()),
                    arg("dwellS", at.timing().dwellS()));
        } else if (law instanceof DwellLaw.ConstantTime constant) {
            add(
                    SparkText.DWELL_BY_TIME,
                    arg("wantedS", constant.dwellS()),
                    arg("dutyRatio", constant.maxDutyFraction()),
                    arg("dwellS", at.timing().dwellS()));
        } else if (law instanceof DwellLaw.CurrentControlled controlled) {
            add(
                    SparkText.DWELL_BY_CURRENT,
                    arg("limitA", circuit.limitA()),
                    arg("dutyRatio", controlled.maxDutyFraction()),
                    arg("mostS", controlled.maxDutyFraction() * at.timing().cycleS()),
                    arg("dwellS", at.timing().dwellS()));
        }
        add(
                SparkText.DUTY,
                arg("dwellS", at.timing().dwellS()),
                arg("cycleS", at.timing().cycleS()),
                arg("dutyRatio", at.timing().dutyFraction()));
    }

    private void current() {
        add(
                SparkText.RESIDUAL,
                arg("burningV", system.burningV()),
                arg("turnsRatio", system.coil().turnsRatio()),
                inductance(),
                arg("releaseAPerS", circuit.releaseAPerS()),
                arg("sparkS", at.stored().sparkS()),
                arg("residualA", at.build().residualA()));
        if (at.build().heldS() > 0) {
            add(
                    SparkText.BREAK_AT_LIMIT,
                    arg("peakA", at.build().peakA()),
                    arg("reachedS", at.timing().dwellS() - at.build().heldS()),
                    arg("heldS", at.build().heldS()));
        } else {
            add(
                    SparkText.BREAK,
                    arg("finalA", circuit.finalA()),
                    arg("residualA", at.build().residualA()),
                    arg("exponentFactor", at.timing().dwellS() / circuit.timeConstantS()),
                    arg("peakA", at.build().peakA()));
        }
        add(
                SparkText.ENERGY,
                inductance(),
                arg("peakA", at.build().peakA()),
                arg("energyJ", at.stored().energyJ()),
                arg("releasedJ", at.stored().releasedJ()));
    }

    private void voltage() {
        CoilData coil = system.coil();
        SecondaryVoltage secondary = SecondaryVoltage.of(coil, at.stored().energyJ());
        add(
                SparkText.AVAILABLE_BY_ENERGY,
                arg("efficiencyRatio", coil.efficiencyFraction()),
                arg("energyJ", at.stored().energyJ()),
                arg("capacitance", new Quantity(coil.secondaryCapacitanceF(), "F")),
                kilovolts("byEnergy", secondary.byEnergyV()));
        add(
                SparkText.AVAILABLE_BY_CLAMP,
                arg("turnsRatio", coil.turnsRatio()),
                arg("clampV", coil.primaryClampV()),
                kilovolts("byClamp", secondary.byClampV()),
                kilovolts("available", at.margin().availableV()));
        Demand demand = result.demand();
        BreakdownVoltage plug = demand.plug();
        add(
                GapText.GAS,
                arg("pressure", new Quantity(plug.gap().pressureBar(), "bar")),
                arg("temperatureK", plug.gap().temperatureK()),
                arg("density", new Quantity(plug.gap().densityAtm(), "atm")));
        for (BreakdownVoltage.ByFormula one : plug.all()) {
            add(
                    GapText.REQUIRED_BY_FORMULA,
                    arg("formula", one.formula().formula()),
                    arg("numbers", one.formula().working(plug.gap())),
                    kilovolts("required", one.voltageV()),
                    arg("meant", one.withinRange() ? "yes" : "no"));
        }
        if (plug.formula() == null) {
            add(
                    GapText.REQUIRED_MIDDLE,
                    kilovolts("lowest", plug.lowestV()),
                    kilovolts("highest", plug.highestV()),
                    kilovolts("required", plug.voltageV()));
        }
        if (demand.secondGapV() > 0) {
            add(
                    GapText.SECOND_PLUG,
                    arg("numbers", BreakdownFormula.LINEAR.working(Demand.exhaust(plug))),
                    kilovolts("second", demand.secondGapV()),
                    kilovolts("both", demand.requiredV()));
        }
        add(
                SparkText.MARGIN,
                kilovolts("available", at.margin().availableV()),
                kilovolts("required", at.margin().requiredV()),
                arg("marginRatio", at.margin().marginRatio()));
    }

    private static Arg kilovolts(String name, double volts) {
        return arg(name, new Quantity(volts / 1e3, "kV"));
    }

    private void heat() {
        add(
                SparkText.AVERAGE,
                arg("averageA", at.means().averageA()),
                arg("effectiveA", at.means().rmsA()));
        add(
                SparkText.COIL_HEAT,
                arg("effectiveA", at.means().rmsA()),
                arg("coilOhm", system.coilResistanceOhm()),
                arg("heatW", at.heat().coilHeatW()));
        if (at.heat().ballastHeatW() > 0) {
            add(
                    SparkText.BALLAST_HEAT,
                    arg("effectiveA", at.means().rmsA()),
                    arg("ballastOhm", system.ballastOhm(at.bypassed())),
                    arg("heatW", at.heat().ballastHeatW()));
        }
        add(SparkText.SWITCH_HEAT, arg("heatW", at.heat().switchHeatW()));
        SparkResult.Closed closed = result.closed();
        add(
                SparkText.PRIMARY_CLOSED,
                arg("currentA", closed.currentA()),
                arg("coilV", closed.coilV()),
                arg("coilHeatW", closed.coilHeatW()),
                arg("ballastHeatW", closed.ballastHeatW()));
        SparkResult.HotCoil hot = result.hotCoil();
        if (hot != null && hot.end() instanceof SelfHeating.Settled settled) {
            add(
                    SparkText.COIL_WARMED_UP,
                    arg("temperatureC", settled.hot().temperatureC()),
                    arg("resistanceOhm", settled.hot().resistanceOhm()),
                    arg("heatW", settled.hot().powerW()));
        }
    }

    private void boundaries() {
        FeedNeed need = result.feedNeed();
        Double speedRpm = need.speedRpm();
        add(
                SparkText.FEED_NEED,
                arg("currentA", need.currentA()),
                quantities("speedRpm", speedRpm == null ? List.of() : List.of(speedRpm)));
        boundary(SparkText.MARGIN_ENDS, result.ends().marginEndsRpm(), 1);
        boundary(
                SparkText.RESERVE_ENDS,
                result.ends().reserveEndsRpm(),
                question.search().reserveRatio());
        Boundary starts = result.ends().startsAboveV();
        add(
                SparkText.STARTS,
                arg("crankingRpm", question.search().crankingSpeedRpm()),
                arg("ends", starts.kind()),
                arg("supplyV", starts.value()));
    }

    private void boundary(SparkText what, Boundary ends, double ratio) {
        add(what, arg("marginRatio", ratio), arg("ends", ends.kind()), arg("speedRpm", ends.value()));
    }

    private void add(MessageCode code, Arg... arguments) {
        lines.add(code.with(arguments));
    }
}
