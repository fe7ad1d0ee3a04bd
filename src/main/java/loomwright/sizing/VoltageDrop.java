package loomwright.sizing;

import static loomwright.message.Arg.arg;

import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import loomwright.answer.Answer;
import loomwright.answer.Basis;
import loomwright.answer.Caution;
import loomwright.answer.Finding;
import loomwright.judgement.Dependence;
import loomwright.judgement.Verdict;
import loomwright.judgement.wire.FuseRule;
import loomwright.judgement.wire.WireAmpacity;
import loomwright.message.Arg;
import loomwright.message.Message;
import org.jspecify.annotations.Nullable;

/** The voltage lost between source and load and in the return. */
public final class VoltageDrop {
    /** Above this share of the whole a part loses most of it. */
    static final double MOST = 0.5;

    private VoltageDrop() {}

    /**
     * What is asked. Required: {@code size}, one of {@code currentA}, {@code powerW} and one of {@code lengthM},
     * {@code lengthFt}.
     *
     * @param jointsOutOhm resistance of each joint on the way out
     * @param jointsBackOhm of each joint in the return
     * @param supplyV voltage at the source; default 12
     */
    public record Input(
            @JsonUnwrapped LoadRating load,
            @JsonUnwrapped FeedWire wire,
            @JsonUnwrapped RunLength run,
            @JsonUnwrapped ReturnRun back,
            @Nullable List<Double> jointsOutOhm,
            @Nullable List<Double> jointsBackOhm,
            @JsonUnwrapped Laying laying,
            @Nullable Double supplyV,
            @JsonUnwrapped PermittedDrop limit) {
        public Input {
            jointsOutOhm = jointsOutOhm == null ? List.of() : List.copyOf(jointsOutOhm);
            jointsBackOhm = jointsBackOhm == null ? List.of() : List.copyOf(jointsBackOhm);
        }
    }

    /**
     * The feed wire.
     *
     * @param size feed wire
     * @param resistanceOhmPerKm20C the feed wire's own figure from its data sheet, instead of that of its standard; the
     *     return wire takes it too unless {@code returnSize} names another
     * @param temperatureC conductor temperature; default as the current warms the wire
     */
    public record FeedWire(
            @Nullable String size,
            @Nullable Double resistanceOhmPerKm20C,
            @Nullable Double temperatureC) {}

    /**
     * How the current comes back.
     *
     * @param returnPath default WIRE
     * @param returnSize return wire; default as the feed
     * @param returnLengthM its length; default as the feed
     * @param returnLengthFt its length in feet
     * @param chassisOhm resistance of the chassis return; default 0.01, for a starter 0.0003
     */
    public record ReturnRun(
            @Nullable ReturnPath returnPath,
            @Nullable String returnSize,
            @Nullable Double returnLengthM,
            @Nullable Double returnLengthFt,
            @Nullable Double chassisOhm) {}

    /**
     * One wire of the run.
     *
     * @param allowedA what it may carry continuously where it lies
     */
    public record Wire(
            String size,
            double lengthM,
            double temperatureC,
            double resistanceOhm,
            double dropV,
            double heatWPerM,
            double allowedA) {}

    /**
     * The part of the run that loses most.
     *
     * @param part out, back, chassis, joint-out-1, joint-back-2 and so on
     * @param share of the whole drop
     * @param most whether that is more than half
     */
    public record Largest(String part, double dropV, double share, boolean most) {}

    /**
     * What is lost where.
     *
     * @param currentA of the load
     * @param largest where most is lost
     * @param maxLengthM longest run, one way, that a new wire of this size may have, a return wire like the feed growing
     *     along; absent if joints and return alone exceed the limit
     * @param dependsOn what was assumed and would turn the verdict of the wire
     */
    public record Result(
            double currentA,
            @JsonUnwrapped Drops drops,
            @JsonUnwrapped Total total,
            @JsonUnwrapped JudgedDrop judged,
            @Nullable Largest largest,
            @Nullable Double maxLengthM,
            @JsonUnwrapped FuseRange fuses,
            List<Dependence> dependsOn,
            List<Finding> findings) {
        public Result {
            dependsOn = List.copyOf(dependsOn);
            findings = List.copyOf(findings);
        }
    }

    /**
     * What is lost in each part of the run.
     *
     * @param out the feed wire
     * @param back the return wire, absent without one
     * @param chassisV drop of the chassis return, 0 without one
     * @param jointsOutV drop of each joint out, in input order
     * @param jointsBackV drop of each joint back, in input order
     */
    public record Drops(
            Wire out, @Nullable Wire back, double chassisV, List<Double> jointsOutV, List<Double> jointsBackV) {
        public Drops {
            jointsOutV = List.copyOf(jointsOutV);
            jointsBackV = List.copyOf(jointsBackV);
        }
    }

    /**
     * The whole way.
     *
     * @param totalOhm resistance of the whole way
     * @param totalV drop of the whole way
     * @param totalPercent of the supply
     * @param loadV what is left for the load; absent if the drop would eat the whole supply
     * @param maxCurrentA what the supply drives through the way with the load shorted
     */
    public record Total(
            double totalOhm,
            double totalV,
            double totalPercent,
            @Nullable Double loadV,
            double maxCurrentA) {}

    /**
     * What is judged, and by which limit.
     *
     * @param verdict the drop against its limit
     * @param wireVerdict the current against what the thinnest wire may carry
     */
    public record JudgedDrop(DropLimit limit, Verdict verdict, Verdict wireVerdict) {}

    /**
     * The fuses that suit load and wire.
     *
     * @param leastFuseA the smallest standard fuse that carries the load; absent if none does
     * @param mostFuseA the largest standard fuse that the wire allows; absent if none is so small
     * @param overloadTemperatureC of the thinnest wire at 1.35 times {@code leastFuseA}; absent where it has no end
     */
    public record FuseRange(
            @Nullable Double leastFuseA,
            @Nullable Double mostFuseA,
            @Nullable Double overloadTemperatureC) {}

    /**
     * Calculates the drop.
     *
     * <p>V = I (R'out Lout + R'back Lback + chassis + joints), R' = R'20 (1 + 0.00393 (T - 20)), T by
     * {@link WireAmpacity#temperatureC} unless given.
     *
     * @param input see there
     * @throws loomwright.answer.RejectedInput with the pointers of the input's properties
     */
    public static Answer<Result> calculate(Input input) {
        DropCase run = DropCase.of(input);
        Wire out = run.out().wire(run.currentA());
        Wire back = run.back().map(w -> w.wire(run.currentA())).orElse(null);
        double joints = sum(run.fixed().jointsOutOhm()) + sum(run.fixed().jointsBackOhm());
        double backOhm = back == null ? 0 : back.resistanceOhm();
        double totalOhm = out.resistanceOhm() + backOhm + run.fixed().chassisOhm() + joints;
        double totalV = run.currentA() * totalOhm;
        Verdict drop = run.limit().judge(totalV, run.supplyV());
        Verdict wire = run.judgeWire();
        Double leastFuseA = FuseRule.smallest(run.currentA(), true)
                .map(FuseRule.Rating::ratingA)
                .orElse(null);
        Result result = new Result(
                run.currentA(),
                new Drops(
                        out,
                        back,
                        run.currentA() * run.fixed().chassisOhm(),
                        scaled(run.fixed().jointsOutOhm(), run.currentA()),
                        scaled(run.fixed().jointsBackOhm(), run.currentA())),
                new Total(
                        totalOhm,
                        totalV,
                        100 * totalV / run.supplyV(),
                        totalV < run.supplyV() ? run.supplyV() - totalV : null,
                        run.supplyV() / totalOhm),
                new JudgedDrop(run.limit(), drop, wire),
                largest(run, out, back, totalV),
                maxLengthM(run, out, back, joints),
                new FuseRange(
                        leastFuseA,
                        FuseRule.largest(run.thinnestA())
                                .map(FuseRule.Rating::ratingA)
                                .orElse(null),
                        leastFuseA == null || run.starter() ? null : run.overloadC(leastFuseA)),
                run.starter() ? List.of() : run.dependsOn(),
                WireFindings.ofDrop(run, drop, wire, totalV));
        return new Answer<>(result, working(run, result), basis(run, result), run.assumptions(), cautions(run));
    }

    private static @Nullable Largest largest(DropCase run, Wire out, @Nullable Wire back, double totalV) {
        Map<String, Double> parts = new LinkedHashMap<>();
        parts.put("out", out.dropV());
        if (back != null) {
            parts.put("back", back.dropV());
        }
        parts.put("chassis", run.currentA() * run.fixed().chassisOhm());
        put(parts, "joint-out-", run.fixed().jointsOutOhm(), run.currentA());
        put(parts, "joint-back-", run.fixed().jointsBackOhm(), run.currentA());
        return parts.entrySet().stream()
                .reduce((a, b) -> b.getValue() > a.getValue() ? b : a)
                .filter(e -> e.getValue() > 0)
                .map(e -> new Largest(e.getKey(), e.getValue(), e.getValue() / totalV, e.getValue() > MOST * totalV))
                .orElse(null);
    }

    private static void put(Map<String, Double> parts, String name, List<Double> ohms, double currentA) {
        for (int i = 0; i < ohms.size(); i++) {
            parts.put(name + (i + 1), currentA * ohms.get(i));
        }
    }

    private static @Nullable Double maxLengthM(DropCase run, Wire out, @Nullable Wire back, double joints) {
        double ohmPerM = out.resistanceOhm() / out.lengthM();
        double fixedOhm = joints + run.fixed().chassisOhm();
        if (back != null && run.backGrowsAlong()) {
            ohmPerM += back.resistanceOhm() / back.lengthM();
        } else if (back != null) {
            fixedOhm += back.resistanceOhm();
        }
        double leftOhm = run.limit().newWireV() / run.currentA() - fixedOhm;
        return leftOhm > 0 ? leftOhm / ohmPerM : null;
    }

    private static List<Message> working(DropCase run, Result result) {
        List<Message> lines = new ArrayList<>(run.out().working());
        lines.add(line("feed", result.drops().out(), run.currentA()));
        Wire back = result.drops().back();
        if (back != null) {
            lines.add(line("return", back, run.currentA()));
        }
        if (run.fixed().chassisOhm() > 0) {
            lines.add(SizingText.DROP_OF_CHASSIS.with(
                    product(run.currentA(), run.fixed().chassisOhm())));
        }
        run.fixed().jointsOutOhm().forEach(ohm -> lines.add(joint("feed", run.currentA(), ohm)));
        run.fixed().jointsBackOhm().forEach(ohm -> lines.add(joint("return", run.currentA(), ohm)));
        lines.add(SizingText.DROP_IN_ALL.with(
                arg("totalV", result.total().totalV()),
                arg("totalPercent", result.total().totalPercent()),
                arg("supplyV", run.supplyV())));
        lines.add(SizingText.DROP_LIMIT.with(
                arg("goodV", run.limit().goodV()),
                arg("limitV", run.limit().findingV()),
                arg("verdict", result.judged().verdict().level()),
                arg("borderline", result.judged().verdict().borderline() ? "yes" : "no")));
        return lines;
    }

    private static Message line(String way, Wire wire, double currentA) {
        return SizingText.DROP_OF_WIRE.with(
                arg("way", way),
                arg("size", wire.size()),
                arg("temperatureC", wire.temperatureC()),
                arg("currentA", currentA),
                arg("resistanceOhmPerM", wire.resistanceOhm() / wire.lengthM()),
                arg("lengthM", wire.lengthM()),
                arg("dropV", wire.dropV()),
                arg("heatWPerM", wire.heatWPerM()));
    }

    private static Message joint(String way, double currentA, double ohm) {
        List<Arg> arguments = new ArrayList<>(List.of(product(currentA, ohm)));
        arguments.add(arg("way", way));
        return SizingText.DROP_OF_JOINT.with(arguments.toArray(new Arg[0]));
    }

    private static Arg[] product(double currentA, double ohm) {
        return new Arg[] {arg("currentA", currentA), arg("resistanceOhm", ohm), arg("dropV", currentA * ohm)};
    }

    private static List<Basis> basis(DropCase run, Result result) {
        List<Basis> basis = new ArrayList<>();
        basis.add(run.out().size().basis());
        run.back().ifPresent(w -> basis.add(w.size().basis()));
        basis.add(WireFindings.STRANDING);
        basis.add(Basis.fromMemory("temperature coefficient of copper 0.00393 per K at 20 C", "IEC 60028"));
        basis.addAll(run.out().ampacity().basis());
        basis.add(run.limit().basis());
        basis.add(result.judged().wireVerdict().basis());
        return basis.stream().distinct().toList();
    }

    private static List<Caution> cautions(DropCase run) {
        return run.starter()
                ? List.of(Caution.DISCONNECT_BATTERY, Caution.HIGH_CURRENT, Caution.LOCAL_CODES)
                : List.of(Caution.DISCONNECT_BATTERY, Caution.LOCAL_CODES);
    }

    private static double sum(List<Double> values) {
        return values.stream().mapToDouble(Double::doubleValue).sum();
    }

    private static List<Double> scaled(List<Double> values, double factor) {
        return values.stream().map(v -> v * factor).toList();
    }
}
