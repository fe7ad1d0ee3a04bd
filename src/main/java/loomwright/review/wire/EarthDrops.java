package loomwright.review.wire;

import static loomwright.message.Arg.arg;

import java.util.List;
import java.util.Optional;
import loomwright.answer.Finding;
import loomwright.circuit.EarthPoint;
import loomwright.judgement.DropRule;
import loomwright.judgement.Verdict;
import loomwright.operation.Branch;
import loomwright.review.context.Check;
import loomwright.review.context.FindingCode;
import loomwright.review.context.FindingWording;
import loomwright.review.context.PeakCurrents.Peak;
import loomwright.review.context.ReviewContext;
import loomwright.review.context.ReviewText;

/** What each earth point with a resistance loses under a lasting current. */
public final class EarthDrops implements Check {
    @Override
    public List<Finding> check(ReviewContext context) {
        return context.plan().listParts(EarthPoint.class).stream()
                .flatMap(
                        earth -> context
                                .lasting()
                                .find(Branch.Owner.PART, earth.id())
                                .flatMap(peak -> judge(context, earth, peak))
                                .stream())
                .toList();
    }

    private static Optional<Finding> judge(ReviewContext context, EarthPoint earth, Peak peak) {
        double dropV = peak.currentA() * earth.resistanceOhm();
        Verdict verdict =
                DropRule.EARTH_JOINT.judge(dropV, context.plan().system().nominalVoltageV());
        return verdict.level()
                .severity()
                .map(severity -> Finding.of(
                                severity,
                                FindingCode.EARTH_DROP.with(
                                        arg("earth", earth.thing()),
                                        arg("dropV", dropV),
                                        arg("limitV", verdict.limit()),
                                        FindingWording.limitRatio(dropV, verdict.limit()),
                                        arg("currentA", peak.currentA()),
                                        FindingWording.when(peak.moment())),
                                verdict.basis())
                        .remedy(ReviewText.CLEAN_EARTH.with()));
    }
}
