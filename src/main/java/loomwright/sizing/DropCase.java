package loomwright.sizing;

import static loomwright.message.Arg.arg;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import loomwright.answer.Assumption;
import loomwright.answer.Basis;
import loomwright.answer.InputError;
import loomwright.conductor.ConductorSize;
import loomwright.conductor.Copper;
import loomwright.judgement.CrankingRule;
import loomwright.judgement.Dependence;
import loomwright.judgement.Dependence.Unknown;
import loomwright.judgement.DropRule;
import loomwright.judgement.Sensitivity;
import loomwright.judgement.Verdict;
import loomwright.judgement.wire.WireAmpacity;
import loomwright.judgement.wire.WireLoadRule;
import loomwright.message.Message;
import org.jspecify.annotations.Nullable;

/** A checked {@link VoltageDrop.Input}: every default filled in, every size read. */
record DropCase(
        double currentA,
        WireCase out,
        Optional<WireCase> back,
        boolean backGrowsAlong,
        FixedPath fixed,
        double supplyV,
        @Nullable DropRule circuit,
        DropLimit limit,
        Surroundings surroundings,
        Optional<Double> atC) {
    /** An unknown length or current at its other end. Common practice, no source. */
    private static final double LARGER = 1.1;

    /**
     * One wire with the temperature it is calculated at.
     *
     * @param ampacity what it may carry where it lies
     */
    record WireCase(
            ConductorSize size, double lengthM, double temperatureC, WireAmpacity ampacity, List<Message> working) {

        VoltageDrop.Wire wire(double currentA) {
            double ohmPerM = size.wireOhmPerM(temperatureC);
            return new VoltageDrop.Wire(
                    size.name(),
                    lengthM,
                    temperatureC,
                    ohmPerM * lengthM,
                    currentA * ohmPerM * lengthM,
                    currentA * currentA * ohmPerM,
                    ampacity.allowedA());
        }
    }

    static DropCase of(VoltageDrop.Input input) {
        Checked checked = new Checked();
        double supplyV = checked.supply(input.supplyV());
        double currentA = checked.load(input.load(), input.limit().circuit(), supplyV);
        ConductorSize size =
                own(checked.size("/size", input.wire().size()), input.wire().resistanceOhmPerKm20C(), checked);
        double lengthM = checked.length(input.run());
        ReturnPath path = Checked.path(input.back().returnPath(), input.limit().circuit());
        Optional<ConductorSize> returnSize =
                checked.optionalSize("/returnSize", input.back().returnSize());
        Optional<Double> returnLengthM = checked.optionalLength(
                "/returnLengthM",
                input.back().returnLengthM(),
                "/returnLengthFt",
                input.back().returnLengthFt());
        checkReturn(input, path, checked);
        double chassisOhm =
                checked.chassis(path, input.back().chassisOhm(), input.limit().circuit());
        List<Double> jointsOut = checked.joints("/jointsOutOhm", listOf(input.jointsOutOhm()));
        List<Double> jointsBack = checked.joints("/jointsBackOhm", listOf(input.jointsBackOhm()));
        double givenC = checked.temperature("/temperatureC", input.wire().temperatureC(), Copper.REFERENCE_C);
        Surroundings surroundings = checked.surroundings(input.laying(), supplyV);
        DropLimit limit = checked.limit(input.limit(), supplyV);
        checked.reject();

        // A starter turns for seconds, which does not warm its cables to the steady temperature of its current.
        boolean starter = input.limit().circuit() == DropRule.STARTER;
        Optional<Double> atC = input.wire().temperatureC() != null
                ? Optional.of(givenC)
                : starter ? Optional.of(surroundings.conditions().ambientC()) : Optional.empty();
        WireCase out = wire(size, lengthM, currentA, surroundings, atC);
        Optional<WireCase> back = path == ReturnPath.WIRE
                ? Optional.of(wire(returnSize.orElse(size), returnLengthM.orElse(lengthM), currentA, surroundings, atC))
                : Optional.empty();
        return new DropCase(
                currentA,
                out,
                back,
                returnLengthM.isEmpty(),
                new FixedPath(
                        chassisOhm,
                        path == ReturnPath.CHASSIS && input.back().chassisOhm() == null,
                        jointsOut,
                        jointsBack),
                supplyV,
                input.limit().circuit(),
                limit,
                surroundings,
                atC);
    }

    /** The same question about a feed wire of another size, with the resistance of its standard. */
    DropCase withSize(ConductorSize other) {
        WireCase wire = wire(other, out.lengthM(), currentA, surroundings, atC);
        return new DropCase(
                currentA,
                wire,
                back.map(b -> b.size().name().equals(out.size().name())
                        ? wire(other, b.lengthM(), currentA, surroundings, atC)
                        : b),
                backGrowsAlong,
                fixed,
                supplyV,
                circuit,
                limit,
                surroundings,
                atC);
    }

    boolean starter() {
        return circuit == DropRule.STARTER;
    }

    /** What the thinner of its wires may carry. */
    double thinnestA() {
        double outA = out.ampacity().allowedA();
        return back.map(b -> Math.min(outA, b.ampacity().allowedA())).orElse(outA);
    }

    /** As warm as the hotter wire gets in the longest overload that a fuse stands; null where it has no end. */
    @Nullable
    Double overloadC(double ratingA) {
        Double outC = WireFindings.overloadC(ratingA, out.ampacity());
        if (outC == null || back.isEmpty()) {
            return outC;
        }
        Double backC = WireFindings.overloadC(ratingA, back.get().ampacity());
        return backC == null ? null : (Double) Math.max(outC, backC);
    }

    /** The lasting current against the thinnest wire; of a starter the ohms of its cables instead. */
    Verdict judgeWire() {
        return starter()
                ? CrankingRule.judgeCables(wiresOhm(), currentA, false, DropLimit.nominalV(supplyV))
                : WireLoadRule.judge(currentA, thinnestA());
    }

    /** At 20 degrees, as the manuals measure them. */
    private double wiresOhm() {
        double outOhm = out.size().wireOhmPerM(Copper.REFERENCE_C) * out.lengthM();
        double backOhm = back.map(b -> b.size().wireOhmPerM(Copper.REFERENCE_C) * b.lengthM())
                .orElse(fixed.chassisOhm());
        return outOhm + backOhm;
    }

    /** Length and current a tenth larger, an assumed chassis in bad order: what of that turns the verdict on the drop. */
    private List<Dependence> dropDependsOn() {
        double fixedV = currentA * fixedOhm();
        double totalV = wiresV() + fixedV;
        double longerV = LARGER * wiresV() + fixedV;
        double poorV = fixed.chassisAssumed() ? currentA * (Checked.POOR_CHASSIS_OHM - fixed.chassisOhm()) : 0;
        double lengthM = out.lengthM();
        Sensitivity tried = new Sensitivity(limit.judge(totalV, supplyV))
                .with(Unknown.LENGTH_M, lengthM, LARGER * lengthM, () -> limit.judge(longerV, supplyV))
                .with(Unknown.CURRENT_A, currentA, LARGER * currentA, () -> limit.judge(LARGER * totalV, supplyV));
        if (fixed.chassisAssumed()) {
            tried.with(
                    Unknown.CHASSIS_OHM,
                    fixed.chassisOhm(),
                    Checked.POOR_CHASSIS_OHM,
                    () -> limit.judge(totalV + poorV, supplyV));
        }
        double worstV = LARGER * (longerV + poorV);
        return tried.with(Unknown.ALL_TOGETHER, totalV, worstV, () -> limit.judge(worstV, supplyV))
                .turns();
    }

    /** Chassis and joints. */
    double fixedOhm() {
        return fixed.chassisOhm()
                + fixed.jointsOutOhm().stream().mapToDouble(o -> o).sum()
                + fixed.jointsBackOhm().stream().mapToDouble(o -> o).sum();
    }

    /** Lost in the wires. */
    double wiresV() {
        return out.wire(currentA).dropV()
                + back.map(b -> b.wire(currentA).dropV()).orElse(0.0);
    }

    /** Of a starter nothing is tried: its cables are measured. */
    List<Dependence> dependsOn() {
        double thinnestMm2 =
                Math.min(out.size().areaMm2(), back.map(b -> b.size().areaMm2()).orElse(Double.POSITIVE_INFINITY));
        List<Dependence> all = new ArrayList<>(surroundings
                .tried(conditions -> WireLoadRule.judge(
                        currentA, WireAmpacity.of(thinnestMm2, conditions).allowedA()))
                .turns());
        all.addAll(dropDependsOn());
        return all;
    }

    List<Assumption> assumptions() {
        List<Assumption> said = new ArrayList<>(surroundings.assumptions());
        if (fixed.chassisAssumed()) {
            said.add(SizingAssumption.chassis(fixed.chassisOhm(), currentA, Checked.POOR_CHASSIS_OHM));
        }
        return said;
    }

    private static void checkReturn(VoltageDrop.Input input, ReturnPath path, Checked checked) {
        checked.check(
                path == ReturnPath.WIRE || input.back().returnSize() == null,
                InputError.Code.CONTRADICTION,
                "/returnSize",
                input.back().returnSize(),
                AcceptedRun.ONLY_WITH,
                arg("name", "returnPath"),
                arg("value", "wire"));
        boolean noReturnLength =
                input.back().returnLengthM() == null && input.back().returnLengthFt() == null;
        checked.check(
                path == ReturnPath.WIRE || noReturnLength,
                InputError.Code.CONTRADICTION,
                input.back().returnLengthM() != null ? "/returnLengthM" : "/returnLengthFt",
                input.back().returnLengthM() != null
                        ? input.back().returnLengthM()
                        : input.back().returnLengthFt(),
                AcceptedRun.ONLY_WITH,
                arg("name", "returnPath"),
                arg("value", "wire"));
    }

    /** The same size with the resistance of its data sheet. */
    private static ConductorSize own(ConductorSize size, @Nullable Double ohmPerKm, Checked checked) {
        if (ohmPerKm == null) {
            return size;
        }
        double checkedOhmPerKm = checked.optional("/resistanceOhmPerKm20C", ohmPerKm, 1e-3, 1e6, 1);
        return checkedOhmPerKm > 0
                ? size.withWireOhmPerM20C(
                        checkedOhmPerKm / 1000,
                        Basis.computed("resistance of the wire as given", "the question itself"))
                : size;
    }

    private static List<Double> listOf(@Nullable List<Double> values) {
        return values == null ? List.of() : values;
    }

    /** A wire at a given temperature, or as warm as the current makes it. */
    private static WireCase wire(
            ConductorSize size, double lengthM, double currentA, Surroundings surroundings, Optional<Double> atC) {
        WireAmpacity ampacity = surroundings.ampacity(size);
        if (atC.isPresent()) {
            return new WireCase(size, lengthM, atC.get(), ampacity, List.of());
        }
        double warmC = ampacity.loadedC(currentA);
        return new WireCase(
                size,
                lengthM,
                warmC,
                ampacity,
                List.of(SizingText.WIRE_WARMED.with(
                        arg("size", size.name()),
                        arg("allowedA", ampacity.allowedA()),
                        arg("ambientC", surroundings.conditions().ambientC()),
                        arg("currentA", currentA),
                        arg("atLeast", warmC < ampacity.mostC() ? "no" : "yes"),
                        arg("temperatureC", warmC))));
    }

    /**
     * What of the way has no length: chassis and joints.
     */
    record FixedPath(
            double chassisOhm, boolean chassisAssumed, List<Double> jointsOutOhm, List<Double> jointsBackOhm) {}
}
