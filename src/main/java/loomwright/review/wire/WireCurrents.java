package loomwright.review.wire;

import static loomwright.message.Arg.arg;

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
import loomwright.message.Message;
import loomwright.operation.Branch;
import loomwright.review.context.Check;
import loomwright.review.context.FindingCode;
import loomwright.review.context.FindingWording;
import loomwright.review.context.PeakCurrents.Peak;
import loomwright.review.context.ReviewContext;
import loomwright.review.context.ReviewText;
import loomwright.review.context.WireRating;

/** Each wire's current against its ampacity, and its heat within one cranking period. */
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
                                .ifPresent(severity -> findings.add(overloaded(wire, rating.get(), severity, peak)
                                        .restingOn(WireRating.dependsOn(
                                                wire,
                                                context.plan().system(),
                                                other -> WireLoadRule.judge(peak.currentA(), other.allowedA()))))));
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
        return Finding.of(
                        severity,
                        FindingCode.WIRE_OVERLOADED.with(
                                arg("wire", wire.thing()),
                                arg("currentA", peak.currentA()),
                                arg("ampacityA", allowedA),
                                FindingWording.limitRatio(peak.currentA(), allowedA),
                                arg("heatWPerM", heatWPerM),
                                arg("size", rating.size().name()),
                                arg("insulation", rating.assumed() ? "assumed" : "known"),
                                FindingWording.when(peak.moment())),
                        WireAmpacity.TABLE_BASIS)
                .remedy(thickerWire(rating, peak.currentA()));
    }

    /** The thinnest size of the same standard that carries it, named. */
    private static Message thickerWire(WireRating rating, double currentA) {
        return ConductorSize.list(rating.size().system()).stream()
                .filter(s -> WireAmpacity.of(s.areaMm2(), rating.ampacity().conditions())
                                .allowedA()
                        >= currentA)
                .findFirst()
                .map(s -> ReviewText.FIT_SIZE_OR_REDUCE_LOAD.with(arg("size", s.name())))
                .orElseGet(ReviewText.SPLIT_LOAD_OVER_WIRES::with);
    }

    /** {@link CrankingHeat} */
    private static List<Finding> cranking(Wire wire, WireRating rating, Peak peak) {
        double timeS = CrankingHeat.timeS(rating.size(), peak.currentA(), rating.ambientC(), rating.insulationC());
        if (CrankingHeat.bears(timeS)) {
            return List.of();
        }
        double bearableA = peak.currentA() * Math.sqrt(timeS / CrankingHeat.GO_S);
        return List.of(Finding.warning(
                        FindingCode.WIRE_OVERLOADED_CRANKING.with(
                                arg("wire", wire.thing()),
                                arg("currentA", peak.currentA()),
                                arg("bearableA", bearableA),
                                FindingWording.limitRatio(peak.currentA(), bearableA),
                                arg("timeS", timeS),
                                arg("limitS", CrankingHeat.GO_S),
                                arg("size", rating.size().name()),
                                arg("insulationC", rating.insulationC()),
                                arg("insulation", rating.assumed() ? "assumed" : "known"),
                                FindingWording.when(peak.moment())),
                        CrankingHeat.ADIABATIC)
                .remedy(ReviewText.FIT_THICKER_WIRE.with()));
    }

    private static Finding tooHot(Wire wire, WireRating rating) {
        return Finding.warning(
                        FindingCode.INSULATION_TEMPERATURE_EXCEEDED.with(
                                arg("wire", wire.thing()),
                                arg("ambientTemperatureC", rating.ambientC()),
                                arg("insulationTemperatureC", rating.insulationC()),
                                FindingWording.limitRatio(rating.ambientC(), rating.insulationC()),
                                arg("insulation", rating.assumed() ? "assumed" : "known")),
                        Basis.commonPractice("insulation must stand more than the temperature around it"))
                .remedy(ReviewText.FIT_HEAT_RESISTANT_WIRE.with());
    }
}
