package loomwright.conductor;

import java.util.ArrayList;
import java.util.List;
import loomwright.answer.Answer;
import loomwright.answer.Basis;
import loomwright.answer.Caution;
import loomwright.message.Unconverted;
import org.jspecify.annotations.Nullable;

/** The smallest conductor that neither loses too much voltage nor grows too warm. */
public final class ConductorSizing {
    /** Resistance of a mil-foot of copper as boat practice takes it (ABYC E-11), from memory. */
    private static final double BOAT_K_OHM_CM_PER_FT = 10.75;

    private ConductorSizing() {}

    /**
     * What is asked. Required: {@code currentA} and one of {@code lengthM}, {@code lengthFt}.
     *
     * @param currentA continuous current
     * @param lengthM one way, metres
     * @param lengthFt one way, feet
     * @param returnPath default WIRE, of the same size and length
     * @param chassisOhm resistance of the chassis return; required with CHASSIS
     * @param jointsOhm resistance of all joints together; default 0
     * @param temperatureC conductor temperature for the drop; default the ambient
     * @param supplyV voltage at the source; default 12
     * @param limitV permitted drop, volts
     * @param limitPercent permitted drop, per cent of the supply
     * @param circuit for the usual limit where none is given; default ELECTRONICS, 3 %; the wire of a STARTER need only bear
     *     the heat of one go, unless an ampacity table is named
     * @param system sizes to choose from; default AWG
     * @param insulationC temperature rating of the insulation; default 80, PVC
     * @param ambientC default 30
     * @param engineSpace default false
     * @param bundleCount current-carrying wires in the bundle, this one included; default 1
     * @param bundleFactors true to apply the bundle factors; default only from 50 V on, where they are required
     * @param ampacityTable the one to follow; default all, the most cautious leading
     */
    public record Input(
            @Nullable Double currentA,
            @Nullable Double lengthM,
            @Nullable Double lengthFt,
            @Nullable ReturnPath returnPath,
            @Nullable Double chassisOhm,
            @Nullable Double jointsOhm,
            @Nullable Double temperatureC,
            @Nullable Double supplyV,
            @Nullable Double limitV,
            @Nullable Double limitPercent,
            @Nullable CircuitKind circuit,
            @Nullable SizeSystem system,
            @Nullable Double insulationC,
            @Nullable Double ambientC,
            @Nullable Boolean engineSpace,
            @Nullable Integer bundleCount,
            @Nullable Boolean bundleFactors,
            @Nullable AmpacityTable ampacityTable) {}

    /** Which requirement decides. */
    public enum Decider {
        DROP,
        AMPACITY,
        /** The heat of one go of the starter. */
        CRANKING_HEAT,
        BOTH,
        /** At least one requirement is met by no size of the system. */
        NO_SUCH_SIZE
    }

    /**
     * The smallest size by drop.
     *
     * @param size absent if even the thickest loses too much
     * @param dropV of that size, or of the thickest
     */
    public record ByDrop(@Nullable String size, double dropV, DropLimit limit) {}

    /**
     * The smallest size by one ampacity table.
     *
     * @param size absent if no size carries the current
     * @param ampacity of that size
     */
    public record ByTable(
            AmpacityTable table,
            @Nullable String size,
            @Nullable Ampacity ampacity) {}

    /**
     * The smallest size that bears the heat of one go of the starter: {@link CrankingHeat}.
     *
     * @param size absent if none does
     * @param timeS of that size, or of the thickest, to the limit of its insulation
     * @param limitS how long one go may take
     */
    public record ByCrankingHeat(@Nullable String size, double timeS, double limitS) {}

    /**
     * A second opinion on the drop: circular mils by boat practice.
     *
     * @param circularMils CM = 10.75 I L / E
     * @param size the smallest that has them; absent if none has
     */
    public record ByCircularMils(
            double circularMils, @Nullable String size) {}

    /**
     * The sizes and what decided.
     *
     * @param size the smallest that meets drop and ampacity; absent if there is none
     * @param dropV the drop with that size
     * @param byAmpacity each table, the most cautious first
     * @param byCrankingHeat what stands in the place of the tables for a starter; absent for other circuits
     * @param byCircularMils absent where chassis and joints leave no volts for the wire
     * @param notes what to know beside the figures
     */
    public record Result(
            @Nullable String size,
            Decider decider,
            @Nullable Double dropV,
            ByDrop byDrop,
            List<ByTable> byAmpacity,
            @Nullable ByCrankingHeat byCrankingHeat,
            @Nullable ByCircularMils byCircularMils,
            List<String> notes) {
        public Result {
            byAmpacity = List.copyOf(byAmpacity);
            notes = List.copyOf(notes);
        }
    }

    /**
     * Sizes a wire.
     *
     * <p>Smallest size with I (R'(T) L n + chassis + joints) at most the limit (n = 2 with a return wire, else 1), and
     * smallest size whose corrected ampacity is at least I, or for a starter that bears the heat of one go; the thicker of
     * the two. AWG sizes are those that an ampacity
     * table lists, which are those of the trade. R' of AWG and SAE sizes is that of solid copper and taken 2 % higher
     * here, because vehicle wire is stranded; metric sizes have their permitted maximum.
     *
     * @param input see there
     * @throws loomwright.answer.RejectedInput with the pointers of the input's properties
     */
    public static Answer<Result> size(Input input) {
        SizingCase job = SizingCase.of(input);
        Result result = job.solve();
        return new Answer<>(result, Unconverted.lines(working(job, result)), basis(result), cautions(input));
    }

    /**
     * Copper needed by the rule of boat practice.
     *
     * <p>CM = K I L / E, K = 10.75 ohm circular-mil per ft.
     *
     * @param currentA I
     * @param runFt L, out and back together, ft
     * @param dropV E, permitted drop
     * @return circular mils
     *     <p>Source: ABYC E-11, K from memory.
     */
    public static double circularMils(double currentA, double runFt, double dropV) {
        return BOAT_K_OHM_CM_PER_FT * currentA * runFt / dropV;
    }

    private static List<String> working(SizingCase job, Result result) {
        List<String> lines = new ArrayList<>();
        ByDrop byDrop = result.byDrop();
        lines.add("by drop: at most " + FigureText.text(byDrop.limit().limitV()) + " V ("
                + byDrop.limit().reason() + "), wire " + FigureText.text(job.wireM()) + " m in all at "
                + FigureText.text(job.temperatureC()) + " C: "
                + (byDrop.size() == null ? "no size, the thickest loses " : byDrop.size() + " loses ")
                + FigureText.text(byDrop.dropV()) + " V");
        for (ByTable choice : result.byAmpacity()) {
            Ampacity ampacity = choice.ampacity();
            lines.add("by ampacity: "
                    + (ampacity == null
                            ? FigureText.word(choice.table()) + ": no size carries the current"
                            : choice.size() + ", " + ampacity.working()));
        }
        ByCrankingHeat heat = result.byCrankingHeat();
        if (heat != null) {
            lines.add(
                    "a starter turns for seconds, so the tables of continuous current do not decide; by the heat of one go of "
                            + FigureText.text(heat.limitS()) + " s, none of it lost, from "
                            + FigureText.text(job.conditions().ambientC()) + " to "
                            + FigureText.text(job.conditions().insulationC()) + " C: "
                            + (heat.size() == null
                                    ? "no size, the thickest is there after "
                                    : heat.size() + " is there after ")
                            + FigureText.text(heat.timeS()) + " s");
        }
        ByCircularMils rule = result.byCircularMils();
        if (rule != null) {
            lines.add("second opinion, CM = 10.75 I L / E = " + FigureText.text(rule.circularMils())
                    + " circular mils: " + (rule.size() == null ? "no size" : rule.size()));
        }
        lines.add(
                result.size() == null
                        ? "no size of this system meets drop and "
                                + (heat == null ? "ampacity" : "the heat of cranking")
                        : result.size() + ", decided by " + FigureText.word(result.decider()));
        return lines;
    }

    private static List<Basis> basis(Result result) {
        List<Basis> basis = new ArrayList<>();
        String size = result.size();
        if (size != null) {
            basis.add(ConductorSize.parse(size).basis());
        }
        basis.add(result.byDrop().limit().basis());
        basis.add(Basis.commonPractice("AWG and SAE sizes: 2 % more resistance for the twist of the strands"));
        for (ByTable choice : result.byAmpacity()) {
            Ampacity ampacity = choice.ampacity();
            basis.addAll(
                    ampacity == null ? List.of(choice.table().table().basis("continuous current")) : ampacity.basis());
        }
        if (result.byCrankingHeat() != null) {
            basis.addAll(List.of(CrankingHeat.ADIABATIC, CrankingHeat.GO));
        }
        if (result.byCircularMils() != null) {
            basis.add(Basis.fromMemory("CM = 10.75 I L / E", "boat practice, ABYC E-11"));
        }
        basis.add(Basis.fromMemory("temperature coefficient of copper 0.00393 per K at 20 C", "IEC 60028"));
        return basis.stream().distinct().toList();
    }

    private static List<Caution> cautions(Input input) {
        return input.circuit() == CircuitKind.STARTER
                ? List.of(Caution.DISCONNECT_BATTERY, Caution.HIGH_CURRENT, Caution.UNFUSED_SUPPLY, Caution.LOCAL_CODES)
                : List.of(Caution.DISCONNECT_BATTERY, Caution.LOCAL_CODES);
    }
}
