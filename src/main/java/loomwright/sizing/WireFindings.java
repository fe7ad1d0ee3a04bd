package loomwright.sizing;

import static loomwright.message.Arg.arg;
import static loomwright.message.Arg.quantities;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import loomwright.answer.Basis;
import loomwright.answer.Finding;
import loomwright.answer.Severity;
import loomwright.conductor.ConductorSize;
import loomwright.conductor.Copper;
import loomwright.judgement.Verdict;
import loomwright.judgement.wire.FuseRule;
import loomwright.judgement.wire.WireAmpacity;
import loomwright.message.Arg;
import loomwright.message.Message;
import org.jspecify.annotations.Nullable;

/** The findings of a run, a wire and a fuse: what the judge found, with the figures and what to do. */
final class WireFindings {
    static final Basis STRANDING = Basis.verified(
            "AWG and SAE sizes: " + Copper.STRANDING + " times the resistance of solid copper",
            "makers' tables of stranded cable; metric sizes have their permitted maximum");

    private WireFindings() {}

    static List<Finding> ofDrop(DropCase run, Verdict drop, Verdict wire, double totalV) {
        List<Finding> findings = new ArrayList<>();
        if (totalV >= run.supplyV()) {
            findings.add(Finding.warning(
                            SizingFinding.CURRENT_IMPOSSIBLE.with(
                                    arg("supplyV", run.supplyV()),
                                    arg("currentA", run.currentA()),
                                    arg("totalV", totalV)),
                            drop.basis())
                    .remedy(betterSize(run)));
        } else {
            drop.level()
                    .severity()
                    .ifPresent(severity -> findings.add(Finding.of(
                                    severity,
                                    SizingFinding.VOLTAGE_DROP.with(figures(drop, "totalV", "limitV")),
                                    drop.basis())
                            .remedy(betterSize(run))));
        }
        wire.level().severity().ifPresent(severity -> findings.add(ofWire(run, wire, severity)));
        return findings;
    }

    private static Finding ofWire(DropCase run, Verdict wire, Severity severity) {
        Message found = run.starter()
                ? SizingFinding.STARTER_CABLES_THIN.with(figures(wire, "cablesOhm", "limitOhm"))
                : SizingFinding.WIRE_OVERLOADED.with(figures(
                        wire,
                        "currentA",
                        "ampacityA",
                        arg("size", run.out().size().name())));
        return Finding.of(severity, found, wire.basis()).remedy(betterSize(run));
    }

    /** The size that cures both, named; or that no wire does. */
    private static Message betterSize(DropCase run) {
        return ConductorSize.list(run.out().size().system()).stream()
                .filter(size -> size.areaMm2() > run.out().size().areaMm2())
                .filter(size -> cured(run.withSize(size)))
                .findFirst()
                .map(size -> SizingText.FIT_SIZE.with(arg("size", size.name())))
                .orElseGet(SizingText.NO_WIRE_CURES::with);
    }

    /** Whether neither rule finds anything in a run any more: what the remedy promises. */
    private static boolean cured(DropCase run) {
        double dropV = run.wiresV() + run.currentA() * run.fixedOhm();
        return run.limit().judge(dropV, run.supplyV()).level().severity().isEmpty()
                && run.judgeWire().level().severity().isEmpty();
    }

    /**
     * A fitted fuse against its load and its wire.
     *
     * @param load the verdict on the load; absent where no load was given
     * @param shortA currents of a short circuit in which the insulation burns before the fuse blows; none or one
     * @param better the rating that suits; absent if none does
     */
    static List<Finding> ofFuse(
            @Nullable Verdict load,
            Verdict wire,
            double overloadC,
            List<Double> shortA,
            @Nullable Double better,
            FuseCase.@Nullable BetterWire betterWire) {
        List<Finding> findings = new ArrayList<>();
        Message remedy = remedy(better, betterWire);
        if (load != null) {
            load.level().severity().ifPresent(severity -> {
                SizingFinding code =
                        severity == Severity.NOTE ? SizingFinding.FUSE_NEAR_LIMIT : SizingFinding.FUSE_OVERLOADED;
                findings.add(Finding.of(severity, code.with(figures(load, "currentA", "continuousA")), load.basis())
                        .remedy(remedy));
            });
        }
        Optional<Severity> found = shortA.isEmpty() ? wire.level().severity() : Optional.of(Severity.DANGER);
        found.ifPresent(severity -> {
            List<Arg> more = new ArrayList<>(List.of(quantities("shortA", shortA)));
            if (Double.isFinite(overloadC)) {
                more.add(arg("overloadTemperatureC", overloadC));
            }
            Arg[] warm = more.toArray(new Arg[0]);
            findings.add(Finding.of(
                            severity,
                            SizingFinding.FUSE_TOO_LARGE.with(figures(wire, "ratingA", "ampacityA", warm)),
                            wire.basis())
                    .remedy(remedy));
        });
        return findings;
    }

    private static Message remedy(@Nullable Double better, FuseCase.@Nullable BetterWire betterWire) {
        if (better != null) {
            return SizingText.FIT_FUSE.with(arg("ratingA", better));
        }
        return betterWire == null ? SizingText.DIVIDE_LOAD.with() : betterWire.fit();
    }

    private static Arg[] figures(Verdict verdict, String value, String limit, Arg... more) {
        List<Arg> figures = new ArrayList<>(List.of(more));
        figures.add(arg(value, verdict.value()));
        figures.add(arg(limit, verdict.limit()));
        if (Double.isFinite(verdict.ratio())) {
            figures.add(arg("ofLimitRatio", verdict.ratio()));
        }
        return figures.toArray(new Arg[0]);
    }

    /** The multiple at which {@code overloadTemperatureC} is reckoned. */
    /** As warm as a wire gets in the longest overload that a fuse stands; null where it has no end. */
    static @Nullable Double overloadC(double ratingA, WireAmpacity ampacity) {
        double reachedC = ampacity.temperatureC(overloadA(ratingA));
        return Double.isFinite(reachedC) ? (Double) reachedC : null;
    }

    static double overloadA(double ratingA) {
        return FuseRule.OVERLOAD_MULTIPLE * ratingA;
    }
}
