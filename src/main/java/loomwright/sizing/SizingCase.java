package loomwright.sizing;

import static loomwright.message.Arg.arg;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;
import loomwright.answer.Assumption;
import loomwright.answer.Basis;
import loomwright.answer.Finding;
import loomwright.conductor.Ampacity;
import loomwright.conductor.AmpacityTable;
import loomwright.conductor.ConductorSize;
import loomwright.conductor.Copper;
import loomwright.conductor.SizeSystem;
import loomwright.judgement.CrankingRule;
import loomwright.judgement.Dependence;
import loomwright.judgement.DropRule;
import loomwright.judgement.Ratio;
import loomwright.judgement.wire.FuseRule;
import loomwright.judgement.wire.StrengthRule;
import loomwright.judgement.wire.WireAmpacity;
import loomwright.sizing.ConductorSizing.ByRule;
import loomwright.sizing.ConductorSizing.Choice;
import loomwright.sizing.ConductorSizing.Decider;
import org.jspecify.annotations.Nullable;

/**
 * A checked {@link ConductorSizing.Input}.
 *
 * @param temperatureC conductor temperature; empty for as warm as the current makes it
 * @param aircraft whether the aircraft table was asked for
 */
record SizingCase(
        double currentA,
        Lengths lengths,
        FixedReturn fixed,
        Optional<Double> temperatureC,
        DropLimit limit,
        List<ConductorSize> candidates,
        Surroundings surroundings,
        double supplyV,
        @Nullable DropRule circuit,
        boolean aircraft) {

    static SizingCase of(ConductorSizing.Input input) {
        Checked checked = new Checked();
        double supplyV = checked.supply(input.supplyV());
        double currentA = checked.load(input.load(), input.limit().circuit(), supplyV);
        double lengthM = checked.length(input.run());
        ReturnPath path = Checked.path(input.returnPath(), input.limit().circuit());
        double chassisOhm =
                checked.chassis(path, input.fixed().chassisOhm(), input.limit().circuit());
        double jointsOhm = checked.ohm("/jointsOhm", input.fixed().jointsOhm());
        Surroundings surroundings = checked.surroundings(input.laying(), supplyV);
        double givenC = checked.temperature("/temperatureC", input.temperatureC(), Copper.REFERENCE_C);
        DropLimit limit = checked.limit(input.limit(), supplyV);
        checked.reject();
        return new SizingCase(
                currentA,
                new Lengths(lengthM, path == ReturnPath.WIRE ? 2 * lengthM : lengthM),
                new FixedReturn(
                        chassisOhm,
                        path == ReturnPath.CHASSIS && input.fixed().chassisOhm() == null,
                        chassisOhm + jointsOhm),
                input.temperatureC() == null ? Optional.empty() : Optional.of(givenC),
                limit,
                ConductorSize.listTrade(input.system() == null ? SizeSystem.AWG : input.system()),
                surroundings,
                supplyV,
                input.limit().circuit(),
                input.ampacityTable() == AmpacityTable.AC43_13);
    }

    boolean starter() {
        return circuit == DropRule.STARTER;
    }

    ConductorSizing.Result solve() {
        List<ByRule> rules = rules();
        Optional<ConductorSize> smallest = rules.stream().allMatch(r -> r.size() != null)
                ? rules.stream().map(SizingCase::sizeOf).max(Comparator.comparingDouble(ConductorSize::areaMm2))
                : Optional.empty();
        Optional<ConductorSize> usual =
                smallest.flatMap(least -> smallest(size -> size.areaMm2() >= least.areaMm2() && isUsual(size)));
        Optional<ConductorSize> thinnest = starter() ? Optional.empty() : smallest(this::carriesFuse);
        return new ConductorSizing.Result(
                currentA,
                new ConductorSizing.Sizes(
                        smallest.map(ConductorSize::name).orElse(null),
                        usual.map(ConductorSize::name).orElse(null),
                        smallest.map(size -> decider(rules, size)).orElse(Decider.NO_SUCH_SIZE),
                        smallest.map(size -> choice(size, 1)).orElse(null),
                        usual.map(size -> choice(size, FuseRule.USUAL_SHARE)).orElse(null),
                        thinnest.map(ConductorSize::name).orElse(null)),
                limit,
                rules,
                beside(smallest),
                smallest.map(this::dependsOn).orElse(List.of()),
                smallest.isPresent() ? List.of() : List.of(noSize()));
    }

    private static ConductorSize sizeOf(ByRule rule) {
        String size = rule.size();
        return ConductorSize.parse(size == null ? "" : size);
    }

    private List<ByRule> rules() {
        List<ByRule> rules = new ArrayList<>();
        rules.add(rule(Decider.DROP, smallest(s -> dropV(s) <= limit.newWireV()), this::dropV, limit.newWireV()));
        if (starter()) {
            double mostOhm = starterCableOhm();
            rules.add(rule(Decider.STARTER_RESISTANCE, smallest(s -> wiresOhm(s) <= mostOhm), this::wiresOhm, mostOhm));
        } else {
            rules.add(rule(Decider.AMPACITY, smallest(this::carriesFuse), this::allowedA, leastFuseA()));
        }
        double leastMm2 = starter()
                ? StrengthRule.leastStarterMm2(lengths.lengthM(), DropLimit.nominalV(supplyV))
                : StrengthRule.leastMm2(surroundings.bundleAsked() > 1);
        rules.add(rule(Decider.STRENGTH, smallest(s -> s.areaMm2() >= leastMm2), ConductorSize::areaMm2, leastMm2));
        return rules;
    }

    private ByRule rule(
            Decider decider, Optional<ConductorSize> size, ToDoubleFunction<ConductorSize> figure, double limitFigure) {
        ConductorSize thickest = candidates.get(candidates.size() - 1);
        return new ByRule(
                decider,
                size.map(ConductorSize::name).orElse(null),
                figure.applyAsDouble(size.orElse(thickest)),
                limitFigure);
    }

    /** The requirement that asks for that size; of several the first. */
    private static Decider decider(List<ByRule> rules, ConductorSize chosen) {
        return rules.stream()
                .filter(r -> chosen.name().equals(r.size()))
                .max(Comparator.comparingInt(SizingCase::weight))
                .orElseThrow()
                .rule();
    }

    /** A size that would be chosen without it is not decided by strength. */
    private static int weight(ByRule rule) {
        return switch (rule.rule()) {
            case AMPACITY, STARTER_RESISTANCE -> 2;
            case DROP -> 1;
            case STRENGTH, NO_SUCH_SIZE -> 0;
        };
    }

    private double dropV(ConductorSize size) {
        return currentA * (ohmPerM(size) * lengths.wireM() + fixed.fixedOhm());
    }

    private double temperatureC(ConductorSize size) {
        if (temperatureC.isPresent()) {
            return temperatureC.get();
        }
        double ambientC = surroundings.conditions().ambientC();
        return starter() ? ambientC : surroundings.ampacity(size).loadedC(currentA);
    }

    /** Per metre of wire as warm as the load makes it. */
    double ohmPerM(ConductorSize size) {
        return size.wireOhmPerM(temperatureC(size));
    }

    /** Both cables of a starter at 20 degrees, as the manuals measure them; the body has its own share. */
    private double wiresOhm(ConductorSize size) {
        return size.wireOhmPerM(Copper.REFERENCE_C) * lengths.wireM();
    }

    private double starterCableOhm() {
        double bothOhm = CrankingRule.cablesNewOhm(currentA, false, DropLimit.nominalV(supplyV));
        return fixed.chassisOhm() > 0 ? CrankingRule.CABLE_SHARE_WITH_CHASSIS * bothOhm : bothOhm;
    }

    private double leastFuseA() {
        return FuseRule.smallest(currentA, true).map(FuseRule.Rating::ratingA).orElse(currentA / FuseRule.CHOSEN_SHARE);
    }

    private boolean carriesFuse(ConductorSize size) {
        return allowedA(size) >= leastFuseA();
    }

    private double allowedA(ConductorSize size) {
        return aircraft
                ? aircraft(size).map(Ampacity::allowedA).orElse(0.0)
                : surroundings.ampacity(size).allowedA();
    }

    private Optional<Ampacity> aircraft(ConductorSize size) {
        return Ampacity.find(
                size,
                AmpacityTable.AC43_13,
                Ampacity.Conditions.of(
                        surroundings.conditions().insulationC(),
                        surroundings.conditions().ambientC()));
    }

    private boolean isUsual(ConductorSize size) {
        double mostV = Math.min(limit.goodV(), limit.newWireV());
        // No wire makes up for a chassis that takes most of it: the wire is then held to its own share.
        boolean littleDrop = dropV(size) <= mostV
                || (fixed.chassisOhm() > 0
                        && dropV(size) <= limit.newWireV()
                        && currentA * wiresOhm(size) <= CrankingRule.CABLE_SHARE_WITH_CHASSIS * mostV);
        return littleDrop
                && (starter()
                        ? wiresOhm(size) <= (1 - Ratio.BAND) * starterCableOhm()
                        : leastFuseA() <= FuseRule.USUAL_SHARE * allowedA(size));
    }

    private Choice choice(ConductorSize size, double share) {
        Optional<FuseRule.Rating> fuse = starter()
                ? Optional.empty()
                : FuseRule.smallest(currentA, true).filter(r -> r.ratingA() <= share * allowedA(size) * (1 + 1e-9));
        return new Choice(
                size.name(),
                size.areaMm2(),
                dropV(size),
                allowedA(size),
                fuse.map(FuseRule.Rating::ratingA).orElse(null),
                fuse.map(FuseRule.Rating::kind).orElse(null),
                temperatureC(size),
                fuse.isEmpty() || aircraft
                        ? null
                        : WireFindings.overloadC(fuse.get().ratingA(), surroundings.ampacity(size)));
    }

    private List<Dependence> dependsOn(ConductorSize size) {
        return starter() || aircraft
                ? List.of()
                : surroundings
                        .tried(conditions -> FuseRule.judgeWire(
                                leastFuseA(),
                                WireAmpacity.of(size.areaMm2(), conditions).allowedA()))
                        .turns();
    }

    private List<ConductorSizing.Beside> beside(Optional<ConductorSize> chosen) {
        List<ConductorSizing.Beside> beside = new ArrayList<>();
        double leftV = limit.newWireV() - currentA * fixed.fixedOhm();
        if (leftV > 0) {
            double needed = ConductorSizing.circularMils(currentA, lengths.wireM() / Copper.METRES_PER_FOOT, leftV);
            beside.add(new ConductorSizing.Beside(
                    ConductorSizing.CIRCULAR_MILS,
                    smallest(s -> s.circularMils() >= needed)
                            .map(ConductorSize::name)
                            .orElse(null),
                    needed));
        }
        chosen.filter(size -> !starter())
                .ifPresent(size -> beside.add(new ConductorSizing.Beside(
                        "heat-law", size.name(), surroundings.ampacity(size).lawA())));
        return beside;
    }

    private Finding noSize() {
        boolean fixedTooHigh = currentA * fixed.fixedOhm() > limit.newWireV();
        return Finding.warning(SizingFinding.NO_SUCH_SIZE.with(arg("currentA", currentA)), limit.basis())
                .remedy(
                        fixedTooHigh
                                ? SizingText.CLEAN_CHASSIS_AND_JOINTS.with()
                                : CircuitMessage.SHORTEN_OR_DIVIDE.with());
    }

    List<Basis> ampacityBasis() {
        return aircraft
                ? List.of(AmpacityTable.AC43_13.table().basis("continuous current in an aircraft"))
                : surroundings.ampacity(candidates.get(0)).basis();
    }

    List<Assumption> assumptions() {
        List<Assumption> said = new ArrayList<>(surroundings.assumptions());
        if (fixed.chassisAssumed()) {
            said.add(SizingAssumption.chassis(fixed.chassisOhm(), currentA, Checked.POOR_CHASSIS_OHM));
        }
        if (circuit == null && limit.circuit() != null) {
            said.add(SizingAssumption.CIRCUIT.of(Map.of("circuit", "general")));
        }
        return said;
    }

    private Optional<ConductorSize> smallest(Predicate<ConductorSize> fits) {
        return candidates.stream().filter(fits).findFirst();
    }

    /**
     * The run, one way, and the wire in it.
     *
     * @param lengthM length of the run, one way
     * @param wireM length of wire in all: twice the run with a return wire
     */
    record Lengths(double lengthM, double wireM) {}

    /**
     * What does not depend on the size.
     *
     * @param chassisOhm of the chassis return, 0 without one
     * @param fixedOhm chassis and joints
     */
    record FixedReturn(double chassisOhm, boolean chassisAssumed, double fixedOhm) {}
}
