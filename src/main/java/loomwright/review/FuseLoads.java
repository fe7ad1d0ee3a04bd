package loomwright.review;

import static loomwright.review.Wording.number;

import java.util.List;
import java.util.Optional;
import loomwright.answer.Basis;
import loomwright.answer.Finding;
import loomwright.answer.Severity;
import loomwright.circuit.Fuse;
import loomwright.operation.Branch;
import loomwright.review.Peaks.Peak;

/** The lasting current of each fuse against its rating. */
final class FuseLoads implements Check {
    /** Share of its rating that a fuse carries for good. */
    static final double CONTINUOUS = 0.8;

    private static final Basis SHARE = Basis.commonPractice("a fuse carries 80 % of its rating for good");

    @Override
    public List<Finding> check(ReviewContext context) {
        return context.plan().listParts(Fuse.class).stream()
                .flatMap(fuse ->
                        context
                                .lasting()
                                .find(Branch.Owner.PART, fuse.id())
                                .flatMap(peak -> judge(fuse, peak))
                                .stream())
                .toList();
    }

    private static Optional<Finding> judge(Fuse fuse, Peak peak) {
        String carries = fuse.called() + " (" + number(fuse.ratingA()) + " A) carries " + number(peak.currentA())
                + " A, " + Wording.when(peak.moment());
        if (peak.currentA() > fuse.ratingA()) {
            return Optional.of(FindingCode.FUSE_OVERLOADED.finding(
                    Severity.WARNING,
                    List.of(fuse.id()),
                    carries + ": it blows sooner or later.",
                    Wording.against("currentA", peak.currentA(), "ratingA", fuse.ratingA()),
                    Basis.computed("current against the rating given", "comparison"),
                    "Divide the load over more fuses; a larger fuse only if the wires behind it stand that."));
        }
        if (peak.currentA() > CONTINUOUS * fuse.ratingA()) {
            return Optional.of(FindingCode.FUSE_NEAR_LIMIT.finding(
                    Severity.NOTE,
                    List.of(fuse.id()),
                    carries
                            + ", more than 80 % of its rating: if that goes on for long, or in hot surroundings, it ages"
                            + " and blows one day.",
                    Wording.against("currentA", peak.currentA(), "continuousA", CONTINUOUS * fuse.ratingA()),
                    SHARE,
                    "Take load off it; a larger fuse only if the wires behind it stand that."));
        }
        return Optional.empty();
    }
}
