package loomwright.ignition.spark;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import loomwright.answer.Basis;
import loomwright.answer.Finding;
import loomwright.answer.Severity;
import loomwright.ignition.SelfHeating;
import loomwright.ignition.UsualIgnition;
import loomwright.ignition.WorkingNumber;
import loomwright.ignition.gap.BreakdownVoltage;
import loomwright.ignition.primary.CoilData.Feed;
import loomwright.ignition.primary.PrimarySwitch;
import org.jspecify.annotations.Nullable;

/** What an adviser would add to the figures of a spark: each finding only where it applies. */
final class SparkFindings {

    static final Basis CONTACTS = Basis.verified(
            "contacts of a plain system switch about 4 to 5 A", "Army manual TM 9-8000, chapter 15 (ignition)");

    /** From here a gap is wider than a plain coil and contacts were made for (plug gap 0.5 to 0.8 mm with contacts). */
    private static final double WIDE_GAP_MM = 1.0;

    /** At so many times the volts it is made for a coil takes half as much heat again, and more. Common practice, no source. */
    private static final double TOO_MANY_VOLTS = 1.25;

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
        feed();
        contacts();
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
                    Severity.WARNING,
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

    private void feed() {
        Feed meantFor = system.coil().meantFor();
        double ballastOhm = system.ballastOhm(question.bypassed());
        double closedA = system.closedA(question.supplyV(), question.bypassed());
        List<Finding.Figure> figures = List.of(
                new Finding.Figure("closedA", closedA),
                new Finding.Figure("coilHeatW", at.coilHeatW()),
                new Finding.Figure("ballastResistanceOhm", ballastOhm));
        if (meantFor == Feed.WITH_BALLAST && ballastOhm == 0) {
            add(
                    Severity.WARNING,
                    "coil-overheats",
                    "A coil meant for use with a ballast is fed directly: right for the moment of starting, too hot for"
                            + " running.",
                    figures,
                    PRACTICE,
                    "Fit a ballast of about the coil's own resistance, or a coil meant for direct feed.");
        }
        if (meantFor == Feed.DIRECT && ballastOhm > 0) {
            add(
                    Severity.WARNING,
                    "coil-weak",
                    "A coil meant for direct feed is fed through a ballast: a weak spark.",
                    figures,
                    PRACTICE,
                    "Feed it directly, or fit a coil meant for use with a ballast.");
        }
        double coilV = closedA * system.coil().primaryResistanceOhm();
        double times = coilV / question.usualSupplyV();
        if (meantFor == Feed.DIRECT && times > TOO_MANY_VOLTS) {
            add(
                    Severity.DANGER,
                    "coil-for-lower-voltage",
                    "A coil made for " + WorkingNumber.of(question.usualSupplyV()) + " V, charging, gets "
                            + WorkingNumber.of(coilV)
                            + " V with the primary closed: " + WorkingNumber.of(closedA) + " A, about "
                            + WorkingNumber.of(times)
                            + " times the current it is made for, and " + WorkingNumber.of(times * times)
                            + " times the heat. It overheats and may burst.",
                    List.of(
                            new Finding.Figure("coilV", coilV),
                            new Finding.Figure("closedA", closedA),
                            new Finding.Figure("timesCurrent", times)),
                    PRACTICE,
                    "Fit a coil made for this supply, or a ballast that leaves this one its own volts.");
        }
        if (meantFor == Feed.LIMITING_MODULE
                && Double.isInfinite(system.primarySwitch().limitA())) {
            add(
                    Severity.DANGER,
                    "no-current-limit",
                    "A high-energy coil without a current limit: it draws " + WorkingNumber.of(closedA)
                            + " A with the primary closed and burns what switches it.",
                    figures,
                    PRACTICE,
                    "Use it only with a module that limits the current.");
        }
    }

    private void contacts() {
        if (system.primarySwitch() instanceof PrimarySwitch.ContactBreaker && at.peakA() > UsualIgnition.CONTACTS_A) {
            add(
                    Severity.WARNING,
                    "contacts-overloaded",
                    "The contacts break " + WorkingNumber.of(at.peakA())
                            + " A; those of a plain system switch about 4 to 5 A (TM 9-8000, chapter 15) and will burn.",
                    List.of(
                            new Finding.Figure("peakA", at.peakA()),
                            new Finding.Figure("limitA", UsualIgnition.CONTACTS_A)),
                    CONTACTS,
                    "More ballast, a coil of more ohms, or a module in the place of the contacts.");
        }
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
