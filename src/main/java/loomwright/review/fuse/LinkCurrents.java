package loomwright.review.fuse;

import static loomwright.review.context.FindingWording.number;

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
        return FindingCode.LINK_OVERLOADED.finding(
                severity,
                List.of(link.id()),
                link.displayName() + " (" + link.size() + ") carries " + number(peak.currentA()) + " A, "
                        + FindingWording.when(peak.moment()) + "; a wire of that size with insulation for "
                        + number(INSULATION_C) + " C (assumed) may carry " + number(ampacity.allowedA())
                        + " A there. The link ages and melts one day without a short.",
                FindingWording.against("currentA", peak.currentA(), "ampacityA", ampacity.allowedA()),
                ampacity.basis().get(0),
                "Take load off it, or fit a thicker link together with thicker wire behind it.");
    }
}
