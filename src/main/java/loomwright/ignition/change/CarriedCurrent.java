package loomwright.ignition.change;

import static loomwright.message.Arg.arg;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import loomwright.answer.Basis;
import loomwright.answer.Finding;
import loomwright.answer.Severity;
import loomwright.circuit.Place;
import loomwright.conductor.ConductorSize;
import loomwright.conductor.LinkRating;
import loomwright.ignition.spark.SparkResult;
import loomwright.judgement.Verdict;
import loomwright.judgement.wire.FuseRule;
import loomwright.judgement.wire.WireAmpacity;
import loomwright.judgement.wire.WireConditions;
import loomwright.judgement.wire.WireLoadRule;
import loomwright.message.Message;
import org.jspecify.annotations.Nullable;

/** The lasting current of a change against feed wire, fuse and fusible link. */
final class CarriedCurrent {
    private final ChangeInput input;
    private final SparkResult before;
    private final SparkResult after;
    private final @Nullable ConductorSize wire;
    private final List<Finding> findings = new ArrayList<>();
    private final List<Message> working = new ArrayList<>();

    CarriedCurrent(ChangeInput input, SparkResult before, SparkResult after, @Nullable ConductorSize wire) {
        this.wire = wire;
        this.input = input;
        this.before = before;
        this.after = after;
    }

    List<Finding> list(@Nullable ConductorSize link) {
        if (wire != null) {
            wire(wire);
        }
        fuse();
        if (link != null) {
            fusibleLink(link, wire);
        }
        return findings;
    }

    List<Message> working() {
        return working;
    }

    /** The largest current that lasts: running, or key on with every contact closed. */
    private double lastingA() {
        return after.feedNeed().currentA();
    }

    private void wire(ConductorSize size) {
        WireAmpacity allowed = allowed(size);
        double currentA = lastingA();
        working.add(ChangeText.WIRE_CARRIES.with(
                arg("size", size.name()), arg("allowedA", allowed.allowedA()), arg("currentA", currentA)));
        WireLoadRule.judge(currentA, allowed.allowedA())
                .level()
                .severity()
                .ifPresent(severity -> findings.add(Finding.of(
                                severity,
                                ChangeFinding.WIRE_OVERLOADED.with(
                                        arg("currentA", currentA),
                                        arg("allowedA", allowed.allowedA()),
                                        arg("beforeCurrentA", before.feedNeed().currentA()),
                                        arg("size", size.name())),
                                WireAmpacity.TABLE_BASIS)
                        .about(List.of("feed"))
                        .remedy(thicker(size, currentA))));
        Double fuseA = input.fitted().fuseA();
        if (fuseA != null) {
            FuseRule.judgeWire(fuseA, allowed.allowedA())
                    .level()
                    .severity()
                    .ifPresent(severity -> findings.add(Finding.of(
                                    severity,
                                    ChangeFinding.FUSE_TOO_LARGE.with(
                                            arg("ratingA", fuseA),
                                            arg("ampacityA", allowed.allowedA()),
                                            arg("size", size.name())),
                                    FuseRule.WIRE_BASIS)
                            .about(List.of("fuse", "feed"))
                            .remedy(FuseRule.smallest(currentA, true)
                                    .filter(r -> r.ratingA() <= allowed.allowedA())
                                    .map(r -> ChangeFinding.FIT_SMALLER_FUSE.with(arg("ratingA", r.ratingA())))
                                    .orElseGet(() -> largerFuse(currentA)))));
        }
    }

    /** The thinnest size of the same standard that carries it, named. */
    private Message thicker(ConductorSize size, double currentA) {
        return thinnest(size, currentA)
                .map(s -> ChangeFinding.FIT_THICKER_WIRE.with(arg("size", s.name())))
                .orElseGet(ChangeFinding.SPLIT_LOAD_OVER_WIRES::with);
    }

    private Optional<ConductorSize> thinnest(ConductorSize size, double currentA) {
        return ConductorSize.listTrade(size.system()).stream()
                .filter(s -> allowed(s).allowedA() >= currentA)
                .findFirst();
    }

    private WireAmpacity allowed(ConductorSize size) {
        Double insulation = input.fitted().wireInsulationC();
        Double ambient = input.fitted().ambientC();
        return WireAmpacity.of(
                size.areaMm2(),
                new WireConditions(
                        insulation == null ? WireConditions.USUAL_INSULATION_C : insulation,
                        ambient == null ? WireConditions.usualAmbientC(Place.ENGINE_BAY) : ambient,
                        1));
    }

    private void fuse() {
        Double fuseA = input.fitted().fuseA();
        double currentA = lastingA();
        if (fuseA == null) {
            return;
        }
        Verdict verdict = FuseRule.judgeLoad(currentA, fuseA, true);
        verdict.level()
                .severity()
                .ifPresent(severity -> findings.add(Finding.of(
                                severity,
                                (severity == Severity.NOTE
                                                ? ChangeFinding.FUSE_NEAR_LIMIT
                                                : ChangeFinding.FUSE_TOO_SMALL)
                                        .with(
                                                arg("currentA", currentA),
                                                arg("ratingA", fuseA),
                                                arg(
                                                        "beforeCurrentA",
                                                        before.feedNeed().currentA())),
                                FuseRule.LOAD_BASIS)
                        .about(List.of("fuse"))
                        .remedy(largerFuse(currentA))));
    }

    /** The fuse for the current, with the wire that it needs if the one that is there is too thin for it. */
    private Message largerFuse(double currentA) {
        Optional<FuseRule.Rating> fuse = FuseRule.smallest(currentA, true);
        if (fuse.isEmpty()) {
            return ChangeFinding.SPLIT_LOAD.with();
        }
        double ratingA = fuse.get().ratingA();
        ConductorSize size = wire;
        if (size == null || allowed(size).allowedA() >= ratingA) {
            return ChangeFinding.FIT_LARGER_FUSE.with(arg("ratingA", ratingA));
        }
        return thinnest(size, ratingA)
                .map(s -> ChangeFinding.FIT_LARGER_FUSE_AND_WIRE.with(arg("ratingA", ratingA), arg("size", s.name())))
                .orElseGet(ChangeFinding.SPLIT_LOAD::with);
    }

    private void fusibleLink(ConductorSize size, @Nullable ConductorSize behind) {
        double currentA = lastingA();
        double allowedA = allowed(size).allowedA();
        WireLoadRule.judge(currentA, allowedA)
                .level()
                .severity()
                .ifPresent(severity -> findings.add(Finding.of(
                                severity,
                                ChangeFinding.FUSIBLE_LINK_OVERLOADED.with(
                                        arg("currentA", currentA), arg("allowedA", allowedA), arg("size", size.name())),
                                WireAmpacity.TABLE_BASIS)
                        .about(List.of("fusible-link"))
                        .remedy(ChangeFinding.FIT_THICKER_FEED_AND_LINK.with())));
        if (behind != null && size.areaMm2() > linkAreaMm2(behind) * 1.01) {
            findings.add(Finding.warning(
                            ChangeFinding.FUSIBLE_LINK_TOO_THICK.with(
                                    arg("linkAreaMm2", size.areaMm2()),
                                    arg("wireAreaMm2", behind.areaMm2()),
                                    arg("link", size.name()),
                                    arg("wire", behind.name())),
                            Basis.commonPractice("fusible link four gauge numbers smaller than the wire it protects"))
                    .about(List.of("fusible-link", "feed"))
                    .remedy(LinkRating.find(behind, 20)
                            .map(l -> ChangeFinding.FIT_THINNER_LINK.with(arg("size", l.size())))
                            .orElseGet(ChangeFinding.FIT_FUSE_INSTEAD_OF_LINK::with)));
        }
    }

    /** Area of the link that belongs to a wire, 0 where the tables have none. */
    private static double linkAreaMm2(ConductorSize wire) {
        return LinkRating.find(wire, 20)
                .map(link -> wire.areaMm2() * link.areaRatio())
                .orElse(0.0);
    }
}
