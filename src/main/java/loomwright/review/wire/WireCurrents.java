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
import loomwright.conductor.ConductorSize;
import loomwright.conductor.CrankingHeat;
import loomwright.judgement.wire.WireAmpacity;
import loomwright.judgement.wire.WireLoadRule;
import loomwright.operation.Branch;
import loomwright.review.context.Check;
import loomwright.review.context.FindingCode;
import loomwright.review.context.FindingWording;
import loomwright.review.context.PeakCurrents.Peak;
import loomwright.review.context.ReviewContext;
import loomwright.review.context.WireRating;

/** Each wire's current against its ampacity, and its heat within one go of the starter. */
public final class WireCurrents implements Check {
    @Override
    public List<Finding> check(ReviewContext context) {
        List<Finding> findings = new ArrayList<>();
        for (Wire wire : context.plan().wires()) {
            Optional<WireRating> rating = context.findRating(wire);
            if (rating.isPresent() && rating.get().tooHot()) {
                findings.add(tooHot(wire, rating.get()));
            } else if (rating.isPresent()) {
                double allowedA = rating.get().allowedA();
                context.lasting()
                        .find(Branch.Owner.WIRE, wire.id())
                        .ifPresent(peak -> WireLoadRule.judge(peak.currentA(), allowedA)
                                .level()
                                .severity()
                                .ifPresent(severity -> findings.add(overloaded(wire, rating.get(), severity, peak))));
                context.cranking()
                        .find(Branch.Owner.WIRE, wire.id())
                        .filter(peak -> peak.currentA() > allowedA)
                        .ifPresent(peak -> findings.addAll(cranking(wire, rating.get(), peak)));
            }
        }
        return findings;
    }

    private static Finding overloaded(Wire wire, WireRating rating, Severity severity, Peak peak) {
        double allowedA = rating.allowedA();
        double heatWPerM = rating.heatWPerM(peak.currentA());
        return FindingCode.WIRE_OVERLOADED.finding(
                severity,
                List.of(wire.id()),
                "Wire " + wire.id() + " (" + rating.size().name() + ") carries " + number(peak.currentA()) + " A, "
                        + FindingWording.when(peak.moment()) + "; it may carry " + number(allowedA) + " A there"
                        + (rating.assumed() ? " (insulation assumed)" : "") + ". It makes "
                        + number(heatWPerM) + " W of heat in each metre.",
                FindingWording.with(
                        FindingWording.against("currentA", peak.currentA(), "ampacityA", allowedA),
                        figure("heatWPerM", heatWPerM)),
                WireAmpacity.TABLE_BASIS,
                thickerWire(rating, peak.currentA()));
    }

    /** The thinnest size of the same standard that carries it, named. */
    private static String thickerWire(WireRating rating, double currentA) {
        return ConductorSize.list(rating.size().system()).stream()
                .filter(s -> WireAmpacity.of(s.areaMm2(), rating.ampacity().conditions())
                                .allowedA()
                        >= currentA)
                .findFirst()
                .map(s -> "Fit " + s.name() + ", or take load off the wire.")
                .orElse("Divide the load over more wires.");
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
