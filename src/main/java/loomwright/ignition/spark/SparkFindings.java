package loomwright.ignition.spark;

import static loomwright.message.Arg.arg;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import loomwright.answer.Basis;
import loomwright.answer.Finding;
import loomwright.answer.Severity;
import loomwright.circuit.UsualVoltages;
import loomwright.ignition.SelfHeating;
import loomwright.ignition.gap.BreakdownFormula;
import loomwright.ignition.gap.BreakdownVoltage;
import loomwright.ignition.primary.CoilData;
import loomwright.ignition.primary.CoilData.Feed;
import loomwright.ignition.primary.EngineHeat;
import loomwright.ignition.primary.PrimarySwitch;
import loomwright.judgement.Verdict;
import loomwright.judgement.ignition.IgnitionRule;
import loomwright.judgement.ignition.ModuleSupplyRule;
import loomwright.judgement.ignition.PrimaryLoop;
import loomwright.judgement.ignition.SparkMarginRule;
import loomwright.message.Arg;
import org.jspecify.annotations.Nullable;

/** What an adviser would add to the figures of a spark: each finding only where it applies. */
final class SparkFindings {

    /** From here a gap is wider than a plain coil and contacts were made for (plug gap 0.5 to 0.8 mm with contacts). */
    private static final double WIDE_GAP_MM = 1.0;

    /** From this share of the charging volts on the supply asked about is that of a running engine. */
    private static final double RUNNING_SHARE = 0.85;
    /** Slower than this the starter turns the engine. */
    private static final double LEAST_RUNNING_RPM = 400;

    private static final Basis PRACTICE = Basis.commonPractice("judgement of an ignition's figures");

    private final SparkInput.Resolved question;
    private final SparkSystem system;
    private final SparkPoint at;
    private final Boundary reserveEndsRpm;
    private final SparkResult.@Nullable HotCoil hotCoil;
    private final List<Finding> findings = new ArrayList<>();

    SparkFindings(
            SparkInput.Resolved question,
            SparkPoint at,
            Boundary reserveEndsRpm,
            SparkResult.@Nullable HotCoil hotCoil) {
        this.question = question;
        this.system = question.system();
        this.at = at;
        this.reserveEndsRpm = reserveEndsRpm;
        this.hotCoil = hotCoil;
    }

    List<Finding> list() {
        margin();
        wideGap();
        demand();
        moduleSupply();
        primary();
        residual();
        runaway();
        findings.sort(Comparator.comparing(Finding::severity));
        return findings;
    }

    private void margin() {
        double reserve = question.search().reserveRatio();
        BreakdownVoltage plug = system.demand().plug();
        double secondV = system.demand().secondGapV();
        Verdict verdict = SparkMarginRule.judge(
                at.margin().availableV(),
                at.margin().requiredV(),
                plug.lowestV() + secondV,
                plug.highestV() + secondV,
                reserve);
        verdict.level().severity().ifPresent(severity -> {
            boolean fails = at.margin().marginRatio() < 1;
            Arg availableV = arg("availableV", at.margin().availableV());
            Arg requiredV = arg("requiredV", at.margin().requiredV());
            Arg marginRatio = arg("marginRatio", at.margin().marginRatio());
            Arg borderline = arg("borderline", verdict.borderline() ? "yes" : "no");
            findings.add(Finding.of(
                            severity,
                            fails
                                    ? SparkFinding.NO_SPARK.with(availableV, requiredV, marginRatio, borderline)
                                    : SparkFinding.RESERVE_MISSED.with(
                                            availableV,
                                            requiredV,
                                            marginRatio,
                                            arg("wantedRatio", reserve),
                                            borderline),
                            SparkMarginRule.BASIS)
                    .remedy(SparkRemedy.of(question, at)));
        });
    }

    /** A wide gap needs a coil and module made for it, though a plain coil may just fire it when all is new. */
    private void wideGap() {
        double gapMm = system.demand().plug().gap().gapMm();
        boolean madeForIt = system.coil().meantFor() == Feed.LIMITING_MODULE
                && system.primarySwitch() instanceof PrimarySwitch.Module;
        boolean dead = !system.primarySwitch().worksAt(at.supplyV());
        if (gapMm < WIDE_GAP_MM || madeForIt || dead) {
            return;
        }
        boolean always = reserveEndsRpm.kind() == Boundary.Kind.NOT_REACHED;
        findings.add(Finding.of(
                        always ? Severity.NOTE : Severity.WARNING,
                        SparkFinding.GAP_NEEDS_OTHER_COIL.with(
                                arg("gapMm", gapMm),
                                arg("requiredV", at.margin().requiredV()),
                                arg("marginRatio", at.margin().marginRatio()),
                                arg("reserveRatio", question.search().reserveRatio()),
                                arg("reserve", reserveEndsRpm.kind()),
                                arg("speedRpm", reserveEndsRpm.value())),
                        SparkRemedy.GAP_BASIS)
                .remedy(SparkFinding.SET_GAP_OR_FIT_MODULE.with()));
    }

    private void demand() {
        BreakdownVoltage plug = system.demand().plug();
        findings.add(Finding.note(
                SparkFinding.REQUIRED_SPREAD.with(
                        arg("lowestV", plug.lowestV()),
                        arg("highestV", plug.highestV()),
                        arg("requiredV", plug.voltageV()),
                        arg("taken", plug.formula() == null ? "middle" : "named")),
                plug.basis()));
        if (!plug.withinRange()) {
            BreakdownFormula formula = plug.formula();
            findings.add(Finding.note(
                    SparkFinding.OUTSIDE_FORMULA_RANGE.with(
                            arg("range", formula == null ? BreakdownFormula.UNIFORM_FIELD.range() : formula.range())),
                    plug.basis()));
        }
    }

    /** A module that works on so few volts only if it is lucky. */
    private void moduleSupply() {
        if (!(system.primarySwitch() instanceof PrimarySwitch.Module module)) {
            return;
        }
        ModuleSupplyRule.judge(question.supplyV(), question.nominalV(), module.deadBelowV())
                .level()
                .severity()
                .ifPresent(severity -> findings.add(Finding.of(
                                severity,
                                SparkFinding.MODULE_SUPPLY_LOW.with(
                                        arg("supplyV", question.supplyV()),
                                        arg("deadV", module.deadBelowV()),
                                        arg("sureV", ModuleSupplyRule.sureV(question.nominalV(), module.deadBelowV()))),
                                ModuleSupplyRule.BASIS)
                        .remedy(SparkRemedy.forModule(question.nominalV(), module.deadBelowV()))));
    }

    /** Coil, ballast and switch by ohms, volts and heat. */
    private void primary() {
        findings.addAll(IgnitionRule.findings(loop()));
        if (at.stored().energyJ() > IgnitionRule.SATURATION_J
                && system.primarySwitch() instanceof PrimarySwitch.ContactBreaker) {
            findings.add(Finding.note(
                            SparkFinding.ENERGY_NOT_REAL.with(
                                    arg("energyJ", at.stored().energyJ())),
                            IgnitionRule.ENERGY_BASIS)
                    .remedy(SparkFinding.LOOK_UP_INDUCTANCE.with()));
        }
    }

    /** The primary circuit as it is judged: at running volts, whatever the volts asked about. */
    private PrimaryLoop loop() {
        double askedV = question.supplyV();
        double nominalV = question.nominalV();
        double usualV = UsualVoltages.CHARGING_V * nominalV / 12;
        boolean cranking = at.speedRpm() < LEAST_RUNNING_RPM;
        double limitA = system.primarySwitch().limitA();
        return new PrimaryLoop(
                nominalV,
                askedV >= RUNNING_SHARE * usualV ? askedV : usualV,
                system.feedResistanceOhm(),
                system.ballastOhm(false),
                question.bypassed() && !cranking,
                system.coil().primaryResistanceOhm(),
                new PrimaryLoop.PrimaryContact(
                        system.primarySwitch().dropV(),
                        system.primarySwitch() instanceof PrimarySwitch.Module,
                        Double.isInfinite(limitA) ? null : limitA,
                        question.switchRatingA()),
                runningHeat(cranking));
    }

    /** At idle or, if hotter, at the speed asked about, so that no speed hides it. */
    private EngineHeat runningHeat(boolean cranking) {
        CoilData coil = system.coil();
        return new EngineHeat(
                (rpm, circuit) -> system.primarySwitch().dwellLaw().at(system.firing(), rpm, circuit),
                cranking ? List.of(EngineHeat.IDLE_RPM) : List.of(EngineHeat.IDLE_RPM, at.speedRpm()),
                coil.primaryResistanceOhm(),
                coil.inductanceH(),
                system.burningV() / coil.turnsRatio());
    }

    private void residual() {
        if (at.build().residualA() > 0) {
            findings.add(Finding.note(
                    SparkFinding.SPARK_CUT_SHORT.with(
                            arg("residualA", at.build().residualA()),
                            arg("sparkS", at.stored().sparkS())),
                    PRACTICE));
        }
    }

    private void runaway() {
        if (hotCoil != null && hotCoil.end() instanceof SelfHeating.Runaway runaway) {
            findings.add(Finding.danger(
                            SparkFinding.COIL_BURNS.with(
                                    arg("temperatureC", runaway.atCeiling().temperatureC()),
                                    arg("coilHeatW", runaway.atCeiling().powerW())),
                            PRACTICE)
                    .remedy(SparkFinding.COOL_COIL.with()));
        }
    }
}
