package loomwright.review.fuse;

import static loomwright.message.Arg.arg;

import java.util.List;
import java.util.Optional;
import loomwright.answer.Finding;
import loomwright.answer.Severity;
import loomwright.circuit.FusibleLink;
import loomwright.circuit.Place;
import loomwright.conductor.ConductorSize;
import loomwright.judgement.wire.WireAmpacity;
import loomwright.judgement.wire.WireConditions;
import loomwright.judgement.wire.WireLoadRule;
import loomwright.operation.Branch;
import loomwright.review.context.Check;
import loomwright.review.context.FindingCode;
import loomwright.review.context.FindingWording;
import loomwright.review.context.PeakCurrents.Peak;
import loomwright.review.context.ReviewContext;
import loomwright.review.context.ReviewText;
import loomwright.review.context.WireRating;

/** The lasting current of each fusible link against what a wire of its size carries in the engine bay. */
public final class LinkCurrents implements Check {
    /** Link wire has insulation of silicone or the like that stands more than PVC: common practice, no source. */
    static final double INSULATION_C = 125;

    @Override
    public List<Finding> check(ReviewContext context) {
        return context.plan().listParts(FusibleLink.class).stream()
                .flatMap(link -> judge(context, link).stream())
                .toList();
    }

    private static Optional<Finding> judge(ReviewContext context, FusibleLink link) {
        WireRating rating = WireRating.of(
                ConductorSize.parse(link.size()),
                true,
                new WireConditions(INSULATION_C, context.plan().system().temperatureC(Place.ENGINE_BAY), 1));
        return context.lasting()
                .find(Branch.Owner.PART, link.id())
                .flatMap(peak -> WireLoadRule.judge(peak.currentA(), rating.allowedA())
                        .level()
                        .severity()
                        .map(severity -> overloaded(link, severity, rating.ampacity(), peak)));
    }

    private static Finding overloaded(FusibleLink link, Severity severity, WireAmpacity ampacity, Peak peak) {
        return Finding.of(
                        severity,
                        FindingCode.LINK_OVERLOADED.with(
                                arg("link", link.thing()),
                                arg("currentA", peak.currentA()),
                                arg("ampacityA", ampacity.allowedA()),
                                FindingWording.limitRatio(peak.currentA(), ampacity.allowedA()),
                                arg("size", link.size()),
                                arg("insulationC", INSULATION_C),
                                FindingWording.when(peak.moment())),
                        ampacity.basis().get(0))
                .remedy(ReviewText.FIT_LARGER_LINK_AND_WIRE.with());
    }
}
