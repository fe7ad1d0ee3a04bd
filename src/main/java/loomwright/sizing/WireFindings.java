package loomwright.sizing;

import java.util.ArrayList;
import java.util.List;
import loomwright.answer.Basis;
import loomwright.answer.Finding;
import loomwright.answer.Severity;
import loomwright.conductor.ConductorSize;
import loomwright.conductor.Copper;
import loomwright.conductor.FigureText;
import loomwright.judgement.Verdict;
import loomwright.judgement.wire.FuseRule;
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
            findings.add(new Finding(
                    Severity.WARNING,
                    "current-impossible",
                    List.of(),
                    "The supply of " + FigureText.text(run.supplyV()) + " V cannot drive "
                            + FigureText.text(run.currentA()) + " A through this run.",
                    List.of(new Finding.Figure("totalV", totalV), new Finding.Figure("supplyV", run.supplyV())),
                    drop.basis(),
                    betterSize(run)));
        } else {
            drop.level()
                    .severity()
                    .ifPresent(severity -> findings.add(new Finding(
                            severity,
                            "voltage-drop",
                            List.of(),
                            FigureText.text(totalV) + " V is lost. Above " + FigureText.text(drop.limit())
                                    + " V is a fault.",
                            figures(drop, "totalV", "limitV"),
                            drop.basis(),
                            betterSize(run))));
        }
        wire.level().severity().ifPresent(severity -> findings.add(ofWire(run, wire, severity)));
        return findings;
    }

    private static Finding ofWire(DropCase run, Verdict wire, Severity severity) {
        if (run.starter()) {
            return new Finding(
                    severity,
                    "starter-cables-thin",
                    List.of(),
                    "Both cables have " + FigureText.text(1000 * wire.value()) + " mΩ together. The most is "
                            + FigureText.text(1000 * wire.limit()) + " mΩ.",
                    figures(wire, "cablesOhm", "limitOhm"),
                    wire.basis(),
                    betterSize(run));
        }
        return new Finding(
                severity,
                "wire-overloaded",
                List.of(),
                run.out().size().name() + " carries " + FigureText.text(wire.value()) + " A. It may carry "
                        + FigureText.text(wire.limit()) + " A there.",
                figures(wire, "currentA", "ampacityA"),
                wire.basis(),
                betterSize(run));
    }

    /** The size that cures both, named; or that no wire does. */
    private static String betterSize(DropCase run) {
        return ConductorSize.list(run.out().size().system()).stream()
                .filter(size -> size.areaMm2() > run.out().size().areaMm2())
                .filter(size -> cured(run.withSize(size)))
                .findFirst()
                .map(size -> "Fit " + size.name() + ".")
                .orElse("No wire cures this alone. Shorten the run, or clean its joints and earth.");
    }

    /** Whether neither rule finds anything in a run any more: what the remedy promises. */
    private static boolean cured(DropCase run) {
        double fixedOhm = run.chassisOhm()
                + run.jointsOutOhm().stream().mapToDouble(o -> o).sum()
                + run.jointsBackOhm().stream().mapToDouble(o -> o).sum();
        double wiresV = run.out().wire(run.currentA()).dropV()
                + run.back().map(b -> b.wire(run.currentA()).dropV()).orElse(0.0);
        double dropV = wiresV + run.currentA() * fixedOhm;
        return run.limit().judge(dropV, run.supplyV()).level().severity().isEmpty()
                && run.judgeWire().level().severity().isEmpty();
    }

    /**
     * A fitted fuse against its load and its wire.
     *
     * @param load the verdict on the load; absent where no load was given
     * @param better the rating that suits; absent if none does
     */
    static List<Finding> ofFuse(
            @Nullable Verdict load,
            Verdict wire,
            double overloadC,
            @Nullable Double better,
            @Nullable String betterSize) {
        List<Finding> findings = new ArrayList<>();
        if (load != null) {
            load.level()
                    .severity()
                    .ifPresent(severity -> findings.add(new Finding(
                            severity,
                            severity == Severity.NOTE ? "fuse-near-limit" : "fuse-overloaded",
                            List.of(),
                            severity == Severity.NOTE
                                    ? "The fuse carries " + FigureText.text(load.value())
                                            + " A for long. It will weaken and eventually blow."
                                    : "The fuse carries " + FigureText.text(load.value()) + " A. It will blow.",
                            figures(load, "currentA", "continuousA"),
                            load.basis(),
                            remedy(better, betterSize))));
        }
        wire.level()
                .severity()
                .ifPresent(severity -> findings.add(new Finding(
                        severity,
                        "fuse-too-large",
                        List.of(),
                        "The fuse of " + FigureText.text(wire.value())
                                + " A does not protect the wire. The wire may carry " + FigureText.text(wire.limit())
                                + " A.",
                        overload(figures(wire, "ratingA", "ampacityA"), overloadC),
                        wire.basis(),
                        remedy(better, betterSize))));
        return findings;
    }

    private static String remedy(@Nullable Double better, @Nullable String betterSize) {
        if (better != null) {
            return "Fit a fuse of " + FigureText.text(better) + " A.";
        }
        return betterSize == null ? "Divide the load over more wires and fuses." : "Fit " + betterSize;
    }

    private static List<Finding.Figure> figures(Verdict verdict, String value, String limit) {
        List<Finding.Figure> figures = new ArrayList<>();
        figures.add(new Finding.Figure(value, verdict.value()));
        figures.add(new Finding.Figure(limit, verdict.limit()));
        if (Double.isFinite(verdict.ratio())) {
            figures.add(new Finding.Figure("timesLimit", verdict.ratio()));
        }
        return figures;
    }

    private static List<Finding.Figure> overload(List<Finding.Figure> figures, double overloadC) {
        if (Double.isFinite(overloadC)) {
            figures.add(new Finding.Figure("overloadTemperatureC", overloadC));
        }
        return figures;
    }

    /** The multiple at which {@code overloadTemperatureC} is reckoned. */
    static double overloadA(double ratingA) {
        return FuseRule.OVERLOAD_MULTIPLE * ratingA;
    }
}
