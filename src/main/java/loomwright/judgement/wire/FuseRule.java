package loomwright.judgement.wire;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import loomwright.answer.Basis;
import loomwright.circuit.Fuse;
import loomwright.conductor.FuseCurve;
import loomwright.judgement.Level;
import loomwright.judgement.Ratio;
import loomwright.judgement.Verdict;
import loomwright.message.MessageCode;

/** A fuse against its load and against the wire behind it. */
public final class FuseRule {
    /** A fuse is chosen so that it carries at most this share of its rating continuously. */
    public static final double CHOSEN_SHARE = 0.75;
    /** A fuse that is fitted may carry this share continuously. */
    public static final double FITTED_SHARE = 0.8;
    /** The usual choice: a fuse of at most this share of the wire's ampacity. Makes no finding. */
    public static final double USUAL_SHARE = 0.6;
    /** Rating over ampacity above which it is a danger. */
    public static final double DANGER_RATIO = 1.5;
    /** Multiple of its rating at which a fuse may take half an hour. */
    public static final double OVERLOAD_MULTIPLE = 1.35;
    /** Above this conductor temperature at {@link #OVERLOAD_MULTIPLE} a load that can overload by itself is a warning. */
    public static final double OVERLOAD_MOST_C = 160;

    public static final Basis LOAD_BASIS = Basis.verified(
            "continuous load at most 0.75 of a fuse to be chosen, 0.80 of one that is fitted",
            "fuse maker's guide: 75 % at 25 °C; a van maker uses 70 % (80 % is common practice)");
    public static final Basis WIRE_BASIS = Basis.verified(
            "fuse rating at most the ampacity of the thinnest wire behind it; above 1.1 of it a warning, above 1.5 a danger",
            "33 CFR 183.455(c)(1) allows 150 % of the table below 50 V; IEC 60364-4-43 433.1 asks for rating <= ampacity");
    public static final Basis USUAL_BASIS = Basis.verified(
            "usual choice: fuse of 0.6 of the ampacity",
            "a van maker's body builder manual: 0.55 to 0.66 in 14 rows at 105 °C and 40 °C");
    public static final Basis SERIES_BASIS = Basis.verified(
            "standard ratings: blade 1 to 40 A, maxi 50 to 100 A, bolt-down 125 to 500 A",
            "ISO 8820-3 and 8820-4 as quoted in trade tables (bolt-down: from memory)");

    private static final double HOT_PER_K = 0.002;
    private static final double HOT_FROM_C = 25;
    private static final List<Double> BLADE =
            List.of(1.0, 2.0, 3.0, 4.0, 5.0, 7.5, 10.0, 15.0, 20.0, 25.0, 30.0, 35.0, 40.0);
    private static final List<Double> MAXI = List.of(50.0, 60.0, 70.0, 80.0, 100.0);
    private static final List<Double> BOLT_DOWN =
            List.of(125.0, 150.0, 175.0, 200.0, 225.0, 250.0, 300.0, 350.0, 400.0, 500.0);

    private FuseRule() {}

    /** The form in which a rating is made. */
    public enum Kind implements MessageCode {
        BLADE,
        MAXI,
        BOLT_DOWN
    }

    /** A standard rating. */
    public record Rating(double ratingA, Kind kind) {}

    /** The standard ratings, rising. */
    public static List<Rating> series() {
        return Stream.of(
                        BLADE.stream().map(a -> new Rating(a, Kind.BLADE)),
                        MAXI.stream().map(a -> new Rating(a, Kind.MAXI)),
                        BOLT_DOWN.stream().map(a -> new Rating(a, Kind.BOLT_DOWN)))
                .flatMap(ratings -> ratings)
                .toList();
    }

    /**
     * The smallest standard rating for a load.
     *
     * @param loadA current
     * @param continuous whether it flows for longer than three time constants of its wire; else the rating need only reach
     *     the load
     * @return empty if no standard fuse carries it
     */
    public static Optional<Rating> smallest(double loadA, boolean continuous) {
        double share = continuous ? CHOSEN_SHARE : 1;
        return series().stream()
                .filter(r -> loadA <= share * r.ratingA() * ROUNDING)
                .findFirst();
    }

    /** The largest standard rating that a wire allows without a finding; empty if none is so small. */
    public static Optional<Rating> largest(double ampacityA) {
        return series().stream()
                .filter(r -> r.ratingA() <= ampacityA * ROUNDING)
                .reduce((smaller, larger) -> larger);
    }

    /**
     * The time limits by which a fuse is judged. No limits are known of ceramic fuses and self-resetting breakers: those of blade fuses
     * are taken (common practice, no source).
     */
    public static FuseCurve curve(Fuse fuse) {
        return switch (fuse.construction()) {
            case GLASS -> FuseCurve.GLASS;
            case BOLT_DOWN -> FuseCurve.BOLT_DOWN;
            case BLADE, CERAMIC, SELF_RESETTING -> FuseCurve.BLADE;
        };
    }

    /** From this current a fuse opens at once: within a tenth of a second or little more, a bolt-down one within a second. */
    public static double opensAtOnceA(Fuse fuse) {
        return curve(fuse).largestMultiple() * fuse.continuousA();
    }

    /** From this current a fuse opens within a time, A. */
    public static double opensWithinA(Fuse fuse, double seconds) {
        return curve(fuse).multipleThatOpensWithin(seconds) * fuse.continuousA();
    }

    /** What a figure of arithmetic may be wrong by. */
    private static final double ROUNDING = 1 + 1e-9;

    /** Share of its rating that a fuse in a hot fuse box may carry continuously. */
    public static double hotShare(double boxC) {
        return CHOSEN_SHARE - HOT_PER_K * Math.max(0, boxC - HOT_FROM_C);
    }

    /**
     * A fitted fuse against its load: up to 0.8 of its rating, or all of it if the load is intermittent, it fits; up to the
     * rating it tires; above it blows.
     */
    public static Verdict judgeLoad(double loadA, double ratingA, boolean continuous) {
        double share = loadA / ratingA;
        double limit = continuous ? FITTED_SHARE : 1;
        Level level = share <= limit * ROUNDING ? Level.FITS : share <= ROUNDING ? Level.NOTE : Level.WARNING;
        return new Verdict("fuse-load", level, Ratio.of(share, limit).borderline(), loadA, limit * ratingA, LOAD_BASIS);
    }

    /**
     * A fuse against the thinnest wire behind it.
     *
     * @param ratingA of the fuse
     * @param ampacityA of the wire as it lies, 0 or more
     */
    public static Verdict judgeWire(double ratingA, double ampacityA) {
        Ratio ratio = ampacityA > 0 ? Ratio.of(ratingA, ampacityA * ROUNDING) : new Ratio(Double.POSITIVE_INFINITY);
        return new Verdict(
                "fuse-against-wire", ratio.level(DANGER_RATIO), ratio.borderline(), ratingA, ampacityA, WIRE_BASIS);
    }
}
