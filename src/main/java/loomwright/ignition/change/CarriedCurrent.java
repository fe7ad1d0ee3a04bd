package loomwright.ignition.change;

import java.util.ArrayList;
import java.util.List;
import loomwright.answer.Basis;
import loomwright.answer.Finding;
import loomwright.answer.Severity;
import loomwright.circuit.Place;
import loomwright.conductor.ConductorSize;
import loomwright.conductor.LinkRating;
import loomwright.ignition.WorkingNumber;
import loomwright.ignition.spark.SparkResult;
import loomwright.ignition.spark.SwitchInput;
import loomwright.judgement.Verdict;
import loomwright.judgement.wire.FuseRule;
import loomwright.judgement.wire.WireAmpacity;
import loomwright.judgement.wire.WireConditions;
import loomwright.judgement.wire.WireLoadRule;
import org.jspecify.annotations.Nullable;

/** The lasting current of a change against feed wire, fuse and fusible link. */
final class CarriedCurrent {
    private final ChangeInput input;
    private final SparkResult before;
    private final SparkResult after;
    private final List<Finding> findings = new ArrayList<>();
    private final List<String> working = new ArrayList<>();

    CarriedCurrent(ChangeInput input, SparkResult before, SparkResult after) {
        this.input = input;
        this.before = before;
        this.after = after;
    }

    List<Finding> list(@Nullable ConductorSize wire, @Nullable ConductorSize link) {
        if (wire != null) {
            wire(wire);
        }
        fuse();
        if (link != null) {
            fusibleLink(link, wire);
        }
        return findings;
    }

    List<String> working() {
        return working;
    }

    /** The largest current that lasts: running, or key on with the primary closed, which a module switches off itself. */
    private double lastingA() {
        boolean module = input.after().primarySwitch().kind() == SwitchInput.Kind.MODULE;
        return Math.max(
                after.at().allCoilsA(), module ? 0 : coils() * after.closed().currentA());
    }

    /** Two contact sets may both be closed at rest. */
    private double coils() {
        return after.at().averageA() > 0 ? after.at().allCoilsA() / after.at().averageA() : 1;
    }

    private void wire(ConductorSize size) {
        WireAmpacity allowed = allowed(size);
        double currentA = lastingA();
        working.add("Wire " + size.name() + ": may carry " + WorkingNumber.of(allowed.allowedA())
                + " A; lasting current " + WorkingNumber.of(currentA) + " A");
        WireLoadRule.judge(currentA, allowed.allowedA())
                .level()
                .severity()
                .ifPresent(severity -> findings.add(new Finding(
                        severity,
                        "wire-overloaded",
                        List.of("feed"),
                        "The feed wire carries " + WorkingNumber.of(currentA) + " A for long (before: "
                                + WorkingNumber.of(before.at().allCoilsA()) + " A running); " + size.name()
                                + " may carry "
                                + WorkingNumber.of(allowed.allowedA()) + " A here.",
                        List.of(
                                new Finding.Figure("currentA", currentA),
                                new Finding.Figure("allowedA", allowed.allowedA())),
                        WireAmpacity.TABLE_BASIS,
                        thicker(size, currentA))));
        Double fuseA = input.fuseA();
        if (fuseA != null) {
            FuseRule.judgeWire(fuseA, allowed.allowedA())
                    .level()
                    .severity()
                    .ifPresent(severity -> findings.add(new Finding(
                            severity,
                            "fuse-too-large",
                            List.of("fuse", "feed"),
                            "The fuse of " + WorkingNumber.of(fuseA) + " A does not protect the feed wire. "
                                    + size.name() + " may carry " + WorkingNumber.of(allowed.allowedA()) + " A here.",
                            List.of(
                                    new Finding.Figure("ratingA", fuseA),
                                    new Finding.Figure("ampacityA", allowed.allowedA())),
                            FuseRule.WIRE_BASIS,
                            FuseRule.smallest(currentA, true)
                                    .filter(r -> r.ratingA() <= allowed.allowedA())
                                    .map(r -> "Fit a fuse of " + WorkingNumber.of(r.ratingA()) + " A.")
                                    .orElseGet(() -> thicker(size, fuseA)))));
        }
    }

    /** The thinnest size of the same standard that carries it, named. */
    private String thicker(ConductorSize size, double currentA) {
        return ConductorSize.list(size.system()).stream()
                .filter(s -> allowed(s).allowedA() >= currentA)
                .findFirst()
                .map(s -> "Fit " + s.name() + ".")
                .orElse("Divide the load over more wires.");
    }

    private WireAmpacity allowed(ConductorSize size) {
        Double insulation = input.wireInsulationC();
        Double ambient = input.ambientC();
        return WireAmpacity.of(
                size.areaMm2(),
                new WireConditions(
                        insulation == null ? WireConditions.USUAL_INSULATION_C : insulation,
                        ambient == null ? WireConditions.usualAmbientC(Place.ENGINE_BAY) : ambient,
                        1));
    }

    private void fuse() {
        Double fuseA = input.fuseA();
        double currentA = lastingA();
        if (fuseA == null) {
            return;
        }
        Verdict verdict = FuseRule.judgeLoad(currentA, fuseA, true);
        verdict.level()
                .severity()
                .ifPresent(severity -> findings.add(new Finding(
                        severity,
                        severity == Severity.NOTE ? "fuse-near-limit" : "fuse-too-small",
                        List.of("fuse"),
                        "The fuse of " + WorkingNumber.of(fuseA) + " A carries " + WorkingNumber.of(currentA)
                                + " A for long (before: "
                                + WorkingNumber.of(before.at().allCoilsA()) + " A running). "
                                + (severity == Severity.NOTE ? "It will weaken and eventually blow." : "It will blow."),
                        List.of(new Finding.Figure("currentA", currentA), new Finding.Figure("ratingA", fuseA)),
                        FuseRule.LOAD_BASIS,
                        FuseRule.smallest(currentA, true)
                                .map(r -> "Fit a fuse of " + WorkingNumber.of(r.ratingA())
                                        + " A, if the wire behind it carries that.")
                                .orElse("Divide the load."))));
    }

    private void fusibleLink(ConductorSize size, @Nullable ConductorSize behind) {
        double currentA = lastingA();
        double allowedA = allowed(size).allowedA();
        WireLoadRule.judge(currentA, allowedA)
                .level()
                .severity()
                .ifPresent(severity -> findings.add(new Finding(
                        severity,
                        "fusible-link-overloaded",
                        List.of("fusible-link"),
                        "The fusible link of " + size.name() + " carries " + WorkingNumber.of(currentA)
                                + " A for long; as a wire it may carry " + WorkingNumber.of(allowedA) + " A.",
                        List.of(new Finding.Figure("currentA", currentA), new Finding.Figure("allowedA", allowedA)),
                        WireAmpacity.TABLE_BASIS,
                        "A thicker feed wire with the link that belongs to it.")));
        if (behind != null && size.areaMm2() > linkAreaMm2(behind) * 1.01) {
            findings.add(new Finding(
                    Severity.WARNING,
                    "fusible-link-too-thick",
                    List.of("fusible-link", "feed"),
                    "The fusible link of " + size.name() + " does not protect a feed wire of " + behind.name()
                            + ": it should be four gauge numbers thinner.",
                    List.of(
                            new Finding.Figure("linkAreaMm2", size.areaMm2()),
                            new Finding.Figure("wireAreaMm2", behind.areaMm2())),
                    Basis.commonPractice("fusible link four gauge numbers smaller than the wire it protects"),
                    LinkRating.find(behind, 20)
                            .map(l -> "A link of " + l.size() + ".")
                            .orElse("A fuse: the tables have no wire so thin.")));
        }
    }

    /** Area of the link that belongs to a wire, 0 where the tables have none. */
    private static double linkAreaMm2(ConductorSize wire) {
        return LinkRating.find(wire, 20)
                .map(link -> wire.areaMm2() * link.areaRatio())
                .orElse(0.0);
    }
}
