package loomwright.review.fuse;

import static loomwright.message.Arg.arg;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.DoubleFunction;
import loomwright.answer.Finding;
import loomwright.answer.Severity;
import loomwright.circuit.Fuse;
import loomwright.circuit.TerminalRef;
import loomwright.circuit.Wire;
import loomwright.conductor.ConductorSize;
import loomwright.judgement.Verdict;
import loomwright.judgement.wire.FuseRule;
import loomwright.judgement.wire.WireAmpacity;
import loomwright.message.Arg;
import loomwright.message.Argument.Thing;
import loomwright.message.Message;
import loomwright.operation.Branch;
import loomwright.review.context.Check;
import loomwright.review.context.FindingCode;
import loomwright.review.context.FindingWording;
import loomwright.review.context.PeakCurrents;
import loomwright.review.context.PeakCurrents.Peak;
import loomwright.review.context.Protection.Region;
import loomwright.review.context.ReviewContext;
import loomwright.review.context.ReviewText;
import loomwright.review.context.WireRating;
import loomwright.sizing.FuseChoice;
import loomwright.sizing.FuseChoice.Overload;
import loomwright.sizing.FuseChoice.Protection;
import loomwright.sizing.Laying;
import loomwright.sizing.LoadRating;

/**
 * Each fuse against the wires behind it: its rating over what each may carry ({@link FuseRule#judgeWire}), and whether it
 * opens in a short to earth at the far end of the last wire of each size before that wire is too hot.
 */
public final class FuseProtection implements Check {
    /** Below this nothing feeds the short. */
    private static final double LEAST_SHORT_A = 1e-3;
    /** More than any battery gives, and the most that a fuse is judged for. */
    private static final double MOST_SHORT_A = 1e5;

    /** One wire that is not protected; the short circuit that harms it, if it is that. */
    private record Failure(
            Wire wire, WireRating rating, Severity severity, Verdict verdict, Optional<Overload> inShort) {}

    /**
     * What hangs behind a fuse.
     *
     * @param shorted the last wire of each size, which is judged in a short too
     */
    private record Fused(Fuse fuse, Region region, Set<Wire> shorted) {
        static Fused of(Fuse fuse, Region region) {
            Map<String, Wire> last = new LinkedHashMap<>();
            region.wires()
                    .forEach(wire -> last.put(String.valueOf(wire.conductor().size()), wire));
            return new Fused(fuse, region, new LinkedHashSet<>(last.values()));
        }

        /** The end of a wire that was reached later, so further from the fuse. */
        TerminalRef farEnd(Wire wire) {
            for (String terminal : region.terminals()) {
                if (terminal.equals(wire.from().toString())) {
                    return wire.to();
                } else if (terminal.equals(wire.to().toString())) {
                    return wire.from();
                }
            }
            throw new IllegalArgumentException(wire.id() + " is not of this region");
        }

        List<TerminalRef> shortedEnds() {
            return shorted.stream().map(this::farEnd).toList();
        }
    }

    @Override
    public List<Finding> check(ReviewContext context) {
        List<Fused> all = new ArrayList<>();
        for (Region region : context.protection().fused()) {
            if (region.protector().orElse(null) instanceof Fuse fuse) {
                all.add(Fused.of(fuse, region));
            }
        }
        ShortCircuits shorts = new ShortCircuits(
                context,
                all.stream().flatMap(f -> f.shortedEnds().stream()).distinct().toList());
        List<Finding> findings = new ArrayList<>();
        for (Fused fused : all) {
            List<Failure> failures = failures(context, shorts, fused);
            if (!failures.isEmpty()) {
                findings.add(finding(context, fused.fuse(), failures));
            }
        }
        return findings;
    }

    private static List<Failure> failures(ReviewContext context, ShortCircuits shorts, Fused fused) {
        List<Failure> failures = new ArrayList<>();
        for (Wire wire : fused.region().wires()) {
            context.findRating(wire)
                    .filter(rating -> !rating.tooHot())
                    .flatMap(rating -> judge(context, shorts, fused, wire, rating))
                    .ifPresent(failures::add);
        }
        failures.sort(Comparator.comparing(Failure::severity)
                .thenComparingDouble(f -> f.rating().size().areaMm2()));
        return failures;
    }

    private static Optional<Failure> judge(
            ReviewContext context, ShortCircuits shorts, Fused fused, Wire wire, WireRating rating) {
        Verdict verdict = FuseRule.judgeWire(fused.fuse().continuousA(), rating.allowedA());
        Optional<Overload> harmed = fused.shorted().contains(wire)
                ? inShort(shorts, fused, wire, input(context, fused.fuse(), wire, rating))
                : Optional.empty();
        if (harmed.isPresent()) {
            return Optional.of(new Failure(wire, rating, Severity.DANGER, verdict, harmed));
        }
        return verdict.level()
                .severity()
                .map(severity -> new Failure(wire, rating, severity, verdict, Optional.empty()));
    }

    /** What a short at the far end of a wire does to it, in the first step in which it gets too hot. */
    private static Optional<Overload> inShort(ShortCircuits shorts, Fused fused, Wire wire, FuseChoice.Input input) {
        DoubleFunction<Overload> overloads = FuseChoice.overloads(fused.fuse().continuousA(), input);
        DoubleFunction<Overload> inShort = currentA -> overloads.apply(Math.min(currentA, MOST_SHORT_A));
        OptionalDouble harmfulA = shorts.findHarmfulA(
                wire,
                fused.farEnd(wire),
                currentA ->
                        currentA >= LEAST_SHORT_A && inShort.apply(currentA).protection() == Protection.NOT_PROTECTED);
        return harmfulA.isPresent() ? Optional.of(inShort.apply(harmfulA.getAsDouble())) : Optional.empty();
    }

    private static FuseChoice.Input input(ReviewContext context, Fuse fuse, Wire wire, WireRating rating) {
        double loadA = context.lasting()
                .find(Branch.Owner.WIRE, wire.id())
                .map(Peak::currentA)
                .orElse(0.0);
        return new FuseChoice.Input(
                LoadRating.ofA(Math.max(loadA, 1e-6)),
                null,
                fuse.continuousA(),
                FuseChoice.SwitchOn.UNKNOWN,
                wire.conductor().size(),
                new Laying(
                        rating.insulationC(),
                        rating.ambientC(),
                        null,
                        rating.ampacity().conditions().bundleCount(),
                        true),
                null,
                null,
                null);
    }

    private static Finding finding(ReviewContext context, Fuse fuse, List<Failure> failures) {
        Failure worst = failures.get(0);
        double allowedA = worst.rating().allowedA();
        List<String> ids = new ArrayList<>(List.of(fuse.id()));
        failures.forEach(f -> ids.add(f.wire().id()));
        List<Thing> others =
                failures.stream().skip(1).map(f -> f.wire().thing()).toList();
        List<Arg> arguments = new ArrayList<>(List.of(
                arg("fuse", fuse.thing()),
                arg("ratingA", fuse.continuousA()),
                arg("ampacityA", allowedA),
                FindingWording.limitRatio(fuse.continuousA(), allowedA),
                arg("wire", worst.wire().thing()),
                arg("size", worst.rating().size().name()),
                arg("insulation", worst.rating().assumed() ? "assumed" : "known"),
                Arg.messages(
                        "inShort",
                        worst.inShort().stream()
                                .map(o -> ReviewText.BURNS_IN_SHORT.with(arg("currentA", o.currentA())))
                                .toList()),
                Arg.things("others", others)));
        double overloadC = worst.rating().ampacity().temperatureC(FuseRule.OVERLOAD_MULTIPLE * fuse.continuousA());
        if (Double.isFinite(overloadC)) {
            arguments.add(arg("overloadTemperatureC", overloadC));
        }
        worst.inShort().ifPresent(o -> arguments.add(arg("overloadA", o.currentA())));
        return Finding.of(
                        worst.severity(),
                        FindingCode.FUSE_TOO_LARGE.with(arguments.toArray(Arg[]::new)),
                        FuseRule.WIRE_BASIS)
                .about(ids)
                .remedy(remedy(context, fuse, worst))
                .restingOn(
                        worst.inShort().isPresent()
                                ? List.of()
                                : WireRating.dependsOn(
                                        worst.wire(),
                                        context.plan().system(),
                                        other -> FuseRule.judgeWire(fuse.continuousA(), other.allowedA())));
    }

    private static double currentA(PeakCurrents peaks, Fuse fuse) {
        return peaks.find(Branch.Owner.PART, fuse.id()).map(Peak::currentA).orElse(0.0);
    }

    /** Both together, named: the rating that carries the load and cranking, and the thinnest wire that rating protects. */
    private static Message remedy(ReviewContext context, Fuse fuse, Failure worst) {
        Optional<FuseRule.Rating> least = FuseRule.smallest(
                Math.max(currentA(context.lasting(), fuse) / FuseRule.CHOSEN_SHARE, currentA(context.cranking(), fuse)),
                false);
        if (least.isEmpty()) {
            return ReviewText.SPLIT_LOAD_OVER_WIRES_AND_FUSES.with();
        }
        double neededA = least.get().ratingA();
        Arg ratingA = arg("ratingA", neededA);
        if (worst.inShort().isEmpty() && neededA <= worst.rating().allowedA() && neededA < fuse.continuousA()) {
            return FuseRule.largest(worst.rating().allowedA())
                    .filter(r -> r.ratingA() > neededA)
                    .map(r -> ReviewText.FIT_FUSE_UP_TO.with(ratingA, arg("largestA", r.ratingA())))
                    .orElseGet(() -> ReviewText.FIT_FUSE.with(ratingA));
        }
        return ConductorSize.list(worst.rating().size().system()).stream()
                .filter(s -> s.areaMm2() > worst.rating().size().areaMm2())
                .filter(s ->
                        WireAmpacity.of(s.areaMm2(), worst.rating().ampacity().conditions())
                                        .allowedA()
                                >= neededA)
                .findFirst()
                .map(s -> {
                    Arg size = arg("size", s.name());
                    Arg wire = arg("wire", worst.wire().thing());
                    return neededA == fuse.continuousA()
                            ? ReviewText.FIT_WIRE_BEHIND_FUSE.with(size, wire)
                            : ReviewText.FIT_FUSE_AND_WIRE.with(ratingA, size, wire);
                })
                .orElseGet(ReviewText.SPLIT_LOAD_OVER_WIRES_AND_FUSES::with);
    }
}
