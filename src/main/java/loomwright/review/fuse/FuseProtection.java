package loomwright.review.fuse;

import static loomwright.review.context.FindingWording.figure;
import static loomwright.review.context.FindingWording.number;

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
import loomwright.answer.Basis;
import loomwright.answer.Finding;
import loomwright.answer.Severity;
import loomwright.circuit.Fuse;
import loomwright.circuit.TerminalRef;
import loomwright.circuit.Wire;
import loomwright.conductor.FuseChoice;
import loomwright.conductor.FuseChoice.Overload;
import loomwright.conductor.FuseChoice.Protection;
import loomwright.operation.Branch;
import loomwright.review.context.Check;
import loomwright.review.context.FindingCode;
import loomwright.review.context.FindingWording;
import loomwright.review.context.PeakCurrents.Peak;
import loomwright.review.context.Protection.Region;
import loomwright.review.context.ReviewContext;
import loomwright.review.context.WireRating;

/**
 * Whether each fuse opens before the wires behind it reach the limit of their insulation: at the multiples of its rating
 * that the standards name, and in a short to earth at the far end of the last wire of each size.
 *
 * <p>A fuse that lets the wire grow too hot in a short or at twice its rating is a danger; one above the ampacity of the
 * wire a warning; one that only lets an overload of 1.35 to 1.6 times its rating go on for too long a note (common
 * practice, no source: such overloads are rare, and a fuse not above the ampacity is the rule of the trade).
 */
public final class FuseProtection implements Check {
    private static final double SHORT_MULTIPLE = 2;
    /** Below this nothing feeds the short. */
    private static final double LEAST_SHORT_A = 1e-3;
    /** More than any battery gives, and the most that a fuse is judged for. */
    private static final double MOST_SHORT_A = 1e5;

    private static final Basis LIMITS = Basis.verified(
            "the fuse must open, at 1.35, 1.6, 2, 3.5 and 6 times its rating and in a short, before the wire is too hot",
            "opening time limits of ISO 8820-3 and SAE J1284, see the table blade-fuse-limits");

    /** One wire that is not protected, and by how much. */
    private record Failure(Wire wire, WireRating rating, Severity severity, Overload worst) {}

    /**
     * What hangs behind a fuse.
     *
     * @param shorted the last wire of each size, which is judged in a short too
     */
    private record Fused(Fuse fuse, Region region, Set<Wire> shorted) {
        static Fused of(Fuse fuse, Region region) {
            Map<String, Wire> last = new LinkedHashMap<>();
            region.wires().forEach(wire -> last.put(String.valueOf(wire.size()), wire));
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
                    .filter(rating -> rating.ampacity().isPresent())
                    .flatMap(rating -> judge(shorts, fused, wire, rating, input(context, wire, rating)))
                    .ifPresent(failures::add);
        }
        failures.sort(Comparator.comparing(Failure::severity)
                .thenComparingDouble(f -> f.rating().size().areaMm2()));
        return failures;
    }

    private static Optional<Failure> judge(
            ShortCircuits shorts, Fused fused, Wire wire, WireRating rating, FuseChoice.Input input) {
        double ratingA = fused.fuse().ratingA();
        List<Overload> failed = failed(FuseChoice.judge(ratingA, input));
        Optional<Overload> dangerous = failed.stream()
                .filter(o -> o.multiple() >= SHORT_MULTIPLE)
                .findFirst()
                .or(() -> fused.shorted().contains(wire) ? inShort(shorts, fused, wire, input) : Optional.empty());
        if (dangerous.isPresent()) {
            return Optional.of(new Failure(wire, rating, Severity.DANGER, dangerous.get()));
        }
        boolean aboveAmpacity = ratingA > rating.ampacity().orElseThrow().allowedA();
        return failed.stream()
                .findFirst()
                .map(o -> new Failure(wire, rating, aboveAmpacity ? Severity.WARNING : Severity.NOTE, o));
    }

    /** What a short at the far end of a wire does to it, in the first step in which it gets too hot. */
    private static Optional<Overload> inShort(ShortCircuits shorts, Fused fused, Wire wire, FuseChoice.Input input) {
        DoubleFunction<Overload> overloads = FuseChoice.overloads(fused.fuse().ratingA(), input);
        DoubleFunction<Overload> inShort = currentA -> overloads.apply(Math.min(currentA, MOST_SHORT_A));
        OptionalDouble harmfulA = shorts.findHarmfulA(
                wire,
                fused.farEnd(wire),
                currentA ->
                        currentA >= LEAST_SHORT_A && inShort.apply(currentA).protection() == Protection.NOT_PROTECTED);
        return harmfulA.isPresent() ? Optional.of(inShort.apply(harmfulA.getAsDouble())) : Optional.empty();
    }

    private static List<Overload> failed(FuseChoice.Rating rating) {
        return rating.overloads().stream()
                .filter(o -> o.protection() == Protection.NOT_PROTECTED)
                .toList();
    }

    private static FuseChoice.Input input(ReviewContext context, Wire wire, WireRating rating) {
        double loadA = context.lasting()
                .find(Branch.Owner.WIRE, wire.id())
                .map(Peak::currentA)
                .orElse(0.0);
        return new FuseChoice.Input(
                Math.max(loadA, 1e-6),
                null,
                null,
                wire.size(),
                rating.insulationC(),
                rating.ambientC(),
                null,
                null,
                null,
                null,
                null);
    }

    private static Finding finding(ReviewContext context, Fuse fuse, List<Failure> failures) {
        Failure worst = failures.get(0);
        double allowedA = worst.rating().ampacity().orElseThrow().allowedA();
        Overload overload = worst.worst();
        Double opensS = overload.fuseLongestS();
        List<String> ids = new ArrayList<>(List.of(fuse.id()));
        failures.forEach(f -> ids.add(f.wire().id()));
        String others = failures.size() == 1
                ? ""
                : " The same, more or less, holds for " + String.join(", ", ids.subList(2, ids.size())) + ".";
        return FindingCode.FUSE_TOO_LARGE.finding(
                worst.severity(),
                ids,
                fuse.displayName() + " (" + number(fuse.ratingA()) + " A) does not protect wire "
                        + worst.wire().id() + " (" + worst.rating().size().name() + ", ampacity " + number(allowedA)
                        + " A by "
                        + worst.rating().ampacity().orElseThrow().table().label() + "): at "
                        + number(overload.currentA()) + " A, " + number(overload.multiple())
                        + " times its rating, it "
                        + (opensS == null ? "need not open at all" : "may take " + number(opensS) + " s")
                        + ", and the wire then passes the "
                        + number(worst.rating().insulationC())
                        + " C of its insulation" + (worst.rating().assumed() ? " (assumed)" : "") + "." + others,
                FindingWording.with(
                        FindingWording.against("ratingA", fuse.ratingA(), "ampacityA", allowedA),
                        figure("overloadA", overload.currentA())),
                LIMITS,
                remedy(context, worst));
    }

    private static String remedy(ReviewContext context, Failure worst) {
        return FuseChoice.judgeStandard(input(context, worst.wire(), worst.rating())).stream()
                .filter(r -> r.carriesLoad() && r.protectsWire() && !Boolean.FALSE.equals(r.withinAmpacity()))
                .reduce((smaller, larger) -> larger)
                .map(r -> "Fit a fuse of at most " + number(r.ratingA())
                        + " A, if that carries all its loads, or thicker wire.")
                .orElse("Take thicker wire, or give this wire a smaller fuse of its own.");
    }
}
