package loomwright.conductor;

import java.util.ArrayList;
import java.util.List;
import loomwright.answer.Answer;
import loomwright.answer.Basis;
import loomwright.answer.Caution;
import loomwright.message.Unconverted;
import org.jspecify.annotations.Nullable;

/** The voltage lost between source and load and on the way back. */
public final class VoltageDrop {
    private VoltageDrop() {}

    /**
     * What is asked. Required: {@code currentA}, {@code size} and one of {@code lengthM}, {@code lengthFt}.
     *
     * @param currentA current of the load
     * @param size feed wire
     * @param lengthM one way, metres
     * @param lengthFt one way, feet
     * @param returnPath default WIRE
     * @param returnSize return wire; default as the feed
     * @param returnLengthM its length; default as the feed
     * @param returnLengthFt its length in feet
     * @param chassisOhm resistance of the chassis return; required with CHASSIS
     * @param jointsOutOhm resistance of each joint on the way out
     * @param jointsBackOhm of each joint on the way back
     * @param temperatureC conductor temperature; default 20
     * @param ownHeating true to estimate the temperature from the current instead
     * @param ambientC for the estimate; default 30
     * @param insulationC insulation rating, for the estimate; default 80, PVC
     * @param ampacityTable for the estimate; default the first that lists the wire
     * @param resistanceOhmPerKm20C the feed wire's own figure from its data sheet, instead of that of its standard; the
     *     return wire takes it too unless {@code returnSize} names another
     * @param supplyV voltage at the source; default 12
     * @param limitV permitted drop, volts
     * @param limitPercent permitted drop, per cent of the supply
     * @param circuit for the usual limit where none is given; default ELECTRONICS, 3 %
     */
    public record Input(
            @Nullable Double currentA,
            @Nullable String size,
            @Nullable Double lengthM,
            @Nullable Double lengthFt,
            @Nullable ReturnPath returnPath,
            @Nullable String returnSize,
            @Nullable Double returnLengthM,
            @Nullable Double returnLengthFt,
            @Nullable Double chassisOhm,
            @Nullable List<Double> jointsOutOhm,
            @Nullable List<Double> jointsBackOhm,
            @Nullable Double temperatureC,
            @Nullable Boolean ownHeating,
            @Nullable Double ambientC,
            @Nullable Double insulationC,
            @Nullable AmpacityTable ampacityTable,
            @Nullable Double resistanceOhmPerKm20C,
            @Nullable Double supplyV,
            @Nullable Double limitV,
            @Nullable Double limitPercent,
            @Nullable CircuitKind circuit) {
        public Input {
            jointsOutOhm = jointsOutOhm == null ? List.of() : List.copyOf(jointsOutOhm);
            jointsBackOhm = jointsBackOhm == null ? List.of() : List.copyOf(jointsBackOhm);
        }

        /** The same question about a feed wire of another size, with the resistance of its standard. */
        Input withSize(String other) {
            return new Input(
                    currentA,
                    other,
                    lengthM,
                    lengthFt,
                    returnPath,
                    returnSize,
                    returnLengthM,
                    returnLengthFt,
                    chassisOhm,
                    jointsOutOhm,
                    jointsBackOhm,
                    temperatureC,
                    ownHeating,
                    ambientC,
                    insulationC,
                    ampacityTable,
                    null,
                    supplyV,
                    limitV,
                    limitPercent,
                    circuit);
        }
    }

    /** How the drop stands to its limit. */
    public enum Verdict {
        WITHIN_LIMIT,
        OVER_LIMIT,
        /** The drop would eat the whole supply: the supply cannot drive this current through this resistance. */
        CURRENT_IMPOSSIBLE
    }

    /**
     * One wire of the run.
     *
     * @param overAmpacity true where the temperature was estimated and the current is above the ampacity
     */
    public record Wire(
            String size,
            double lengthM,
            double temperatureC,
            double resistanceOhm,
            double dropV,
            double heatWPerM,
            boolean overAmpacity) {}

    /**
     * What is lost where.
     *
     * @param out the feed wire
     * @param back the return wire, absent without one
     * @param chassisV drop of the chassis return, 0 without one
     * @param jointsOutV drop of each joint out, in input order
     * @param jointsBackV drop of each joint back, in input order
     * @param totalOhm resistance of the whole way
     * @param totalV drop of the whole way
     * @param totalPercent of the supply
     * @param loadV what is left for the load; absent if the current is impossible
     * @param maxCurrentA what the supply drives through the way with the load shorted
     * @param maxLengthM longest run, one way, that stays within the limit, a return wire like the feed growing along;
     *     absent if joints and return alone exceed it
     */
    public record Result(
            Wire out,
            @Nullable Wire back,
            double chassisV,
            List<Double> jointsOutV,
            List<Double> jointsBackV,
            double totalOhm,
            double totalV,
            double totalPercent,
            @Nullable Double loadV,
            double maxCurrentA,
            DropLimit limit,
            Verdict verdict,
            @Nullable Double maxLengthM) {
        public Result {
            jointsOutV = List.copyOf(jointsOutV);
            jointsBackV = List.copyOf(jointsBackV);
        }
    }

    /**
     * Calculates the drop.
     *
     * <p>V = I (R'out Lout + R'back Lback + chassis + joints), R' = R'20 (1 + 0.00393 (T - 20)).
     *
     * @param input see there
     * @return drops, heat, verdict
     * @throws loomwright.answer.RejectedInput with the pointers of the input's properties
     */
    public static Answer<Result> calculate(Input input) {
        DropCase run = DropCase.of(input);
        Wire out = run.out().wire(run.currentA());
        Wire back = run.back().map(w -> w.wire(run.currentA())).orElse(null);
        double joints = sum(run.jointsOutOhm()) + sum(run.jointsBackOhm());
        double backOhm = back == null ? 0 : back.resistanceOhm();
        double totalOhm = out.resistanceOhm() + backOhm + run.chassisOhm() + joints;
        double totalV = run.currentA() * totalOhm;
        Result result = new Result(
                out,
                back,
                run.currentA() * run.chassisOhm(),
                scaled(run.jointsOutOhm(), run.currentA()),
                scaled(run.jointsBackOhm(), run.currentA()),
                totalOhm,
                totalV,
                100 * totalV / run.supplyV(),
                totalV < run.supplyV() ? run.supplyV() - totalV : null,
                run.supplyV() / totalOhm,
                run.limit(),
                verdict(totalV, run),
                maxLengthM(run, out, back, joints));
        return new Answer<>(result, Unconverted.lines(working(run, result)), basis(run), cautions(run));
    }

    private static Verdict verdict(double totalV, DropCase run) {
        if (totalV >= run.supplyV()) {
            return Verdict.CURRENT_IMPOSSIBLE;
        }
        return totalV <= run.limit().limitV() ? Verdict.WITHIN_LIMIT : Verdict.OVER_LIMIT;
    }

    private static @Nullable Double maxLengthM(DropCase run, Wire out, @Nullable Wire back, double joints) {
        double ohmPerM = out.resistanceOhm() / out.lengthM();
        double fixedOhm = joints + run.chassisOhm();
        if (back != null && run.backGrowsAlong()) {
            ohmPerM += back.resistanceOhm() / back.lengthM();
        } else if (back != null) {
            fixedOhm += back.resistanceOhm();
        }
        double leftOhm = run.limit().limitV() / run.currentA() - fixedOhm;
        return leftOhm > 0 ? leftOhm / ohmPerM : null;
    }

    private static List<String> working(DropCase run, Result result) {
        List<String> lines = new ArrayList<>(run.out().working());
        lines.add(line("out", result.out(), run.currentA()));
        Wire back = result.back();
        if (back != null) {
            run.back()
                    .ifPresent(w -> w.working().stream()
                            .filter(step -> !lines.contains(step))
                            .forEach(lines::add));
            lines.add(line("back", back, run.currentA()));
        }
        if (run.chassisOhm() > 0) {
            lines.add("chassis: " + product(run.currentA(), run.chassisOhm()));
        }
        run.jointsOutOhm().forEach(ohm -> lines.add("joint out: " + product(run.currentA(), ohm)));
        run.jointsBackOhm().forEach(ohm -> lines.add("joint back: " + product(run.currentA(), ohm)));
        lines.add("total: " + FigureText.text(result.totalV()) + " V = " + FigureText.text(result.totalPercent())
                + " % of " + FigureText.text(run.supplyV()) + " V");
        lines.add("limit: " + FigureText.text(run.limit().limitV()) + " V ("
                + run.limit().reason() + "): " + FigureText.word(result.verdict()));
        return lines;
    }

    private static String line(String way, Wire wire, double currentA) {
        return way + ", " + wire.size() + " at " + FigureText.text(wire.temperatureC()) + " C: "
                + FigureText.text(currentA)
                + " A x " + FigureText.text(wire.resistanceOhm() / wire.lengthM()) + " ohm/m x "
                + FigureText.text(wire.lengthM()) + " m = " + FigureText.text(wire.dropV()) + " V, "
                + FigureText.text(wire.heatWPerM()) + " W/m";
    }

    private static String product(double currentA, double ohm) {
        return FigureText.text(currentA) + " A x " + FigureText.text(ohm) + " ohm = " + FigureText.text(currentA * ohm)
                + " V";
    }

    private static List<Basis> basis(DropCase run) {
        List<Basis> basis = new ArrayList<>(run.out().basis());
        run.back().ifPresent(w -> basis.addAll(w.basis()));
        basis.add(Basis.fromMemory("temperature coefficient of copper 0.00393 per K at 20 C", "IEC 60028"));
        basis.add(run.limit().basis());
        return basis.stream().distinct().toList();
    }

    private static List<Caution> cautions(DropCase run) {
        return run.circuit() == CircuitKind.STARTER
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
