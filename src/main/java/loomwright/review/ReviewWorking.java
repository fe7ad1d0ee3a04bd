package loomwright.review;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import loomwright.circuit.Part;
import loomwright.circuit.Wire;
import loomwright.conductor.CrankingHeat;
import loomwright.judgement.wire.WireConditions;
import loomwright.review.context.FindingWording;
import loomwright.review.context.Protection.Region;
import loomwright.review.context.ReviewContext;

/** How a review came about, and what it could not judge. */
final class ReviewWorking {
    private ReviewWorking() {}

    static List<String> lines(ReviewContext context) {
        List<String> lines = new ArrayList<>();
        lines.add(context.survey().combinations()
                + " combinations of free switches and breaker contacts, each in every step; each finding names the worst"
                + " of them, switches only where they stand otherwise than in the plan.");
        lines.add("Currents that last are judged against continuous limits; those of cranking against the heat of "
                + FindingWording.number(CrankingHeat.GO_S) + " s.");
        lines.add("Times at which a starter turns that nobody asked to are left out but for the finding of its feed.");
        wires(context, lines);
        lines.add("Reached from the battery without a fuse: "
                + ids(context.protection().unfused().wires()) + ".");
        for (Region region : context.protection().fused()) {
            lines.add("Behind " + region.protector().map(Part::displayName).orElse("") + ": " + ids(region.wires())
                    + ".");
        }
        return lines;
    }

    private static void wires(ReviewContext context, List<String> lines) {
        note(
                context,
                lines,
                w -> w.size() != null && w.insulationTemperatureC() == null,
                "Insulation taken as PVC, " + FindingWording.number(WireConditions.USUAL_INSULATION_C)
                        + " C, since the plan does not say: ");
        note(
                context,
                lines,
                w -> w.size() != null && w.bundleCount() == null,
                "Taken as not in a bundle, since the plan" + " does not say: ");
        note(
                context,
                lines,
                w -> w.size() == null,
                "Not judged for ampacity and protection, given by resistance alone: ");
    }

    private static void note(ReviewContext context, List<String> lines, Predicate<Wire> which, String text) {
        List<Wire> wires = context.plan().wires().stream().filter(which).toList();
        if (!wires.isEmpty()) {
            lines.add(text + (wires.size() == context.plan().wires().size() ? "all wires" : ids(wires)) + ".");
        }
    }

    private static String ids(List<Wire> wires) {
        return wires.isEmpty() ? "no wire" : wires.stream().map(Wire::id).collect(Collectors.joining(", "));
    }
}
