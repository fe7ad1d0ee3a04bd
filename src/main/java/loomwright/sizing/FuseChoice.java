package loomwright.sizing;

import static loomwright.message.Arg.arg;
import static loomwright.message.Arg.quantities;

import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleFunction;
import loomwright.answer.Answer;
import loomwright.answer.Basis;
import loomwright.answer.Caution;
import loomwright.answer.Finding;
import loomwright.conductor.FuseCurve;
import loomwright.conductor.LinkRating;
import loomwright.conductor.ReferenceTables;
import loomwright.judgement.Dependence;
import loomwright.judgement.DropRule;
import loomwright.judgement.Level;
import loomwright.judgement.wire.FuseRule;
import loomwright.message.Message;
import loomwright.message.MessageCode;
import org.jspecify.annotations.Nullable;

/** The fuse that carries the load and protects the wire; or the largest that a wire allows. */
public final class FuseChoice {
    /** Breaking capacity of blade fuses: ISO 8820-3:2015, abstract. */
    static final double BREAKING_CAPACITY_A = 1000;

    private FuseChoice() {}

    /**
     * What is asked. Required: {@code size}.
     *
     * @param continuous whether the load flows for longer than minutes; default true
     * @param ratingA a fuse that is fitted, to be judged
     * @param size the thinnest wire behind the fuse
     * @param prospectiveA short-circuit current at the far end of the wire
     * @param supplyV voltage at the source; default 12
     * @param circuit STARTER: battery and starter cables are recognised as usually unfused; a lamp circuit: watts are
     *     those of filaments
     */
    public record Input(
            @JsonUnwrapped LoadRating load,
            @Nullable Boolean continuous,
            @Nullable Double ratingA,
            @JsonUnwrapped SwitchOn surge,
            @Nullable String size,
            @JsonUnwrapped Laying laying,
            @Nullable Double prospectiveA,
            @Nullable Double supplyV,
            @Nullable DropRule circuit) {}

    /**
     * The current at switch-on.
     *
     * @param inrushA current at switch-on; with {@code inrushS}
     * @param inrushS how long it lasts
     */
    public record SwitchOn(
            @Nullable Double inrushA, @Nullable Double inrushS) {
        public static final SwitchOn UNKNOWN = new SwitchOn(null, null);
    }

    /** What the inrush does to a fuse. */
    public enum Inrush implements MessageCode {
        NOT_ASKED,
        /** Shorter than the shortest opening time the standards allow. */
        HOLDS,
        /** Between the shortest and the longest opening time: one fuse may hold and the next blow. */
        MAY_BLOW,
        BLOWS
    }

    /** Whether the wire outlasts the fuse at one current. */
    public enum Protection implements MessageCode {
        /** The current never warms the wire to the limit. */
        NEVER_TOO_HOT,
        /** The fuse is faster than the wire would be even without losing heat. */
        BY_ADIABATIC_LIMIT,
        /** The fuse is faster than the wire that loses heat with its time constant. */
        BY_TIME_CONSTANT,
        NOT_PROTECTED
    }

    /**
     * Fuse and wire at one current. For information: a verdict depends on rating and ampacity.
     *
     * @param multiple current over rating
     * @param fuseLongestS longest opening time of the standards; absent where the fuse need not open
     * @param wireAdiabaticS time of the wire to the limit of a short circuit, no heat lost
     * @param wireTimeS the same with heat lost, at least as long; absent if it is never reached
     */
    public record Overload(
            double multiple,
            double currentA,
            @Nullable Double fuseLongestS,
            double wireAdiabaticS,
            @Nullable Double wireTimeS,
            Protection protection) {}

    /**
     * One rating judged.
     *
     * @param kind in which form it is made
     * @param colour of the body of a blade fuse; empty for others
     * @param load fits if the load is at most 0.75 of it; absent without a load
     * @param wire the rating against what the wire may carry
     * @param borderline whether the rating lies within a tenth of that
     * @param ofAmpacity rating over what the wire may carry
     * @param overloadTemperatureC of the wire at 1.35 times the rating, which a fuse may stand for half an hour; absent
     *     where it has no end
     * @param suits whether it may be chosen
     */
    public record Rating(
            double ratingA,
            FuseRule.Kind kind,
            String colour,
            @Nullable Level load,
            Level wire,
            boolean borderline,
            double ofAmpacity,
            @Nullable Double overloadTemperatureC,
            Inrush inrush,
            boolean suits) {}

    /**
     * The choice.
     *
     * @param currentA of the load; absent if none was given
     * @param ratings every standard rating judged
     * @param fitted the fuse that is fitted, judged; absent if none was given
     * @param overloads fuse and wire at each multiple the standards name, and last at the prospective current if given:
     *     of the fuse that is fitted, else of the one chosen; empty where there is neither
     * @param fusibleLink absent if the tables have no wire so thin
     * @param usuallyUnfused true for battery and starter cables
     * @param dependsOn what was assumed and would turn the verdict on the chosen or fitted fuse
     */
    public record Result(
            @Nullable Double currentA,
            @JsonUnwrapped ChosenFuse choice,
            List<Rating> ratings,
            @Nullable Rating fitted,
            List<Overload> overloads,
            @JsonUnwrapped WireLimits wire,
            @Nullable LinkRating fusibleLink,
            boolean usuallyUnfused,
            List<Dependence> dependsOn,
            List<Finding> findings) {
        public Result {
            ratings = List.copyOf(ratings);
            overloads = List.copyOf(overloads);
            dependsOn = List.copyOf(dependsOn);
            findings = List.copyOf(findings);
        }

        /** What the chosen fuse does at switch-on; absent without one. */
        @Nullable
        Inrush chosenInrush() {
            return ratings.stream()
                    .filter(rating -> Double.valueOf(rating.ratingA()).equals(choice.ratingA()))
                    .findFirst()
                    .map(Rating::inrush)
                    .orElse(null);
        }
    }

    /**
     * The fuse chosen, and why.
     *
     * @param ratingA the smallest standard rating that suits, without a load the largest that the wire allows; absent if
     *     none does
     * @param kind in which form it is made; absent if none suits
     * @param reason why, or what stands in the way
     * @param largestA the largest standard rating that the wire allows; absent if none is so small
     */
    public record ChosenFuse(
            @Nullable Double ratingA,
            FuseRule.@Nullable Kind kind,
            Message reason,
            @Nullable Double largestA) {}

    /**
     * What the wire bears.
     *
     * @param allowedA what the wire may carry continuously where it lies
     * @param lawA the same by the law of heat, a second opinion
     * @param betterSize the thinnest wire of the same standard whose fuse carries the load; absent where this wire will do
     *     or no load was given
     * @param startC conductor temperature under the load, from which a short circuit starts
     * @param limitC conductor temperature that a short circuit may reach
     * @param timeConstantS of the wire
     */
    public record WireLimits(
            double allowedA,
            double lawA,
            @Nullable String betterSize,
            double startC,
            double limitC,
            double timeConstantS) {}

    /**
     * Chooses a fuse.
     *
     * <p>Load at most 0.75 of the rating; rating at most the ampacity of the wire. No rating between the two is refused
     * because the wire gets warm at 1.35 times it; that temperature is stated. A larger one is taken for the switch-on only
     * where the wire amply allows it.
     *
     * @param input see there
     * @throws loomwright.answer.RejectedInput with the pointers of the input's properties
     */
    public static Answer<Result> choose(Input input) {
        FuseCase job = FuseCase.of(input);
        Result result = job.solve();
        return new Answer<>(result, working(job, result), basis(job, result), job.assumptions(), cautions(result));
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

    private static List<Message> working(FuseCase job, Result result) {
        List<Message> lines = new ArrayList<>();
        Double currentA = result.currentA();
        if (currentA != null) {
            lines.add(SizingText.LEAST_RATING.with(
                    arg("currentA", currentA),
                    arg("shareRatio", FuseRule.CHOSEN_SHARE),
                    arg("leastA", currentA / FuseRule.CHOSEN_SHARE)));
        }
        lines.add(SizingText.MOST_RATING.with(
                arg("size", job.size().name()),
                arg("allowedA", result.wire().allowedA()),
                arg("ambientC", job.surroundings().conditions().ambientC()),
                arg("insulationC", job.surroundings().conditions().insulationC()),
                arg("lawA", result.wire().lawA())));
        result.ratings().stream()
                .filter(rating -> rating.load() == Level.FITS && rating.wire() != Level.DANGER)
                .forEach(rating ->
                        lines.add(line(rating, job.surroundings().conditions().insulationC())));
        result.overloads().forEach(o -> lines.add(line(o)));
        lines.add(result.choice().reason());
        return lines;
    }

    private static Message line(Rating rating, double insulationC) {
        Double overloadC = rating.overloadTemperatureC();
        return SizingText.RATING_JUDGED.with(
                arg("ratingA", rating.ratingA()),
                arg("ofAmpacityRatio", rating.ofAmpacity()),
                arg("verdict", rating.wire()),
                arg("borderline", rating.borderline() ? "yes" : "no"),
                quantities("overloadC", Optional.ofNullable(overloadC).stream().toList()),
                arg("insulationC", insulationC),
                arg("overheats", overloadC != null && overloadC > insulationC ? "yes" : "no"),
                arg("inrush", rating.inrush()));
    }

    private static Message line(Overload overload) {
        return SizingText.FUSE_AGAINST_WIRE.with(
                arg("multipleFactor", overload.multiple()),
                arg("currentA", overload.currentA()),
                quantities(
                        "fuseS",
                        Optional.ofNullable(overload.fuseLongestS()).stream().toList()),
                arg("adiabaticS", overload.wireAdiabaticS()),
                quantities(
                        "wireS",
                        Optional.ofNullable(overload.wireTimeS()).stream().toList()),
                arg("protection", overload.protection()));
    }

    private static List<Basis> basis(FuseCase job, Result result) {
        List<Basis> basis = new ArrayList<>(List.of(FuseRule.LOAD_BASIS, FuseRule.WIRE_BASIS, FuseRule.SERIES_BASIS));
        basis.addAll(job.ampacity().basis());
        basis.addAll(FuseCurve.BLADE.basis());
        basis.add(ReferenceTables.get("blade-fuse-ratings").basis("standard ratings and colours"));
        basis.add(Basis.fromMemory("adiabatic heating, K = 226, beta = 234.5 C", "IEC 60949"));
        basis.add(FuseCase.SHORT_BASIS);
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
