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
import loomwright.judgement.Verdict;
import loomwright.judgement.ignition.BallastPartRule;
import loomwright.judgement.ignition.SparkMarginRule;
import loomwright.message.Message;
import org.jspecify.annotations.Nullable;

/** What stands against a change, each with its numbers and what to do. */
final class ChangeFindings {
    /** Less than this is no coil of more energy. */
    private static final double MORE_ENERGY = 1.1;

    private final ChangeInput input;
    private final SparkResult before;
    private final SparkResult after;
    private final List<Finding> findings = new ArrayList<>();
    private final List<Message> working = new ArrayList<>();

    ChangeFindings(
            ChangeInput input,
            SparkResult before,
            SparkResult after,
            @Nullable ConductorSize wire,
            @Nullable ConductorSize link) {
        this.input = input;
        this.before = before;
        this.after = after;
        ballast();
        gap();
        CarriedCurrent carried = new CarriedCurrent(input, before, after, wire);
        findings.addAll(carried.list(link));
        BypassFindings bypass = new BypassFindings(input, before, after);
        findings.addAll(bypass.list());
        working.addAll(carried.working());
        working.addAll(bypass.working());
        after.findings().stream().filter(this::isNew).forEach(findings::add);
        findings.sort(Comparator.comparing(Finding::severity));
    }

    List<Finding> list() {
        return findings;
    }

    List<Message> working() {
        return working;
    }

    /** Whether a finding of the spark belongs here: a note that stood before as well is none of the change. */
    private boolean isNew(Finding finding) {
        return finding.severity() != Severity.NOTE
                || before.findings().stream().noneMatch(was -> was.kind() == finding.kind());
    }

    private void ballast() {
        Double ratingW = input.fitted().ballastW();
        if (ratingW == null) {
            return;
        }
        double closedW = after.closed().ballastHeatW();
        double judgedW = Math.max(closedW, after.at().heat().ballastHeatW());
        Verdict verdict = BallastPartRule.judge(judgedW, ratingW);
        verdict.level()
                .severity()
                .ifPresent(severity -> findings.add(Finding.of(
                                severity,
                                ChangeFinding.BALLAST_OVERLOADED.with(
                                        arg("ballastHeatW", closedW),
                                        arg("ratingW", ratingW),
                                        arg(
                                                "runningBallastHeatW",
                                                after.at().heat().ballastHeatW()),
                                        arg(
                                                "beforeBallastHeatW",
                                                before.closed().ballastHeatW())),
                                verdict.basis())
                        .about(List.of("ballast"))
                        .remedy(ChangeFinding.FIT_LARGER_BALLAST.with(
                                arg("ratingW", BallastPartRule.ratingToBuyW(judgedW))))));
    }

    private void gap() {
        double was = before.demand().plug().gap().gapMm();
        double is = after.demand().plug().gap().gapMm();
        boolean wide = after.findings().stream().anyMatch(f -> f.kind() == SparkFinding.GAP_NEEDS_OTHER_COIL);
        boolean noMoreEnergy = after.at().stored().energyJ()
                <= MORE_ENERGY * before.at().stored().energyJ();
        double reserve = input.after().search().reserveRatio() == null
                ? SparkMarginRule.RESERVE
                : input.after().search().reserveRatio();
        boolean sparks = after.at().stored().energyJ() > 0;
        boolean tooLittle = after.at().margin().marginRatio() < reserve;
        if (is > was && sparks && (tooLittle || (wide && noMoreEnergy))) {
            findings.add(Finding.warning(
                            ChangeFinding.GAP_WITHOUT_ENERGY.with(
                                    arg("gapMm", is),
                                    arg("requiredV", after.at().margin().requiredV()),
                                    arg("availableV", after.at().margin().availableV()),
                                    arg("beforeGapMm", was),
                                    arg("beforeRequiredV", before.at().margin().requiredV()),
                                    arg("beforeEnergyJ", before.at().stored().energyJ()),
                                    arg("energyJ", after.at().stored().energyJ()),
                                    arg(
                                            "beforeMarginRatio",
                                            before.at().margin().marginRatio()),
                                    arg("marginRatio", after.at().margin().marginRatio())),
                            Basis.commonPractice("a gap of 1.1 to 1.2 mm needs a coil and module made for it"))
                    .about(List.of("plug", "coil"))
                    .remedy(ChangeFinding.KEEP_GAP.with(arg("gapMm", was))));
        }
    }
}
