package loomwright.ignition.change;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import loomwright.answer.Basis;
import loomwright.answer.Finding;
import loomwright.answer.Severity;
import loomwright.conductor.ConductorSize;
import loomwright.ignition.UsualIgnition;
import loomwright.ignition.WorkingNumber;
import loomwright.ignition.spark.SparkResult;
import loomwright.ignition.spark.SwitchInput;
import org.jspecify.annotations.Nullable;

/** What stands against a change, each with its numbers and what to do. */
final class ChangeFindings {
    /** Less than this is no coil of more energy. */
    private static final double MORE_ENERGY = 1.1;

    private static final double RESERVE = 1.5;

    /** Said here with both sides' numbers, so not taken over from the spark. */
    private static final Set<String> SAID_HERE = Set.of("contacts-overloaded", "coil-overheats", "coil-weak");

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
        coil();
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
                .filter(finding -> finding.severity() != Severity.NOTE && !SAID_HERE.contains(finding.code()))
                .forEach(findings::add);
        findings.sort(Comparator.comparing(Finding::severity));
    }

    List<Finding> list() {
        return findings;
    }

    List<String> working() {
        return working;
    }

    private void coil() {
        double was = before.closed().coilHeatW();
        double is = after.closed().coilHeatW();
        String heat = IgnitionChange.beforeAndAfter(was, is, "W")
                + " in the coil with the key on and contacts closed, "
                + IgnitionChange.beforeAndAfter(
                        before.at().coilHeatW(), after.at().coilHeatW(), "W")
                + " while running";
        List<Finding.Figure> figures = List.of(
                new Finding.Figure("beforeClosedCoilHeatW", was), new Finding.Figure("afterClosedCoilHeatW", is));
        if (after.findings().stream().anyMatch(finding -> finding.code().equals("coil-overheats"))) {
            findings.add(new Finding(
                    Severity.DANGER,
                    "coil-overheats",
                    List.of("coil"),
                    "A coil meant for use with a ballast is fed directly: " + heat + ". It overheats and may burst.",
                    figures,
                    Basis.commonPractice("coil for use with a ballast 1.2 to 1.8 ohm, for direct feed 2.8 to 3.6 ohm"),
                    "Leave the ballast in its feed, or fit a coil meant for direct feed."));
        }
        if (after.findings().stream().anyMatch(finding -> finding.code().equals("coil-weak"))) {
            findings.add(new Finding(
                    Severity.WARNING,
                    "coil-weak",
                    List.of("coil", "ballast"),
                    "A coil meant for direct feed gets its current through a ballast: "
                            + IgnitionChange.beforeAndAfter(
                                    before.at().availableV() / 1e3, after.at().availableV() / 1e3, "kV available")
                            + ", margin " + WorkingNumber.of(after.at().marginRatio()) + ".",
                    List.of(
                            new Finding.Figure("beforeAvailableKv", before.at().availableV() / 1e3),
                            new Finding.Figure("afterAvailableKv", after.at().availableV() / 1e3)),
                    Basis.commonPractice("coil for use with a ballast 1.2 to 1.8 ohm, for direct feed 2.8 to 3.6 ohm"),
                    "Take the ballast out of the feed together with the bypass, or fit a coil meant for a ballast."));
        }
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
        double contactsA = rated == null ? UsualIgnition.CONTACTS_A : rated;
        if (!module && largestA > contactsA) {
            findings.add(new Finding(
                    Severity.WARNING,
                    "contacts-overloaded",
                    List.of("breaker"),
                    "Current at the break: " + currents + "; the contacts carry "
                            + WorkingNumber.of(after.closed().currentA())
                            + " A with the engine stopped, and stand about "
                            + WorkingNumber.of(contactsA) + " A and will burn.",
                    List.of(new Finding.Figure("peakA", after.at().peakA()), new Finding.Figure("ratingA", contactsA)),
                    Basis.verified(
                            "contacts of a plain system switch about 4 to 5 A",
                            "Army manual TM 9-8000, chapter 15 (ignition)"),
                    "More ballast, a coil of more ohms, or a module in the place of the contacts."));
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
