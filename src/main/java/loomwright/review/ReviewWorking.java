package loomwright.review;

import static loomwright.message.Arg.arg;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Predicate;
import loomwright.backfeed.BackfeedAnswer;
import loomwright.circuit.Fuse;
import loomwright.circuit.Wire;
import loomwright.conductor.CrankingHeat;
import loomwright.judgement.Level;
import loomwright.judgement.Verdict;
import loomwright.judgement.wire.FuseRule;
import loomwright.judgement.wire.WireAmpacity;
import loomwright.judgement.wire.WireConditions;
import loomwright.message.Arg;
import loomwright.message.Message;
import loomwright.review.context.Protection.Region;
import loomwright.review.context.ReviewContext;
import loomwright.review.context.ReviewText;
import loomwright.review.context.WireRating;

/** How a review came about, and what it could not judge. */
final class ReviewWorking {
    private ReviewWorking() {}

    static List<Message> lines(ReviewContext context) {
        List<Message> lines = new ArrayList<>(
                BackfeedAnswer.extent(context.plan(), context.backfeed().extent()));
        lines.add(ReviewText.COMBINATIONS_REVIEWED.with(
                arg("combinations", context.survey().combinations())));
        lines.add(ReviewText.LASTING_AND_CRANKING.with(arg("limitS", CrankingHeat.GO_S)));
        lines.add(ReviewText.UNINTENDED_CRANKING_IGNORED.with());
        wires(context, lines);
        lines.add(ReviewText.UNFUSED_WIRES.with(
                things(context.protection().unfused().wires())));
        for (Region region : context.protection().fused()) {
            region.protector()
                    .ifPresent(part -> lines.add(
                            ReviewText.WIRES_BEHIND.with(arg("protector", part.thing()), things(region.wires()))));
        }
        context.protection().fused().forEach(region -> fuse(context, region).ifPresent(lines::add));
        return lines;
    }

    /** A fuse that suits its thinnest wire as assumed, but not otherwise. */
    private static Optional<Message> fuse(ReviewContext context, Region region) {
        if (!(region.protector().orElse(null) instanceof Fuse fuse)) {
            return Optional.empty();
        }
        Function<WireAmpacity, Verdict> judge = at -> FuseRule.judgeWire(fuse.continuousA(), at.allowedA());
        return region.wires().stream()
                .filter(wire -> context.findRating(wire).isPresent())
                .min(Comparator.comparingDouble(
                        wire -> context.findRating(wire).orElseThrow().allowedA()))
                .filter(wire ->
                        judge.apply(context.findRating(wire).orElseThrow().ampacity())
                                        .level()
                                == Level.FITS)
                .flatMap(wire -> WireRating.dependsOn(wire, context.plan().system(), judge).stream()
                        .findFirst()
                        .map(turn -> ReviewText.FUSE_SUITS_BUT.with(
                                arg("fuse", fuse.thing()), arg("wire", wire.thing()), arg("turn", turn))));
    }

    private static void wires(ReviewContext context, List<Message> lines) {
        note(
                context,
                lines,
                w -> w.conductor().size() != null && w.laid().insulationTemperatureC() == null,
                ReviewText.INSULATION_ASSUMED);
        note(
                context,
                lines,
                w -> w.conductor().size() != null && w.laid().bundleCount() == null,
                ReviewText.NO_BUNDLE_ASSUMED);
        note(context, lines, w -> w.conductor().size() == null, ReviewText.SIZE_UNKNOWN);
    }

    private static void note(ReviewContext context, List<Message> lines, Predicate<Wire> which, ReviewText text) {
        List<Wire> wires = context.plan().wires().stream().filter(which).toList();
        if (!wires.isEmpty()) {
            boolean all = wires.size() == context.plan().wires().size();
            lines.add(text.with(
                    arg("which", all ? "all" : "some"),
                    things(wires),
                    arg("insulationC", WireConditions.USUAL_INSULATION_C)));
        }
    }

    private static Arg things(List<Wire> wires) {
        return Arg.things("wires", wires.stream().map(Wire::thing).toList());
    }
}
