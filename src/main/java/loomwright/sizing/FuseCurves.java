package loomwright.sizing;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import loomwright.conductor.FuseCurve;
import loomwright.judgement.Level;
import org.jspecify.annotations.Nullable;

/**
 * The opening time of a fuse against the time a wire bears the same current: for a plot.
 *
 * @param ratingA the rating drawn: the one chosen, else the smallest that carries the load, else the largest
 * @param chosen whether it suits
 * @param size of the wire
 * @param currentA continuous load, if given
 * @param ampacityA what the wire carries continuously
 * @param prospectiveA short-circuit current, if given
 * @param inrush the switch-on current and how long it lasts, if given
 * @param limitC conductor temperature that the wire curves reach
 */
public record FuseCurves(
        double ratingA,
        boolean chosen,
        String size,
        @Nullable Double currentA,
        double ampacityA,
        @Nullable Double prospectiveA,
        @Nullable Point inrush,
        double limitC,
        Curves curves) {
    private static final int POINTS = 120;
    /** From just above the rating, where a fuse begins to have an opening time, to ten times it or the short circuit. */
    private static final double FROM_MULTIPLE = 1.01;

    private static final double TO_MULTIPLE = 10;

    /** A current and a time. */
    public record Point(double currentA, double timeS) {}

    /**
     * The curves of one wire and its fuse.
     *
     * @param input as for {@link FuseChoice#choose}
     * @throws loomwright.answer.RejectedInput with the pointers of the input's properties
     */
    public static FuseCurves of(FuseChoice.Input input) {
        FuseCase job = FuseCase.of(input);
        FuseChoice.Result result = job.solve();
        Double chosen = result.choice().ratingA();
        List<FuseChoice.Rating> ratings = result.ratings();
        double ratingA = chosen != null
                ? chosen
                : ratings.stream()
                        .filter(r -> r.load() == Level.FITS)
                        .findFirst()
                        .orElse(ratings.get(ratings.size() - 1))
                        .ratingA();
        double fromA = FROM_MULTIPLE * ratingA;
        double toA = Math.max(TO_MULTIPLE * ratingA, job.prospectiveA().orElse(0.0));
        return new FuseCurves(
                ratingA,
                chosen != null,
                job.size().name(),
                job.loadA().orElse(null),
                job.ampacity().allowedA(),
                job.prospectiveA().orElse(null),
                job.inrushA().map(a -> new Point(a, job.inrushS())).orElse(null),
                result.wire().limitC(),
                new Curves(
                        longest(ratingA, toA),
                        shortest(ratingA, toA),
                        sampled(fromA, toA, job::adiabaticS),
                        sampled(fromA, toA, job::withLossS)));
    }

    private static List<Point> longest(double ratingA, double toA) {
        List<Point> steps = new ArrayList<>();
        for (double multiple : FuseCurve.BLADE.multiples()) {
            double timeS = FuseCurve.BLADE.longestS(multiple).orElseThrow();
            if (!steps.isEmpty()) {
                steps.add(new Point(
                        multiple * ratingA, steps.get(steps.size() - 1).timeS()));
            }
            steps.add(new Point(multiple * ratingA, timeS));
        }
        double lastA = FuseCurve.BLADE.largestMultiple() * ratingA;
        steps.addAll(sampled(
                lastA, toA, amps -> FuseCurve.BLADE.longestS(amps / ratingA).orElseThrow()));
        return steps;
    }

    private static List<Point> shortest(double ratingA, double toA) {
        List<Point> steps = new ArrayList<>();
        double fromA = FuseCurve.BLADE.heldMultiple() * ratingA;
        for (double multiple : FuseCurve.BLADE.multiples()) {
            double timeS = FuseCurve.BLADE.shortestS(multiple);
            steps.add(new Point(fromA, timeS));
            fromA = multiple * ratingA;
            steps.add(new Point(fromA, timeS));
        }
        double lastA = fromA;
        steps.addAll(sampled(lastA, toA, amps -> FuseCurve.BLADE.shortestS(amps / ratingA)));
        return steps;
    }

    /** Evenly over the logarithm of the current; where the time is not finite there is no point. */
    private static List<Point> sampled(double fromA, double toA, DoubleUnaryOperator timeS) {
        return IntStream.rangeClosed(0, POINTS)
                .mapToDouble(i -> fromA * Math.pow(toA / fromA, (double) i / POINTS))
                .mapToObj(amps -> new Point(amps, timeS.applyAsDouble(amps)))
                .filter(point -> Double.isFinite(point.timeS()) && point.timeS() > 0)
                .toList();
    }

    /**
     * Opening times of the fuse, and times of the wire to its limit, over the current.
     *
     * @param longest the longest the standards let the fuse take, a staircase
     * @param shortest the shortest
     * @param wireAdiabatic time of the wire to its limit, no heat lost
     * @param wireWithLoss the same with heat lost
     */
    public record Curves(
            List<Point> longest, List<Point> shortest, List<Point> wireAdiabatic, List<Point> wireWithLoss) {
        public Curves {
            longest = List.copyOf(longest);
            shortest = List.copyOf(shortest);
            wireAdiabatic = List.copyOf(wireAdiabatic);
            wireWithLoss = List.copyOf(wireWithLoss);
        }
    }
}
