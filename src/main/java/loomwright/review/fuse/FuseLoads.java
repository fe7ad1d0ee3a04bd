package loomwright.review.fuse;

import static loomwright.message.Arg.arg;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import loomwright.answer.Basis;
import loomwright.answer.Finding;
import loomwright.answer.Severity;
import loomwright.backfeed.Survey.Moment;
import loomwright.circuit.Diode;
import loomwright.circuit.Fuse;
import loomwright.circuit.Plan;
import loomwright.conductor.CrankingHeat;
import loomwright.judgement.Level;
import loomwright.judgement.Verdict;
import loomwright.judgement.wire.FuseRule;
import loomwright.message.Arg;
import loomwright.message.Argument;
import loomwright.message.Message;
import loomwright.operation.Branch;
import loomwright.review.context.Check;
import loomwright.review.context.FindingCode;
import loomwright.review.context.FindingWording;
import loomwright.review.context.PeakCurrents.Peak;
import loomwright.review.context.ReviewContext;
import loomwright.review.context.ReviewText;
import loomwright.review.context.ShortedFuses;

/** The lasting current of each fuse against its rating, and that of cranking against what blows it in one attempt to start. */
public final class FuseLoads implements Check {
    /** From here a time is given in minutes. */
    private static final double MINUTES_FROM_S = 120;

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
        return Finding.danger(
                        FindingCode.FUSE_BLOWS_AT_ONCE.with(
                                arg("fuse", fuse.thing()),
                                arg("currentA", currentA),
                                arg("ratingA", fuse.continuousA()),
                                FindingWording.limitRatio(currentA, fuse.continuousA()),
                                path(ids, moment.solved().plan()),
                                FindingWording.when(moment)),
                        FuseRule.curve(fuse).basis().get(0))
                .about(ids)
                .remedy(ReviewText.FIND_SHORT.with(arg("diode", diode ? "yes" : "no")));
    }

    /** From the fuse to where nothing resists any more: the battery or the chassis. */
    private static Arg path(List<String> ids, Plan plan) {
        List<Argument> path = new ArrayList<>(ids.stream().map(plan::thing).toList());
        path.add(new Argument.Word(ReviewText.END_OF_PATH));
        return Arg.list("path", path);
    }

    private static List<Finding> overloads(ReviewContext context) {
        return context.plan().listParts(Fuse.class).stream()
                .filter(fuse -> !context.shorted().containsKey(fuse.id()))
                .flatMap(fuse -> overload(context, fuse).stream())
                .toList();
    }

    /** What lasts counts first, if it blows the fuse. */
    private static Optional<Finding> overload(ReviewContext context, Fuse fuse) {
        Optional<Finding> lasting =
                context.lasting().find(Branch.Owner.PART, fuse.id()).flatMap(peak -> judge(fuse, peak));
        Optional<Finding> cranking =
                context.cranking().find(Branch.Owner.PART, fuse.id()).flatMap(peak -> judgeCranking(fuse, peak));
        boolean blows = lasting.filter(finding -> finding.severity() == Severity.WARNING)
                .isPresent();
        return blows || cranking.isEmpty() ? lasting : cranking;
    }

    /** A fuse in the feed of a starter holds for one attempt to start. */
    private static Optional<Finding> judgeCranking(Fuse fuse, Peak peak) {
        if (peak.currentA() < FuseRule.opensWithinA(fuse, CrankingHeat.GO_S)) {
            return Optional.empty();
        }
        Message remedy = FuseRule.smallest(peak.currentA(), false)
                .map(rating -> ReviewText.FIT_FUSE.with(arg("ratingA", rating.ratingA())))
                .orElseGet(ReviewText.SPLIT_LOAD::with);
        return Optional.of(overloaded(fuse, peak).remedy(remedy));
    }

    private static Optional<Finding> judge(Fuse fuse, Peak peak) {
        Verdict verdict = FuseRule.judgeLoad(peak.currentA(), fuse.continuousA(), true);
        Arg of = arg("fuse", fuse.thing());
        Arg currentA = arg("currentA", peak.currentA());
        Arg ratingA = arg("ratingA", fuse.continuousA());
        if (verdict.level() == Level.WARNING) {
            return Optional.of(overloaded(fuse, peak).remedy(ReviewText.SPLIT_LOAD.with()));
        }
        if (verdict.level() == Level.NOTE) {
            return Optional.of(Finding.note(
                            FindingCode.FUSE_NEAR_LIMIT.with(
                                    of,
                                    currentA,
                                    ratingA,
                                    arg("continuousA", verdict.limit()),
                                    FindingWording.limitRatio(peak.currentA(), verdict.limit()),
                                    arg("loadPercent", 100 * FuseRule.FITTED_SHARE),
                                    FindingWording.when(peak.moment())),
                            FuseRule.LOAD_BASIS)
                    .remedy(ReviewText.REDUCE_LOAD.with()));
        }
        return Optional.empty();
    }

    private static Finding overloaded(Fuse fuse, Peak peak) {
        double multiple = peak.currentA() / fuse.continuousA();
        Optional<Double> withinS = FuseRule.curve(fuse).longestS(multiple);
        return Finding.warning(
                FindingCode.FUSE_OVERLOADED.with(
                        arg("fuse", fuse.thing()),
                        arg("currentA", peak.currentA()),
                        arg("ratingA", fuse.continuousA()),
                        FindingWording.limitRatio(peak.currentA(), fuse.continuousA()),
                        arg("loadPercent", 100 * multiple),
                        arg("blows", blows(fuse, peak.currentA())),
                        arg(
                                "minutes",
                                withinS.filter(s -> s >= MINUTES_FROM_S)
                                        .map(s -> (int) Math.round(s / 60))
                                        .orElse(0)),
                        arg("withinS", withinS.orElse(0.0)),
                        FindingWording.when(peak.moment())),
                Basis.computed("current against the rating given", "comparison"));
    }

    /** What an overload does to a fuse, by the limits of its standard. */
    private static String blows(Fuse fuse, double currentA) {
        if (fuse.construction() == Fuse.Construction.SELF_RESETTING) {
            return "again-and-again";
        }
        if (currentA >= FuseRule.opensAtOnceA(fuse)) {
            return "at-once";
        }
        double multiple = currentA / fuse.continuousA();
        if (multiple <= FuseRule.curve(fuse).heldMultiple()) {
            return "holds";
        }
        return FuseRule.curve(fuse).longestS(multiple).isEmpty() ? "may-blow" : "within";
    }
}
