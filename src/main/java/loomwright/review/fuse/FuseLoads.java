package loomwright.review.fuse;

import static loomwright.review.context.FindingWording.number;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import loomwright.answer.Basis;
import loomwright.answer.Finding;
import loomwright.answer.Severity;
import loomwright.backfeed.Survey.Moment;
import loomwright.circuit.Diode;
import loomwright.circuit.Fuse;
import loomwright.judgement.Level;
import loomwright.judgement.Verdict;
import loomwright.judgement.wire.FuseRule;
import loomwright.operation.Branch;
import loomwright.review.context.Check;
import loomwright.review.context.FindingCode;
import loomwright.review.context.FindingWording;
import loomwright.review.context.PeakCurrents.Peak;
import loomwright.review.context.ReviewContext;
import loomwright.review.context.ShortedFuses;

/** The lasting current of each fuse against its rating. */
public final class FuseLoads implements Check {
    private static final Basis BLOWS_AT_ONCE = Basis.verified(
            "a blade fuse opens at " + number(ShortedFuses.AT_ONCE)
                    + " times its rating within a tenth of a second or little more",
            "opening time limits of ISO 8820-3 and SAE J1284, see the table blade-fuse-limits");

    @Override
    public List<Finding> check(ReviewContext context) {
        List<Finding> findings = new ArrayList<>();
        for (Fuse fuse : context.plan().listParts(Fuse.class)) {
            Moment shorted = context.shorted().get(fuse.id());
            if (shorted != null) {
                findings.add(shorted(fuse, shorted));
            }
        }
        findings.addAll(overloads(context));
        return findings;
    }

    private static Finding shorted(Fuse fuse, Moment moment) {
        List<String> way = ShortedFuses.wayBehind(fuse, moment.solved()).stream()
                .map(i -> moment.solved().branches().get(i).id())
                .distinct()
                .toList();
        double currentA = ShortedFuses.carriesA(fuse, moment.solved());
        List<String> ids = new ArrayList<>(List.of(fuse.id()));
        ids.addAll(way);
        boolean diode =
                way.stream().anyMatch(id -> moment.solved().plan().findPart(id).orElse(null) instanceof Diode);
        return FindingCode.FUSE_BLOWS_AT_ONCE.finding(
                Severity.DANGER,
                ids,
                fuse.displayName() + " (" + number(fuse.ratingA()) + " A) carries " + number(currentA) + " A, "
                        + FindingWording.when(moment) + ": a short, it blows at once. The current goes through "
                        + String.join(", ", way) + ". What follows from the short is not told besides.",
                FindingWording.against("currentA", currentA, "ratingA", fuse.ratingA()),
                BLOWS_AT_ONCE,
                "Look along that way for what joins the feed to earth"
                        + (diode ? "; the diode in it may be the wrong way round" : "")
                        + ". No larger fuse. Have the plan reviewed again when it is put right.");
    }

    private static List<Finding> overloads(ReviewContext context) {
        return context.plan().listParts(Fuse.class).stream()
                .filter(fuse -> !context.shorted().containsKey(fuse.id()))
                .flatMap(fuse ->
                        context
                                .lasting()
                                .find(Branch.Owner.PART, fuse.id())
                                .flatMap(peak -> judge(fuse, peak))
                                .stream())
                .toList();
    }

    private static Optional<Finding> judge(Fuse fuse, Peak peak) {
        String carries = fuse.displayName() + " (" + number(fuse.ratingA()) + " A) carries " + number(peak.currentA())
                + " A, " + FindingWording.when(peak.moment());
        Verdict verdict = FuseRule.judgeLoad(peak.currentA(), fuse.ratingA(), true);
        if (verdict.level() == Level.WARNING) {
            return Optional.of(FindingCode.FUSE_OVERLOADED.finding(
                    Severity.WARNING,
                    List.of(fuse.id()),
                    carries + ": it blows "
                            + (peak.currentA() >= ShortedFuses.AT_ONCE * fuse.ratingA()
                                    ? "at once."
                                    : "sooner or later."),
                    FindingWording.against("currentA", peak.currentA(), "ratingA", fuse.ratingA()),
                    Basis.computed("current against the rating given", "comparison"),
                    "Divide the load over more fuses; a larger fuse only if the wires behind it stand that."));
        }
        if (verdict.level() == Level.NOTE) {
            return Optional.of(FindingCode.FUSE_NEAR_LIMIT.finding(
                    Severity.NOTE,
                    List.of(fuse.id()),
                    carries
                            + ", more than " + number(100 * FuseRule.FITTED_SHARE)
                            + " % of its rating: if that goes on for long, or in hot surroundings, it ages"
                            + " and blows one day.",
                    FindingWording.against("currentA", peak.currentA(), "continuousA", verdict.limit()),
                    FuseRule.LOAD_BASIS,
                    "Take load off it; a larger fuse only if the wires behind it stand that."));
        }
        return Optional.empty();
    }
}
