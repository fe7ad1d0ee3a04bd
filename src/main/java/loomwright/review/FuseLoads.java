package loomwright.review;

import static loomwright.review.Wording.number;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import loomwright.answer.Basis;
import loomwright.answer.Finding;
import loomwright.answer.Severity;
import loomwright.backfeed.Survey.Moment;
import loomwright.circuit.Battery;
import loomwright.circuit.Fuse;
import loomwright.circuit.Rectifier;
import loomwright.conductor.FuseChoice;
import loomwright.conductor.FuseCurve;
import loomwright.operation.Branch;
import loomwright.operation.CurrentPaths;
import loomwright.operation.SolvedStep;
import loomwright.review.Peaks.Peak;

/** The lasting current of each fuse against its rating. */
final class FuseLoads implements Check {
    /** From this multiple of its rating on a fuse blows within a tenth of a second or so: the last that the table has. */
    private static final double AT_ONCE = FuseCurve.largestMultiple();

    private static final Basis BLOWS_AT_ONCE = Basis.verified(
            "a blade fuse opens at " + number(AT_ONCE) + " times its rating within a tenth of a second or little more",
            "opening time limits of ISO 8820-3 and SAE J1284, see the table blade-fuse-limits");

    /**
     * By id of each fuse behind which there is a short in one of some moments, the moment in which it carries most.
     */
    static Map<String, Moment> shorted(List<Fuse> fuses, List<Moment> moments) {
        Map<String, Moment> shorted = new LinkedHashMap<>();
        for (Fuse fuse : fuses) {
            moments.stream()
                    .filter(m -> isShorted(fuse, m.solved()))
                    .min(Telling.mostOf(m -> carriesA(fuse, m.solved())))
                    .ifPresent(m -> shorted.put(fuse.id(), m));
        }
        return shorted;
    }

    /** Whether a fuse blows at once and its current meets no load: of one that is merely too small that is not said. */
    private static boolean isShorted(Fuse fuse, SolvedStep solved) {
        return carriesA(fuse, solved) >= AT_ONCE * fuse.ratingA()
                && wayBehind(fuse, solved).stream().noneMatch(i -> LoadLoop.isOnPurpose(solved, i));
    }

    private static double carriesA(Fuse fuse, SolvedStep solved) {
        int branch = solved.firstBranchOf(fuse.id());
        return branch < solved.endBranchOf(fuse.id()) ? Math.abs(solved.currentA(branch)) : 0;
    }

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
        List<String> way = wayBehind(fuse, moment.solved()).stream()
                .map(i -> moment.solved().branches().get(i).id())
                .distinct()
                .toList();
        double currentA = carriesA(fuse, moment.solved());
        List<String> ids = new ArrayList<>(List.of(fuse.id()));
        ids.addAll(way);
        boolean diode =
                way.stream().anyMatch(id -> moment.solved().plan().findPart(id).orElse(null) instanceof Rectifier);
        return FindingCode.FUSE_BLOWS_AT_ONCE.finding(
                Severity.DANGER,
                ids,
                fuse.called() + " (" + number(fuse.ratingA()) + " A) carries " + number(currentA) + " A, "
                        + Wording.when(moment) + ": a short, it blows at once. The current goes through "
                        + String.join(", ", way) + ". What follows from the short is not told besides.",
                Wording.against("currentA", currentA, "ratingA", fuse.ratingA()),
                BLOWS_AT_ONCE,
                "Look along that way for what joins the feed to earth"
                        + (diode ? "; the diode in it may be the wrong way round" : "")
                        + ". No larger fuse. Have the plan reviewed again when it is put right.");
    }

    /** What the current of a fuse goes through after it, as far as the chassis or the source. */
    private static List<Integer> wayBehind(Fuse fuse, SolvedStep solved) {
        CurrentPaths paths = new CurrentPaths(solved);
        int branch = solved.firstBranchOf(fuse.id());
        List<Integer> way = new ArrayList<>();
        for (int next : paths.widest(paths.head(branch), paths.tail(branch))) {
            if (solved.partOf(next).filter(Battery.class::isInstance).isPresent()) {
                break;
            }
            way.add(next);
            if (solved.isChassis(paths.head(next))) {
                break;
            }
        }
        return way;
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
        String carries = fuse.called() + " (" + number(fuse.ratingA()) + " A) carries " + number(peak.currentA())
                + " A, " + Wording.when(peak.moment());
        if (peak.currentA() > fuse.ratingA()) {
            return Optional.of(FindingCode.FUSE_OVERLOADED.finding(
                    Severity.WARNING,
                    List.of(fuse.id()),
                    carries + ": it blows "
                            + (peak.currentA() >= AT_ONCE * fuse.ratingA() ? "at once." : "sooner or later."),
                    Wording.against("currentA", peak.currentA(), "ratingA", fuse.ratingA()),
                    Basis.computed("current against the rating given", "comparison"),
                    "Divide the load over more fuses; a larger fuse only if the wires behind it stand that."));
        }
        if (peak.currentA() > FuseChoice.FITTED_SHARE * fuse.ratingA()) {
            return Optional.of(FindingCode.FUSE_NEAR_LIMIT.finding(
                    Severity.NOTE,
                    List.of(fuse.id()),
                    carries
                            + ", more than " + FuseChoice.FITTED_PERCENT
                            + " of its rating: if that goes on for long, or in hot surroundings, it ages"
                            + " and blows one day.",
                    Wording.against(
                            "currentA", peak.currentA(), "continuousA", FuseChoice.FITTED_SHARE * fuse.ratingA()),
                    FuseChoice.FITTED_BASIS,
                    "Take load off it; a larger fuse only if the wires behind it stand that."));
        }
        return Optional.empty();
    }
}
