package loomwright.ignition.change;

import static loomwright.message.Arg.arg;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import loomwright.answer.Basis;
import loomwright.answer.Finding;
import loomwright.answer.Severity;
import loomwright.conductor.ConductorSize;
import loomwright.ignition.spark.SparkFinding;
import loomwright.ignition.spark.SparkResult;
import loomwright.ignition.spark.SwitchInput;
import loomwright.judgement.ignition.IgnitionMistake;
import loomwright.message.Arg;
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
                .filter(finding ->
                        input.contactsA() == null || finding.kind() != IgnitionMistake.Kind.CONTACTS_OVERLOADED)
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
        Arg peakA = arg("peakA", after.at().peakA());
        Arg beforePeakA = arg("beforePeakA", before.at().peakA());
        Double moduleA = input.moduleA();
        if (module && moduleA != null && after.at().peakA() > moduleA) {
            findings.add(Finding.danger(
                            ChangeFinding.MODULE_OVERLOADED.with(peakA, arg("ratingA", moduleA), beforePeakA),
                            Basis.computed("current at break against the rating given", "comparison"))
                    .about(List.of("module"))
                    .remedy(ChangeFinding.SPARE_MODULE.with()));
        }
        Double rated = input.contactsA();
        if (!module && rated != null && largestA > rated) {
            findings.add(Finding.warning(
                            ChangeFinding.CONTACTS_OVERLOADED.with(
                                    peakA,
                                    arg("ratingA", rated),
                                    beforePeakA,
                                    arg("closedA", after.closed().currentA())),
                            Basis.computed("current against the rating given", "comparison"))
                    .about(List.of("breaker"))
                    .remedy(ChangeFinding.SPARE_CONTACTS.with()));
        }
    }

    private void ballast() {
        Double ratingW = input.ballastW();
        double closedW = after.closed().ballastHeatW();
        if (ratingW != null && Math.max(closedW, after.at().ballastHeatW()) > ratingW) {
            findings.add(Finding.of(
                            after.at().ballastHeatW() > ratingW ? Severity.DANGER : Severity.WARNING,
                            ChangeFinding.BALLAST_OVERLOADED.with(
                                    arg("ballastHeatW", closedW),
                                    arg("ratingW", ratingW),
                                    arg("runningBallastHeatW", after.at().ballastHeatW()),
                                    arg("beforeBallastHeatW", before.closed().ballastHeatW())),
                            Basis.computed("heat I^2 R against the rating given", "Joule's law"))
                    .about(List.of("ballast"))
                    .remedy(ChangeFinding.FIT_LARGER_BALLAST.with()));
        }
    }

    private void gap() {
        double was = before.demand().plug().gap().gapMm();
        double is = after.demand().plug().gap().gapMm();
        boolean wide = after.findings().stream().anyMatch(f -> f.kind() == SparkFinding.GAP_NEEDS_OTHER_COIL);
        boolean noMoreEnergy = after.at().energyJ() <= MORE_ENERGY * before.at().energyJ();
        double reserve = input.after().search().reserveRatio() == null
                ? RESERVE
                : input.after().search().reserveRatio();
        boolean tooLittle = after.at().marginRatio() < reserve;
        if (is > was && (tooLittle || (wide && noMoreEnergy))) {
            findings.add(Finding.warning(
                            ChangeFinding.GAP_WITHOUT_ENERGY.with(
                                    arg("gapMm", is),
                                    arg("requiredV", after.at().requiredV()),
                                    arg("availableV", after.at().availableV()),
                                    arg("beforeGapMm", was),
                                    arg("beforeRequiredV", before.at().requiredV()),
                                    arg("beforeEnergyJ", before.at().energyJ()),
                                    arg("energyJ", after.at().energyJ()),
                                    arg("beforeMarginRatio", before.at().marginRatio()),
                                    arg("marginRatio", after.at().marginRatio())),
                            Basis.commonPractice("a gap of 1.1 to 1.2 mm needs a coil and module made for it"))
                    .about(List.of("plug", "coil"))
                    .remedy(ChangeFinding.KEEP_GAP.with(arg("gapMm", was))));
        }
    }
}
