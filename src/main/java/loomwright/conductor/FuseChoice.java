package loomwright.conductor;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleFunction;
import loomwright.answer.Answer;
import loomwright.answer.Basis;
import loomwright.answer.Caution;
import loomwright.message.Unconverted;
import org.jspecify.annotations.Nullable;

/** The fuse that carries the load and protects the wire. */
public final class FuseChoice {
    /**
     * Continuous load at most this share of the rating, for a fuse to be chosen: common practice (75 to 80 %, no source),
     * the cautious end.
     */
    public static final double LOAD_SHARE = 0.75;

    /** The same in words. */
    public static final String LOAD_PERCENT = percent(LOAD_SHARE);

    /** The other end of the same practice, for a fuse that is fitted: one that many would have chosen is not faulted. */
    public static final double FITTED_SHARE = 0.8;

    /** The same in words. */
    public static final String FITTED_PERCENT = percent(FITTED_SHARE);

    public static final Basis LOAD_BASIS = practice(LOAD_PERCENT + " for a fuse to be chosen");
    public static final Basis FITTED_BASIS = practice(FITTED_PERCENT + " for a fuse that is fitted");

    /** Breaking capacity of blade fuses: ISO 8820-3:2015, abstract. */
    public static final double BREAKING_CAPACITY_A = 1000;

    private FuseChoice() {}

    private static String percent(double share) {
        return FigureText.text(100 * share) + " %";
    }

    private static Basis practice(String use) {
        return Basis.commonPractice("continuous load at most " + FigureText.text(100 * LOAD_SHARE) + " to "
                + FITTED_PERCENT + " of the rating; " + use);
    }

    /**
     * What is asked. Required: {@code currentA} and {@code size}.
     *
     * @param currentA continuous load
     * @param inrushA current at switch-on; with {@code inrushS}
     * @param inrushS how long it lasts
     * @param size the thinnest wire behind the fuse
     * @param insulationC temperature rating of its insulation; default 80, PVC
     * @param ambientC default 30
     * @param limitC conductor temperature that must not be passed; default the insulation rating
     * @param prospectiveA short-circuit current at the far end of the wire
     * @param timeConstantS thermal time constant of the wire; default that of the bare conductor
     * @param ampacityTable default the first that lists the wire, 33 CFR 183.425 before AC 43.13-1B
     * @param circuit STARTER: battery and starter cables are recognised as usually unfused
     */
    public record Input(
            @Nullable Double currentA,
            @Nullable Double inrushA,
            @Nullable Double inrushS,
            @Nullable String size,
            @Nullable Double insulationC,
            @Nullable Double ambientC,
            @Nullable Double limitC,
            @Nullable Double prospectiveA,
            @Nullable Double timeConstantS,
            @Nullable AmpacityTable ampacityTable,
            @Nullable CircuitKind circuit) {}

    /** What the inrush does to a fuse. */
    public enum Inrush {
        NOT_ASKED,
        /** Shorter than the shortest opening time the standards allow. */
        HOLDS,
        /** Between the shortest and the longest opening time: one fuse may hold and the next blow. */
        MAY_BLOW,
        BLOWS
    }

    /** Whether the wire outlasts the fuse at one current. */
    public enum Protection {
        /** The current is within what the wire carries for good. */
        NEVER_TOO_HOT,
        /** The fuse is faster than the wire would be even without losing heat. */
        BY_ADIABATIC_LIMIT,
        /** The fuse is faster than the wire that loses heat with its time constant. */
        BY_TIME_CONSTANT,
        NOT_PROTECTED
    }

    /**
     * Fuse and wire at one current.
     *
     * @param multiple current over rating
     * @param fuseLongestS longest opening time of the standards; absent where the fuse need not open
     * @param wireAdiabaticS time of the wire to its limit, no heat lost
     * @param wireTimeS the same with heat lost, at least as long; absent if it is never reached or no ampacity is known
     */
    public record Overload(
            double multiple,
            double currentA,
            @Nullable Double fuseLongestS,
            double wireAdiabaticS,
            @Nullable Double wireTimeS,
            Protection protection) {}

    /**
     * One standard rating judged.
     *
     * @param carriesLoad the continuous load is at most {@link #LOAD_SHARE} of it
     * @param withinAmpacity it is not above the ampacity of the wire; absent where no table lists the wire
     * @param inrush what the inrush does to it
     * @param overloads at each multiple the standards name, and last at the prospective current if given
     * @param protectsWire true if the wire is protected in all of them
     */
    public record Rating(
            double ratingA,
            String colour,
            boolean carriesLoad,
            @Nullable Boolean withinAmpacity,
            Inrush inrush,
            List<Overload> overloads,
            boolean protectsWire) {
        public Rating {
            overloads = List.copyOf(overloads);
        }

        boolean suits() {
            return carriesLoad && !Boolean.FALSE.equals(withinAmpacity) && inrush != Inrush.BLOWS && protectsWire;
        }
    }

    /**
     * The choice.
     *
     * @param ratingA the smallest standard rating that suits, one that surely bears the inrush before one that may blow;
     *     absent if none does
     * @param reason why, or what stands in the way
     * @param ratings every standard rating judged
     * @param ampacity what the wire carries; absent where no table lists it
     * @param startC conductor temperature under the load, from which a short circuit starts
     * @param limitC conductor temperature that must not be passed
     * @param timeConstantS absent without an ampacity
     * @param fusibleLink absent if the tables have no wire so thin
     * @param usuallyUnfused true for battery and starter cables
     * @param notes what to know beside the figures
     */
    public record Result(
            @Nullable Double ratingA,
            String reason,
            List<Rating> ratings,
            @Nullable Ampacity ampacity,
            double startC,
            double limitC,
            @Nullable Double timeConstantS,
            @Nullable LinkRating fusibleLink,
            boolean usuallyUnfused,
            List<String> notes) {
        public Result {
            ratings = List.copyOf(ratings);
            notes = List.copyOf(notes);
        }
    }

    /**
     * Chooses a blade fuse.
     *
     * <p>Load at most 0.75 of the rating; rating at most the ampacity of the wire; and at each multiple of the rating that
     * ISO 8820-3 and SAE J1284 name, and at the prospective current, the longest opening time at most the time of the wire
     * to its limit: the longer of {@link AdiabaticLimit#timeS} and of the first-order heat balance with the time constant,
     * both of which err short. A steady current I warms it by (TR - Ttable) (I / Imax)^2,
     * Ttable the ambient that Imax holds for; from the temperature under the load the fault starts.
     *
     * @param input see there
     * @throws loomwright.answer.RejectedInput with the pointers of the input's properties
     */
    public static Answer<Result> choose(Input input) {
        FuseCase job = FuseCase.of(input);
        Result result = job.solve();
        return new Answer<>(result, Unconverted.lines(working(job, result)), basis(result), cautions(result));
    }

    /**
     * Judges one fuse of any rating as {@link #choose} judges the standard ones; of those it is the answer to "does this
     * fuse protect that wire".
     *
     * @param ratingA rating of the fuse, above 0
     * @param input see there
     * @throws loomwright.answer.RejectedInput with the pointers of the input's properties
     */
    public static Rating judge(double ratingA, Input input) {
        return FuseCase.of(input).judge(ratingA, "");
    }

    /**
     * What becomes of the wire behind one fuse of any rating at one current or another.
     *
     * @param ratingA rating of the fuse, above 0
     * @param input see there
     * @return by current, A, above 0
     * @throws loomwright.answer.RejectedInput with the pointers of the input's properties
     */
    public static DoubleFunction<Overload> overloads(double ratingA, Input input) {
        FuseCase job = FuseCase.of(input);
        return amps -> job.overload(amps / ratingA, amps);
    }

    /**
     * Judges every standard rating, for one who does not ask which to choose.
     *
     * @param input see there
     * @throws loomwright.answer.RejectedInput with the pointers of the input's properties
     */
    public static List<Rating> judgeStandard(Input input) {
        return FuseCase.of(input).judgeStandard();
    }

    private static List<String> working(FuseCase job, Result result) {
        List<String> lines = new ArrayList<>();
        lines.add("rating at least " + FigureText.text(job.currentA()) + " A / " + FigureText.text(LOAD_SHARE) + " = "
                + FigureText.text(job.currentA() / LOAD_SHARE) + " A");
        Ampacity ampacity = result.ampacity();
        if (ampacity != null) {
            lines.add("rating at most the ampacity: " + ampacity.working());
        }
        lines.add(job.size().name() + " starts at " + FigureText.text(result.startC()) + " C and must not pass "
                + FigureText.text(result.limitC()) + " C");
        for (Rating rating : result.ratings()) {
            if (rating.carriesLoad()) {
                lines.add(FigureText.text(rating.ratingA()) + " A: " + (rating.suits() ? "suits" : obstacle(rating))
                        + (rating.inrush() == Inrush.NOT_ASKED
                                ? ""
                                : ", switch-on " + FigureText.word(rating.inrush())));
            }
            if (result.ratingA() != null && rating.ratingA() == result.ratingA()) {
                rating.overloads().forEach(o -> lines.add(line(o)));
            }
        }
        lines.add(result.reason());
        return lines;
    }

    private static String line(Overload overload) {
        Double fuse = overload.fuseLongestS();
        Double wire = overload.wireTimeS();
        return "  " + FigureText.text(overload.multiple()) + " x = " + FigureText.text(overload.currentA())
                + " A: fuse "
                + (fuse == null ? "need not open" : "opens within " + FigureText.text(fuse) + " s")
                + ", wire reaches its limit in "
                + FigureText.text(overload.wireAdiabaticS()) + " s without heat loss"
                + (wire == null ? "" : ", at least " + FigureText.text(wire) + " s with it") + ": "
                + FigureText.word(overload.protection());
    }

    /** The first thing against a rating. */
    static String obstacle(Rating rating) {
        if (!rating.carriesLoad()) {
            return "too small for the load";
        }
        if (Boolean.FALSE.equals(rating.withinAmpacity())) {
            return "above the ampacity of the wire";
        }
        if (rating.inrush() == Inrush.BLOWS) {
            return "blows at switch-on";
        }
        return rating.overloads().stream()
                .filter(o -> o.protection() == Protection.NOT_PROTECTED)
                .map(o -> "does not protect the wire at " + FigureText.text(o.currentA()) + " A")
                .findFirst()
                .orElse("suits");
    }

    private static List<Basis> basis(Result result) {
        List<Basis> basis = new ArrayList<>(FuseCurve.basis());
        basis.add(ReferenceTables.get("blade-fuse-ratings").basis("standard ratings and colours"));
        basis.add(LOAD_BASIS);
        basis.add(Basis.fromMemory("adiabatic heating, K = 226, beta = 234.5 C", "IEC 60949"));
        Ampacity ampacity = result.ampacity();
        if (ampacity != null) {
            basis.addAll(ampacity.basis());
            basis.add(Basis.computed(
                    "time constant of the bare conductor from its ampacity; temperature rise by the square of the current",
                    "first-order heat balance"));
        }
        if (result.fusibleLink() != null) {
            basis.addAll(LinkRating.basis());
        }
        return basis.stream().distinct().toList();
    }

    private static List<Caution> cautions(Result result) {
        return result.usuallyUnfused()
                ? List.of(Caution.DISCONNECT_BATTERY, Caution.UNFUSED_SUPPLY, Caution.HIGH_CURRENT, Caution.LOCAL_CODES)
                : List.of(Caution.DISCONNECT_BATTERY, Caution.LOCAL_CODES);
    }
}
