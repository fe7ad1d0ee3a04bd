package loomwright.ignition.spark;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;
import loomwright.answer.Basis;
import loomwright.answer.Finding;
import loomwright.answer.Severity;
import loomwright.circuit.UsualVoltages;
import loomwright.ignition.SelfHeating;
import loomwright.ignition.WorkingNumber;
import loomwright.ignition.gap.BreakdownVoltage;
import loomwright.ignition.primary.CoilData.Feed;
import loomwright.ignition.primary.PrimarySwitch;
import loomwright.judgement.ignition.IgnitionMistake;
import loomwright.judgement.ignition.IgnitionRemedy;
import loomwright.judgement.ignition.IgnitionRule;
import loomwright.judgement.ignition.PrimaryLoop;
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
        List<Finding.Figure> figures = List.of(
                new Finding.Figure("availableKv", at.availableV() / 1e3),
                new Finding.Figure("requiredKv", at.requiredV() / 1e3),
                new Finding.Figure("marginRatio", at.marginRatio()));
        if (at.marginRatio() < 1) {
            add(
                    Severity.WARNING,
                    "no-spark",
                    "No spark: " + WorkingNumber.kilo(at.availableV()) + " kV available, "
                            + WorkingNumber.kilo(at.requiredV()) + " kV required.",
                    figures,
                    PRACTICE,
                    "A narrower gap, more supply at the coil, or a coil with more energy.");
        } else if (at.marginRatio() < reserve) {
            add(
                    at.marginRatio() >= WEAK_SHARE * reserve ? Severity.NOTE : Severity.WARNING,
                    "reserve-missed",
                    "A spark, but less than the wanted reserve of " + WorkingNumber.of(reserve) + ": "
                            + WorkingNumber.kilo(at.availableV()) + " kV available over "
                            + WorkingNumber.kilo(at.requiredV())
                            + " kV required is " + WorkingNumber.of(at.marginRatio())
                            + "; worn plugs, damp leads or a lean charge will make it miss.",
                    figures,
                    PRACTICE,
                    "A narrower gap, more supply at the coil, or a coil with more energy.");
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
        String reserve = WorkingNumber.of(question.search().reserveRatio());
        String kept = switch (reserveEndsRpm.kind()) {
            case AT ->
                "keeps the reserve of " + reserve + " only to " + WorkingNumber.of(reserveEndsRpm.value()) + " rpm";
            case NEVER_THERE -> "does not have the reserve of " + reserve + " at any speed";
            case NOT_REACHED -> "has the reserve of " + reserve + " only while plugs, leads and coil are new";
        };
        add(
                reserveEndsRpm.kind() == Boundary.Kind.NOT_REACHED ? Severity.NOTE : Severity.WARNING,
                "gap-needs-other-coil",
                "A gap of " + WorkingNumber.of(gapMm) + " mm asks for " + WorkingNumber.kilo(at.requiredV())
                        + " kV; this coil " + kept
                        + ". A gap of 1.1 to 1.2 mm needs a coil and module made for it.",
                List.of(
                        new Finding.Figure("gapMm", gapMm),
                        new Finding.Figure("requiredKv", at.requiredV() / 1e3),
                        new Finding.Figure("marginRatio", at.marginRatio())),
                Basis.commonPractice("plug gap 0.5 to 0.8 mm with contacts, 0.8 to 1.5 mm with electronics"),
                "Set the gap to 0.6 to 0.8 mm, or fit a high-energy coil with a module that limits its current.");
    }

    private void demand() {
        BreakdownVoltage plug = system.demand().plug();
        List<Finding.Figure> spread = List.of(
                new Finding.Figure("lowestKv", plug.lowestV() / 1e3),
                new Finding.Figure("highestKv", plug.highestV() / 1e3));
        add(
                Severity.NOTE,
                "required-spread",
                "Required voltage: the four published formulas give " + WorkingNumber.kilo(plug.lowestV()) + " to "
                        + WorkingNumber.kilo(plug.highestV()) + " kV for this gap; take the spread as the uncertainty.",
                spread,
                plug.formula().basis(),
                null);
        if (!plug.withinRange()) {
            add(
                    Severity.NOTE,
                    "outside-formula-range",
                    "Outside the range of the formula (" + plug.formula().range()
                            + "): the required voltage is an extrapolation.",
                    List.of(),
                    plug.formula().basis(),
                    null);
        }
    }

    /** Coil, ballast and switch by ohms, volts and heat. */
    private void primary() {
        IgnitionRule.judge(loop()).forEach(this::mistake);
        if (at.energyJ() > IgnitionRule.SATURATION_J
                && system.primarySwitch() instanceof PrimarySwitch.ContactBreaker) {
            add(
                    Severity.NOTE,
                    "energy-not-real",
                    "The figures give " + WorkingNumber.milli(at.energyJ()) + " mJ. A real coil saturates before that.",
                    List.of(new Finding.Figure("energyMj", at.energyJ() * 1e3)),
                    IgnitionRule.ENERGY_BASIS,
                    "Look up the inductance of the coil.");
        }
        if (loop().restHeatW() > IgnitionRule.KEY_ON_HEAT_W
                && loop().restHeatW() <= IgnitionRule.REST_HEAT_W
                && !loop().module()) {
            add(
                    Severity.NOTE,
                    "key-not-to-be-left-on",
                    "With the key left on the coil takes " + WorkingNumber.of(loop().restHeatW()) + " W.",
                    List.of(new Finding.Figure("coilHeatW", loop().restHeatW())),
                    IgnitionRule.HEAT_BASIS,
                    "Do not leave the key on with the engine stopped.");
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
        String value = WorkingNumber.of(mistake.value());
        String limit = WorkingNumber.of(mistake.limit());
        double closedA = loop().runningA();
        String text = switch (mistake.kind()) {
            case BYPASS_LEFT_ON ->
                "The ballast is bypassed while the engine runs. The coil draws " + value
                        + " A with the primary closed.";
            case NO_CURRENT_LIMIT ->
                "Nothing limits the current of this coil: " + value + " A with the primary closed. It burns what"
                        + " switches it.";
            case COIL_OVERHEATS -> "The coil takes " + value + " W. It stands " + limit + " W.";
            case BALLAST_TOO_SMALL ->
                "The ballast of " + value + " ohm is too small: " + WorkingNumber.of(closedA)
                        + " A with the primary closed.";
            case COIL_WEAK ->
                "The coil draws " + value + " A where a coil for this supply draws " + limit + " A: a weak spark.";
            case CONTACTS_OVERLOADED -> "The contacts carry " + value + " A. They stand " + limit + " A for long.";
            case MODULE_OVERLOADED -> "The module switches " + value + " A. It is rated " + limit + " A.";
            case LIMIT_NOT_REACHED ->
                "Only " + value + " A flow. The module never reaches its limit of " + limit + " A.";
            case COIL_OF_LITTLE_USE ->
                "This coil draws " + value + " A. The module limits at " + limit + " A, so little is gained.";
        };
        boolean watts = mistake.kind() == IgnitionMistake.Kind.COIL_OVERHEATS;
        boolean ohms = mistake.kind() == IgnitionMistake.Kind.BALLAST_TOO_SMALL;
        String unit = watts ? "W" : ohms ? "Ohm" : "A";
        add(
                mistake.level().severity().orElse(Severity.NOTE),
                mistake.kind().code(),
                text,
                List.of(
                        new Finding.Figure("judged" + unit, mistake.value()),
                        new Finding.Figure("limit" + unit, mistake.limit()),
                        new Finding.Figure("closedA", closedA),
                        new Finding.Figure("coilHeatW", loop().restHeatW())),
                mistake.basis(),
                mistake.remedies().isEmpty()
                        ? null
                        : mistake.remedies().stream().map(SparkFindings::words).collect(Collectors.joining(" Or: ")));
    }

    private static String words(IgnitionRemedy remedy) {
        return switch (remedy.kind()) {
            case FREE_BYPASS -> "Free the bypass. Feed it from the start terminal only.";
            case FIT_BALLAST -> "Fit a ballast of " + WorkingNumber.of(remedy.ohm()) + " ohm.";
            case REMOVE_BALLAST -> "Take the ballast out.";
            case FIT_COIL -> "Fit a coil of " + WorkingNumber.of(remedy.ohm()) + " ohm without a ballast.";
            case FIT_LIMITING_MODULE -> "Fit a module that limits the current.";
        };
    }

    private void residual() {
        if (at.residualA() > 0) {
            add(
                    Severity.NOTE,
                    "spark-cut-short",
                    "The primary closes again while the spark still burns: " + WorkingNumber.of(at.residualA())
                            + " A is left in the coil, and the spark is cut short after "
                            + WorkingNumber.milli(at.sparkS())
                            + " ms.",
                    List.of(
                            new Finding.Figure("residualA", at.residualA()),
                            new Finding.Figure("sparkMs", at.sparkS() * 1e3)),
                    PRACTICE,
                    null);
        }
    }

    private void runaway() {
        if (hotCoil != null && hotCoil.end() instanceof SelfHeating.Runaway runaway) {
            double powerW = runaway.atCeiling().powerW();
            double temperatureC = runaway.atCeiling().temperatureC();
            add(
                    Severity.DANGER,
                    "coil-burns",
                    "The coil does not settle: at " + WorkingNumber.of(temperatureC) + " C it still takes "
                            + WorkingNumber.of(powerW) + " W. It would burn.",
                    List.of(new Finding.Figure("temperatureC", temperatureC), new Finding.Figure("coilHeatW", powerW)),
                    PRACTICE,
                    "More ballast, less dwell, or a coil of more ohms.");
        }
    }

    private void add(
            Severity severity,
            String code,
            String text,
            List<Finding.Figure> figures,
            Basis basis,
            @Nullable String remedy) {
        findings.add(new Finding(severity, code, List.of(), text, figures, basis, remedy));
    }
}
