package loomwright.sizing;

import static loomwright.message.Arg.arg;
import static loomwright.message.Arg.texts;

import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import loomwright.answer.Answer;
import loomwright.answer.Basis;
import loomwright.answer.Caution;
import loomwright.answer.Finding;
import loomwright.conductor.AmpacityTable;
import loomwright.conductor.ConductorSize;
import loomwright.conductor.SizeSystem;
import loomwright.judgement.CrankingRule;
import loomwright.judgement.Dependence;
import loomwright.judgement.DropRule;
import loomwright.judgement.wire.FuseRule;
import loomwright.judgement.wire.StrengthRule;
import loomwright.judgement.wire.WireAmpacity;
import loomwright.message.Arg;
import loomwright.message.Argument.Quantity;
import loomwright.message.Message;
import loomwright.message.MessageCode;
import org.jspecify.annotations.Nullable;

/** The smallest conductor that loses little enough, carries the fuse of its load and bears handling. */
public final class ConductorSizing {
    /** Resistance of a mil-foot of copper as boat practice takes it (ABYC E-11). */
    private static final double BOAT_K_OHM_CM_PER_FT = 10.75;

    static final String CIRCULAR_MILS = "circular-mils";

    private ConductorSizing() {}

    /**
     * What is asked. Required: one of {@code currentA}, {@code powerW} and one of {@code lengthM}, {@code lengthFt}.
     *
     * @param returnPath default WIRE, of the same size and length
     * @param temperatureC conductor temperature for the drop; default as the current warms the wire
     * @param supplyV voltage at the source; default 12
     * @param system sizes to choose from; default AWG
     * @param ampacityTable AC43_13 for an aircraft; default the table for the ground
     */
    public record Input(
            @JsonUnwrapped LoadRating load,
            @JsonUnwrapped RunLength run,
            @Nullable ReturnPath returnPath,
            @JsonUnwrapped FixedOhms fixed,
            @Nullable Double temperatureC,
            @Nullable Double supplyV,
            @JsonUnwrapped PermittedDrop limit,
            @Nullable SizeSystem system,
            @JsonUnwrapped Laying laying,
            @Nullable AmpacityTable ampacityTable) {}

    /**
     * What does not depend on the size.
     *
     * @param chassisOhm resistance of the chassis return; default 0.01, for a starter 0.0003
     * @param jointsOhm resistance of all joints together; default 0
     */
    public record FixedOhms(
            @Nullable Double chassisOhm, @Nullable Double jointsOhm) {}

    /** Which requirement decides. */
    public enum Decider implements MessageCode {
        DROP,
        /** The fuse of the load must not be above what the wire carries. */
        AMPACITY,
        /** It must bear handling. */
        STRENGTH,
        /** The ohms of the starter's cables. */
        STARTER_RESISTANCE,
        /** At least one requirement is met by no size of the system. */
        NO_SUCH_SIZE
    }

    /**
     * One size with what follows from it.
     *
     * @param dropV the drop with it
     * @param allowedA what it may carry continuously
     * @param fuseA its fuse; absent for a starter
     * @param fuseKind in which form that rating is made
     * @param temperatureC as warm as the load makes it
     * @param overloadTemperatureC of the wire at 1.35 times the rating of its fuse; absent without a fuse or where it has no
     *     end
     */
    public record Choice(
            String size,
            double areaMm2,
            double dropV,
            double allowedA,
            @Nullable Double fuseA,
            FuseRule.@Nullable Kind fuseKind,
            double temperatureC,
            @Nullable Double overloadTemperatureC) {}

    /**
     * The smallest size by one requirement.
     *
     * @param rule the requirement
     * @param size absent if no size meets it
     * @param value what that size, or the thickest, has: volts, amperes, mm2 or ohms
     * @param limit what it must have, in the same unit
     */
    public record ByRule(Decider rule, @Nullable String size, double value, double limit) {}

    /**
     * A second opinion, which decides nothing.
     *
     * @param opinion its name
     * @param size the smallest that satisfies it; absent if none does
     * @param value its figure: circular mils, or amperes of the size chosen
     */
    public record Beside(String opinion, @Nullable String size, double value) {}

    /**
     * The sizes and what decided.
     *
     * @param currentA of the load
     * @param byRule each requirement
     * @param beside second opinions
     * @param dependsOn what was assumed and would turn the size chosen into a finding
     */
    public record Result(
            double currentA,
            @JsonUnwrapped Sizes sizes,
            DropLimit limit,
            List<ByRule> byRule,
            List<Beside> beside,
            List<Dependence> dependsOn,
            List<Finding> findings) {
        public Result {
            byRule = List.copyOf(byRule);
            beside = List.copyOf(beside);
            dependsOn = List.copyOf(dependsOn);
            findings = List.copyOf(findings);
        }
    }

    /**
     * The sizes chosen.
     *
     * @param size the smallest that will do; absent if there is none
     * @param usualSize the usual choice: less drop, and a fuse of at most 0.6 of what the wire carries
     * @param smallest the same with its figures
     * @param usual the same with its figures
     * @param thinnestForCurrent the thinnest size that would carry the fuse, whatever its drop and strength
     */
    public record Sizes(
            @Nullable String size,
            @Nullable String usualSize,
            Decider decider,
            @Nullable Choice smallest,
            @Nullable Choice usual,
            @Nullable String thinnestForCurrent) {}

    /**
     * Sizes a wire.
     *
     * <p>The smallest size whose drop I (R'(T) L n + chassis + joints) is at most the limit for a new wire (n = 2 with a
     * return wire, else 1), whose ampacity is at least the smallest standard fuse for the load, and that bears handling.
     * A starter's cables instead: at most 2.0 milliohm at 12 V in all, of a diesel or above 250 A 1.0.
     *
     * @param input see there
     * @throws loomwright.answer.RejectedInput with the pointers of the input's properties
     */
    public static Answer<Result> size(Input input) {
        SizingCase job = SizingCase.of(input);
        Result result = job.solve();
        return new Answer<>(result, working(job, result), basis(job, result), job.assumptions(), cautions(input));
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
     *     <p>Source: ABYC E-11, 11.14.2.6.
     */
    public static double circularMils(double currentA, double runFt, double dropV) {
        return BOAT_K_OHM_CM_PER_FT * currentA * runFt / dropV;
    }

    private static List<Message> working(SizingCase job, Result result) {
        List<Message> lines = new ArrayList<>();
        for (ByRule rule : result.byRule()) {
            lines.add(
                    rule.size() == null
                            ? noSize(rule)
                            : SizingText.SIZE_BY_RULE.with(
                                    arg("rule", rule.rule()),
                                    arg("size", rule.size()),
                                    figure("value", rule.value(), rule.rule()),
                                    figure("limit", rule.limit(), rule.rule())));
        }
        result.beside().forEach(beside -> lines.add(opinion(beside)));
        lines.add(
                result.sizes().size() == null
                        ? SizingText.NO_SIZE_CHOSEN.with()
                        : SizingText.SIZE_CHOSEN.with(
                                arg("size", result.sizes().size()),
                                arg("rule", result.sizes().decider())));
        Choice usual = result.sizes().usual();
        if (usual != null) {
            lines.add(SizingText.USUAL_SIZE.with(
                    arg("size", usual.size()), arg("dropV", usual.dropV()), arg("allowedA", usual.allowedA())));
        }
        if (job.starter()) {
            lines.add(SizingText.STARTER_CABLES_UNFUSED.with());
        }
        return lines;
    }

    /** That no size meets a requirement. */
    public static Message noSize(ByRule rule) {
        return SizingText.NO_SIZE_BY_RULE.with(
                arg("rule", rule.rule()),
                figure("thickest", rule.value(), rule.rule()),
                figure("limit", rule.limit(), rule.rule()));
    }

    private static Message opinion(Beside beside) {
        return beside.opinion().equals(CIRCULAR_MILS)
                ? SizingText.BY_CIRCULAR_MILS.with(
                        arg("circularMils", Math.round(beside.value())),
                        texts(
                                "sizes",
                                Optional.ofNullable(beside.size()).stream().toList()))
                : SizingText.BY_HEAT_LAW.with(
                        texts(
                                "sizes",
                                Optional.ofNullable(beside.size()).stream().toList()),
                        arg("allowedA", beside.value()));
    }

    /** The figure that a rule judges, in its unit. */
    private static Arg figure(String name, double value, Decider rule) {
        return arg(
                name,
                new Quantity(
                        value,
                        switch (rule) {
                            case DROP -> "V";
                            case AMPACITY -> "A";
                            case STRENGTH -> "mm²";
                            case STARTER_RESISTANCE -> "Ω";
                            case NO_SUCH_SIZE -> "";
                        }));
    }

    private static List<Basis> basis(SizingCase job, Result result) {
        List<Basis> basis = new ArrayList<>();
        String size = result.sizes().size();
        if (size != null) {
            basis.add(ConductorSize.parse(size).basis());
        }
        basis.add(job.limit().basis());
        basis.add(WireFindings.STRANDING);
        if (job.starter()) {
            basis.add(CrankingRule.CABLE_BASIS);
            basis.add(StrengthRule.STARTER_BASIS);
        } else {
            basis.addAll(job.ampacityBasis());
            basis.addAll(
                    List.of(FuseRule.LOAD_BASIS, FuseRule.WIRE_BASIS, FuseRule.USUAL_BASIS, FuseRule.SERIES_BASIS));
            basis.add(StrengthRule.BASIS);
        }
        basis.add(Basis.verified("CM = 10.75 I L / E", "boat practice, ABYC E-11, 11.14.2.6"));
        basis.add(WireAmpacity.LAW_BASIS);
        basis.add(Basis.fromMemory("temperature coefficient of copper 0.00393 per K at 20 C", "IEC 60028"));
        return basis.stream().distinct().toList();
    }

    private static List<Caution> cautions(Input input) {
        return input.limit().circuit() == DropRule.STARTER
                ? List.of(Caution.DISCONNECT_BATTERY, Caution.HIGH_CURRENT, Caution.UNFUSED_SUPPLY, Caution.LOCAL_CODES)
                : List.of(Caution.DISCONNECT_BATTERY, Caution.LOCAL_CODES);
    }
}
