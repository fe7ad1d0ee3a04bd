package loomwright.ignition.change;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import loomwright.answer.Basis;
import loomwright.answer.Finding;
import loomwright.answer.Severity;
import loomwright.conductor.ConductorSize;
import loomwright.ignition.WorkingNumber;
import loomwright.ignition.spark.SparkResult;
import loomwright.ignition.spark.SwitchInput;
import org.jspecify.annotations.Nullable;

/** What stands against a change, each with its numbers and what to do. */
final class ChangeFindings {
    /** Less than this is no coil of more energy. */
    private static final double MORE_ENERGY = 1.1;

    private static final double RESERVE = 1.5;

    private final ChangeInput input;
    private final SparkResult before;
    private final SparkResult after;
    private final List<Finding> findings = new ArrayList<>();
    private final List<String> working = new ArrayList<>();

    ChangeFindings(
            ChangeInput input,
            SparkResult before,
            SparkResult after,
            @Nullable ConductorSize wire,
            @Nullable ConductorSize link) {
        this.input = input;
        this.before = before;
        this.after = after;
        switched();
        ballast();
        gap();
        CarriedCurrent carried = new CarriedCurrent(input, before, after);
        findings.addAll(carried.list(wire, link));
        BypassFindings bypass = new BypassFindings(input, before, after);
        findings.addAll(bypass.list());
        working.addAll(carried.working());
        working.addAll(bypass.working());
        after.findings().stream()
                .filter(finding -> finding.severity() != Severity.NOTE)
                .filter(finding -> input.contactsA() == null || !finding.code().equals("contacts-overloaded"))
                .forEach(findings::add);
        findings.sort(Comparator.comparing(Finding::severity));
    }

    List<Finding> list() {
        return findings;
    }

    List<String> working() {
        return working;
    }

    private void switched() {
        boolean module = input.after().primarySwitch().kind() == SwitchInput.Kind.MODULE;
        double largestA =
                Math.max(after.at().peakA(), module ? 0 : after.closed().currentA());
        String currents =
                IgnitionChange.beforeAndAfter(before.at().peakA(), after.at().peakA(), "A") + " at break";
        Double moduleA = input.moduleA();
        if (module && moduleA != null && after.at().peakA() > moduleA) {
            findings.add(new Finding(
                    Severity.DANGER,
                    "module-overloaded",
                    List.of("module"),
                    "Current at the break: " + currents + "; the module is rated " + WorkingNumber.of(moduleA) + " A.",
                    List.of(new Finding.Figure("peakA", after.at().peakA()), new Finding.Figure("ratingA", moduleA)),
                    Basis.computed("current at break against the rating given", "comparison"),
                    "A coil of more ohms, a ballast, or a module rated for this coil."));
        }
        Double rated = input.contactsA();
        if (!module && rated != null && largestA > rated) {
            findings.add(new Finding(
                    Severity.WARNING,
                    "contacts-overloaded",
                    List.of("breaker"),
                    "Current at the break: " + currents + "; the contacts are rated " + WorkingNumber.of(rated) + " A.",
                    List.of(new Finding.Figure("peakA", after.at().peakA()), new Finding.Figure("ratingA", rated)),
                    Basis.computed("current against the rating given", "comparison"),
                    "More ballast, a coil of more ohms, or a module driven by the points."));
        }
    }

    private void ballast() {
        Double ratingW = input.ballastW();
        double closedW = after.closed().ballastHeatW();
        if (ratingW != null && Math.max(closedW, after.at().ballastHeatW()) > ratingW) {
            findings.add(new Finding(
                    after.at().ballastHeatW() > ratingW ? Severity.DANGER : Severity.WARNING,
                    "ballast-overloaded",
                    List.of("ballast"),
                    "The ballast turns " + WorkingNumber.of(after.at().ballastHeatW())
                            + " W into heat while running and "
                            + WorkingNumber.of(closedW) + " W with the key on and contacts closed (before: "
                            + WorkingNumber.of(before.closed().ballastHeatW()) + " W); it is rated "
                            + WorkingNumber.of(ratingW)
                            + " W.",
                    List.of(new Finding.Figure("ballastHeatW", closedW), new Finding.Figure("ratingW", ratingW)),
                    Basis.computed("heat I^2 R against the rating given", "Joule's law"),
                    "A ballast of the same ohms for more watts, mounted on metal clear of wiring."));
        }
    }

    private void gap() {
        double was = before.demand().plug().gap().gapMm();
        double is = after.demand().plug().gap().gapMm();
        boolean wide =
                after.findings().stream().anyMatch(finding -> finding.code().equals("gap-needs-other-coil"));
        boolean noMoreEnergy = after.at().energyJ() <= MORE_ENERGY * before.at().energyJ();
        double reserve = input.after().search().reserveRatio() == null
                ? RESERVE
                : input.after().search().reserveRatio();
        if (is > was && (after.at().marginRatio() < reserve || (wide && noMoreEnergy))) {
            findings.add(new Finding(
                    Severity.WARNING,
                    "gap-without-energy",
                    List.of("plug", "coil"),
                    "The gap goes from " + WorkingNumber.of(was) + " to " + WorkingNumber.of(is)
                            + " mm, which asks for "
                            + IgnitionChange.beforeAndAfter(
                                    before.at().requiredV() / 1e3, after.at().requiredV() / 1e3, "kV")
                            + ", without the energy for it: "
                            + IgnitionChange.beforeAndAfter(
                                    before.at().energyJ() * 1e3, after.at().energyJ() * 1e3, "mJ")
                            + ", margin " + WorkingNumber.of(before.at().marginRatio()) + " before, "
                            + WorkingNumber.of(after.at().marginRatio()) + " after.",
                    List.of(
                            new Finding.Figure("gapMm", is),
                            new Finding.Figure("requiredKv", after.at().requiredV() / 1e3),
                            new Finding.Figure("availableKv", after.at().availableV() / 1e3)),
                    Basis.commonPractice("a gap of 1.1 to 1.2 mm needs a coil and module made for it"),
                    "Keep the gap of " + WorkingNumber.of(was)
                            + " mm, or fit a coil and module made for the wide one."));
        }
    }
}
