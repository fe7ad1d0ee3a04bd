package loomwright.review.wire;

import static loomwright.review.context.FindingWording.figure;
import static loomwright.review.context.FindingWording.number;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import loomwright.answer.Basis;
import loomwright.answer.Finding;
import loomwright.answer.Severity;
import loomwright.circuit.Wire;
import loomwright.conductor.Ampacity;
import loomwright.conductor.CrankingHeat;
import loomwright.operation.Branch;
import loomwright.review.context.Check;
import loomwright.review.context.FindingCode;
import loomwright.review.context.FindingWording;
import loomwright.review.context.PeakCurrents.Peak;
import loomwright.review.context.ReviewContext;
import loomwright.review.context.WireRating;

/** Each wire's current against its ampacity, and its heat within one go of the starter. */
public final class WireCurrents implements Check {
    /** From here the published limits make a fuse of that rating open: the wire is as a fuse would be. */
    static final double DANGER_TIMES = 1.35;

    @Override
    public List<Finding> check(ReviewContext context) {
        List<Finding> findings = new ArrayList<>();
        for (Wire wire : context.plan().wires()) {
            Optional<WireRating> rating = context.findRating(wire);
            if (rating.isPresent() && rating.get().tooHot()) {
                findings.add(tooHot(wire, rating.get()));
            } else if (rating.isPresent() && rating.get().ampacity().isPresent()) {
                Ampacity ampacity = rating.get().ampacity().get();
                context.lasting()
                        .find(Branch.Owner.WIRE, wire.id())
                        .filter(peak -> peak.currentA() > ampacity.allowedA())
                        .ifPresent(peak -> findings.add(overloaded(wire, rating.get(), ampacity, peak)));
                context.cranking()
                        .find(Branch.Owner.WIRE, wire.id())
                        .filter(peak -> peak.currentA() > ampacity.allowedA())
                        .ifPresent(peak -> findings.addAll(cranking(wire, rating.get(), peak)));
            }
        }
        return findings;
    }

    private static Finding overloaded(Wire wire, WireRating rating, Ampacity ampacity, Peak peak) {
        double times = peak.currentA() / ampacity.allowedA();
        double heatWPerM = rating.heatWPerM(peak.currentA());
        return FindingCode.WIRE_OVERLOADED.finding(
                times >= DANGER_TIMES ? Severity.DANGER : Severity.WARNING,
                List.of(wire.id()),
                "Wire " + wire.id() + " (" + rating.size().name() + ") carries " + number(peak.currentA()) + " A, "
                        + FindingWording.when(peak.moment()) + "; it may carry " + number(ampacity.allowedA())
                        + " A there ("
                        + ampacity.working() + (rating.assumed() ? "; insulation assumed" : "") + "). It makes "
                        + number(heatWPerM) + " W of heat in each metre.",
                FindingWording.with(
                        FindingWording.against("currentA", peak.currentA(), "ampacityA", ampacity.allowedA()),
                        figure("heatWPerM", heatWPerM)),
                ampacity.basis().get(0),
                "Take a thicker wire, or take load off it.");
    }

    /** {@link CrankingHeat} */
    private static List<Finding> cranking(Wire wire, WireRating rating, Peak peak) {
        double timeS = CrankingHeat.timeS(rating.size(), peak.currentA(), rating.ambientC(), rating.insulationC());
        if (CrankingHeat.bears(timeS)) {
            return List.of();
        }
        double bearableA = peak.currentA() * Math.sqrt(timeS / CrankingHeat.GO_S);
        return List.of(FindingCode.WIRE_OVERLOADED_CRANKING.finding(
                Severity.WARNING,
                List.of(wire.id()),
                "Wire " + wire.id() + " (" + rating.size().name() + ") carries " + number(peak.currentA()) + " A, "
                        + FindingWording.when(peak.moment()) + ", and reaches the " + number(rating.insulationC())
                        + " C of its insulation" + (rating.assumed() ? " (assumed)" : "") + " within " + number(timeS)
                        + " s; a go of the starter may take " + number(CrankingHeat.GO_S) + " s.",
                FindingWording.with(
                        FindingWording.against("currentA", peak.currentA(), "bearableA", bearableA),
                        figure("timeS", timeS)),
                CrankingHeat.ADIABATIC,
                "Take a thicker wire."));
    }

    private static Finding tooHot(Wire wire, WireRating rating) {
        return FindingCode.INSULATION_TEMPERATURE_EXCEEDED.finding(
                Severity.WARNING,
                List.of(wire.id()),
                "Wire " + wire.id() + " lies in " + number(rating.ambientC()) + " C; its insulation stands "
                        + number(rating.insulationC()) + " C" + (rating.assumed() ? " (assumed: PVC)" : "") + ".",
                FindingWording.against(
                        "ambientTemperatureC", rating.ambientC(), "insulationTemperatureC", rating.insulationC()),
                Basis.commonPractice("insulation must stand more than the temperature around it"),
                "Take wire with insulation for that place, or lead it elsewhere.");
    }
}
