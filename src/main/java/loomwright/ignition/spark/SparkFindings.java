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
import loomwright.ignition.gap.BreakdownVoltage;
import loomwright.ignition.primary.CoilData.Feed;
import loomwright.ignition.primary.PrimarySwitch;
import loomwright.judgement.ignition.IgnitionMistake;
import loomwright.judgement.ignition.IgnitionRemedy;
import loomwright.judgement.ignition.IgnitionRule;
import loomwright.judgement.ignition.PrimaryLoop;
import loomwright.message.Arg;
import loomwright.message.Message;
import org.jspecify.annotations.Nullable;

/** What an adviser would add to the figures of a spark: each finding only where it applies. */
final class SparkFindings {

    /** From here a gap is wider than a plain coil and contacts were made for (plug gap 0.5 to 0.8 mm with contacts). */
    private static final double WIDE_GAP_MM = 1.0;

    /** Above this a supply is one of 24 V. */
    private static final double MOST_12V = 18;
    /** Up to this a supply may be one of 6 V; a 12 V one while cranking has more, or a coil of more ohms. */
    private static final double MOST_6V = 7.6;

    private static final double MOST_6V_COIL_OHM = 2.2;
    /** From this share of the charging volts on the supply asked about is that of a running engine. */
    private static final double RUNNING_SHARE = 0.85;
    /** Slower than this the starter turns the engine. */
    private static final double LEAST_RUNNING_RPM = 400;

    /** Of the wanted reserve: 1.2 of 1.5. Above it the reserve is missed by little. */
    private static final double WEAK_SHARE = 0.8;

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
        primary();
        residual();
        runaway();
        findings.sort(Comparator.comparing(Finding::severity));
        return findings;
    }

    private void margin() {
        double reserve = question.search().reserveRatio();
        Arg availableV = arg("availableV", at.availableV());
        Arg requiredV = arg("requiredV", at.requiredV());
        Arg marginRatio = arg("marginRatio", at.marginRatio());
        if (at.marginRatio() < 1) {
            findings.add(Finding.warning(SparkFinding.NO_SPARK.with(availableV, requiredV, marginRatio), PRACTICE)
                    .remedy(SparkFinding.RAISE_SPARK.with()));
        } else if (at.marginRatio() < reserve) {
            findings.add(Finding.of(
                            at.marginRatio() >= WEAK_SHARE * reserve ? Severity.NOTE : Severity.WARNING,
                            SparkFinding.RESERVE_MISSED.with(
                                    availableV, requiredV, marginRatio, arg("wantedRatio", reserve)),
                            PRACTICE)
                    .remedy(SparkFinding.RAISE_SPARK.with()));
        }
    }

    /** A wide gap needs a coil and module made for it, though a plain coil may just fire it when all is new. */
    private void wideGap() {
        double gapMm = system.demand().plug().gap().gapMm();
        boolean madeForIt = system.coil().meantFor() == Feed.LIMITING_MODULE
                && system.primarySwitch() instanceof PrimarySwitch.Module;
        if (gapMm < WIDE_GAP_MM || madeForIt) {
            return;
        }
        boolean always = reserveEndsRpm.kind() == Boundary.Kind.NOT_REACHED;
        findings.add(Finding.of(
                        always ? Severity.NOTE : Severity.WARNING,
                        SparkFinding.GAP_NEEDS_OTHER_COIL.with(
                                arg("gapMm", gapMm),
                                arg("requiredV", at.requiredV()),
                                arg("marginRatio", at.marginRatio()),
                                arg("reserveRatio", question.search().reserveRatio()),
                                arg("reserve", reserveEndsRpm.kind()),
                                arg("speedRpm", reserveEndsRpm.value())),
                        Basis.commonPractice("plug gap 0.5 to 0.8 mm with contacts, 0.8 to 1.5 mm with electronics"))
                .remedy(SparkFinding.SET_GAP_OR_FIT_MODULE.with()));
    }

    private void demand() {
        BreakdownVoltage plug = system.demand().plug();
        findings.add(Finding.note(
                SparkFinding.REQUIRED_SPREAD.with(arg("lowestV", plug.lowestV()), arg("highestV", plug.highestV())),
                plug.formula().basis()));
        if (!plug.withinRange()) {
            findings.add(Finding.note(
                    SparkFinding.OUTSIDE_FORMULA_RANGE.with(
                            arg("range", plug.formula().range())),
                    plug.formula().basis()));
        }
    }

    /** Coil, ballast and switch by ohms, volts and heat. */
    private void primary() {
        IgnitionRule.judge(loop()).forEach(this::mistake);
        if (at.energyJ() > IgnitionRule.SATURATION_J
                && system.primarySwitch() instanceof PrimarySwitch.ContactBreaker) {
            findings.add(Finding.note(
                            SparkFinding.ENERGY_NOT_REAL.with(arg("energyJ", at.energyJ())), IgnitionRule.ENERGY_BASIS)
                    .remedy(SparkFinding.LOOK_UP_INDUCTANCE.with()));
        }
        if (loop().restHeatW() > IgnitionRule.KEY_ON_HEAT_W
                && loop().restHeatW() <= IgnitionRule.REST_HEAT_W
                && !loop().module()) {
            findings.add(Finding.note(
                            SparkFinding.KEY_NOT_TO_BE_LEFT_ON.with(arg("coilHeatW", loop().restHeatW())),
                            IgnitionRule.HEAT_BASIS)
                    .remedy(SparkFinding.TURN_KEY_OFF.with()));
        }
    }

    /** The primary circuit as it is judged: at running volts, whatever the volts asked about. */
    private PrimaryLoop loop() {
        double coilOhm = system.coil().primaryResistanceOhm();
        double askedV = question.supplyV();
        double nominalV = askedV > MOST_12V ? 24 : askedV <= MOST_6V && coilOhm < MOST_6V_COIL_OHM ? 6 : 12;
        double usualV = UsualVoltages.CHARGING_V * nominalV / 12;
        boolean cranking = at.speedRpm() < LEAST_RUNNING_RPM;
        double limitA = system.primarySwitch().limitA();
        return new PrimaryLoop(
                nominalV,
                askedV >= RUNNING_SHARE * usualV ? askedV : usualV,
                system.feedResistanceOhm(),
                system.ballastOhm(false),
                question.bypassed() && !cranking,
                coilOhm,
                system.primarySwitch().dropV(),
                system.primarySwitch() instanceof PrimarySwitch.Module,
                Double.isInfinite(limitA) ? null : limitA,
                null,
                at.speedRpm() < LEAST_RUNNING_RPM ? null : at.coilHeatW());
    }

    private void mistake(IgnitionMistake mistake) {
        String unit = switch (mistake.kind()) {
            case COIL_OVERHEATS -> "W";
            case BALLAST_TOO_SMALL -> "Ohm";
            default -> "A";
        };
        findings.add(Finding.of(
                        mistake.level().severity().orElse(Severity.NOTE),
                        mistake.kind()
                                .with(
                                        arg("judged" + unit, mistake.value()),
                                        arg("limit" + unit, mistake.limit()),
                                        arg("closedA", loop().runningA()),
                                        arg("coilHeatW", loop().restHeatW())),
                        mistake.basis())
                .remedy(mistake.remedies().stream()
                        .map(SparkFindings::words)
                        .reduce((before, next) ->
                                SparkFinding.CHOICE_OF_REMEDIES.with(arg("first", before), arg("other", next)))
                        .orElse(null)));
    }

    private static Message words(IgnitionRemedy remedy) {
        return remedy.ohm() > 0
                ? remedy.kind().with(arg("resistanceOhm", remedy.ohm()))
                : remedy.kind().with();
    }

    private void residual() {
        if (at.residualA() > 0) {
            findings.add(Finding.note(
                    SparkFinding.SPARK_CUT_SHORT.with(arg("residualA", at.residualA()), arg("sparkS", at.sparkS())),
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
