package loomwright.sizing;

import static loomwright.message.Arg.arg;
import static loomwright.message.Arg.messages;
import static loomwright.message.Arg.quantities;
import static loomwright.message.Arg.texts;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import loomwright.answer.Assumption;
import loomwright.answer.Basis;
import loomwright.answer.Finding;
import loomwright.answer.InputError;
import loomwright.conductor.AdiabaticLimit;
import loomwright.conductor.ConductorSize;
import loomwright.conductor.FuseCurve;
import loomwright.conductor.LinkRating;
import loomwright.conductor.ReferenceTable;
import loomwright.conductor.ReferenceTables;
import loomwright.conductor.WireHeating;
import loomwright.judgement.Dependence;
import loomwright.judgement.DropRule;
import loomwright.judgement.Level;
import loomwright.judgement.Verdict;
import loomwright.judgement.wire.FuseRule;
import loomwright.judgement.wire.WireAmpacity;
import loomwright.message.Arg;
import loomwright.message.Message;
import org.jspecify.annotations.Nullable;

/**
 * A checked {@link FuseChoice.Input}.
 *
 * @param loadA continuous or short load; empty if only the wire is asked about
 */
record FuseCase(
        Optional<Double> loadA,
        boolean continuous,
        Optional<Double> fittedA,
        Optional<Double> inrushA,
        double inrushS,
        ConductorSize size,
        Surroundings surroundings,
        WireAmpacity ampacity,
        Optional<Double> prospectiveA,
        @Nullable DropRule circuit) {
    static final Basis SHORT_BASIS = Basis.verified(
            "a short circuit may warm PVC to 160 C, cross-linked insulation to 250 C", "IEC 60724 in a secondary page");

    private static final double PVC_MOST_C = 105;
    private static final double SHORT_PVC_C = 160;
    private static final double SHORT_OTHER_C = 250;
    /** Copper and current from which a cable may well be a battery or starter cable. */
    private static final double HEAVY_CABLE_MM2 = 13;

    private static final double HEAVY_CURRENT_A = 100;
    /** A short circuit should drive at least this multiple of the rating. */
    private static final double FAST_MULTIPLE = 6;

    /**
     * A thicker wire whose fuse carries the load.
     *
     * @param size the thinnest of the same standard
     * @param fuseA the fuse
     */
    record BetterWire(String size, double fuseA) {
        Message fit() {
            return SizingText.FIT_SIZE_AND_FUSE.with(arg("size", size), arg("ratingA", fuseA));
        }
    }

    static FuseCase of(FuseChoice.Input input) {
        Checked checked = new Checked();
        double supplyV = checked.supply(input.supplyV());
        boolean asked = input.load().currentA() != null || input.load().powerW() != null;
        double loadA = asked ? checked.load(input.load(), input.circuit(), supplyV) : 0;
        ConductorSize size = checked.size("/size", input.size());
        boolean inrush = input.surge().inrushA() != null || input.surge().inrushS() != null;
        double inrushA = inrush ? checked.current("/inrushA", input.surge().inrushA()) : loadA;
        double inrushS = inrush ? checked.number("/inrushS", input.surge().inrushS(), 1e-6, 3600) : 0;
        checked.check(
                !inrush || asked,
                InputError.Code.MISSING,
                "/currentA",
                null,
                AcceptedRun.LOAD,
                texts("names", List.of("currentA", "powerW")));
        double fittedA = checked.optional("/ratingA", input.ratingA(), 0.1, 1000, 1);
        Surroundings surroundings = checked.surroundings(input.laying(), supplyV);
        if (input.prospectiveA() != null) {
            checked.current("/prospectiveA", input.prospectiveA());
        }
        checked.reject();
        return new FuseCase(
                asked ? Optional.of(loadA) : Optional.empty(),
                !Boolean.FALSE.equals(input.continuous()),
                input.ratingA() == null ? Optional.empty() : Optional.of(fittedA),
                inrush ? Optional.of(inrushA) : Optional.empty(),
                inrushS,
                size,
                surroundings,
                surroundings.ampacity(size),
                Optional.ofNullable(input.prospectiveA()),
                input.circuit());
    }

    FuseChoice.Result solve() {
        List<FuseChoice.Rating> ratings =
                FuseRule.series().stream().map(this::judge).toList();
        boolean unfused = circuit == DropRule.STARTER;
        Optional<FuseChoice.Rating> best = unfused ? Optional.empty() : best(ratings);
        Optional<FuseChoice.Rating> fitted = fittedA.map(a -> judge(new FuseRule.Rating(a, kindOf(a))));
        Optional<BetterWire> thicker = unfused || loadA.isEmpty() || best.isPresent() ? Optional.empty() : betterSize();
        return new FuseChoice.Result(
                loadA.orElse(null),
                new FuseChoice.ChosenFuse(
                        best.map(FuseChoice.Rating::ratingA).orElse(null),
                        best.map(FuseChoice.Rating::kind).orElse(null),
                        best.map(r -> why(r, ratings)).orElseGet(() -> whyNot(unfused, thicker)),
                        FuseRule.largest(ampacity.allowedA())
                                .map(FuseRule.Rating::ratingA)
                                .orElse(null)),
                ratings,
                fitted.orElse(null),
                fitted.or(() -> best).map(r -> overloads(r.ratingA())).orElse(List.of()),
                new FuseChoice.WireLimits(
                        ampacity.allowedA(),
                        ampacity.lawA(),
                        thicker.map(BetterWire::size).orElse(null),
                        startC(),
                        limitC(),
                        ampacity.timeConstantS()),
                LinkRating.find(size, surroundings.conditions().ambientC()).orElse(null),
                unfused,
                dependsOn(fitted.or(() -> best)),
                findings(best, fitted, unfused, thicker));
    }

    private static FuseRule.Kind kindOf(double ratingA) {
        return FuseRule.series().stream()
                .filter(r -> r.ratingA() >= ratingA)
                .findFirst()
                .map(FuseRule.Rating::kind)
                .orElse(FuseRule.Kind.BOLT_DOWN);
    }

    private Optional<FuseChoice.Rating> best(List<FuseChoice.Rating> ratings) {
        List<FuseChoice.Rating> suitable =
                ratings.stream().filter(FuseChoice.Rating::suits).toList();
        if (loadA.isEmpty()) {
            return suitable.stream().reduce((smaller, larger) -> larger);
        }
        // For the switch-on a larger one is taken only where the wire allows it amply; else the smallest is to be slow.
        return suitable.stream()
                .filter(r -> r.inrush() != FuseChoice.Inrush.MAY_BLOW)
                .filter(r -> r.ratingA() == suitable.get(0).ratingA() || r.ofAmpacity() <= FuseRule.USUAL_SHARE)
                .findFirst()
                .or(() -> suitable.stream().findFirst());
    }

    private Optional<BetterWire> betterSize() {
        double loaded = loadA.orElse(0.0);
        return FuseRule.smallest(loaded, continuous)
                .flatMap(fuse -> ConductorSize.list(size.system()).stream()
                        .filter(s -> surroundings.ampacity(s).allowedA() >= fuse.ratingA())
                        .findFirst()
                        .map(s -> new BetterWire(s.name(), fuse.ratingA())));
    }

    FuseChoice.Rating judge(FuseRule.Rating rating) {
        double ratingA = rating.ratingA();
        Verdict wire = FuseRule.judgeWire(ratingA, ampacity.allowedA());
        boolean carries = loadA.map(a -> a <= (continuous ? FuseRule.CHOSEN_SHARE : 1) * ratingA * (1 + 1e-9))
                .orElse(true);
        double overloadC = ampacity.temperatureC(WireFindings.overloadA(ratingA));
        FuseChoice.Inrush inrush = inrush(ratingA);
        return new FuseChoice.Rating(
                ratingA,
                rating.kind(),
                colour(rating),
                loadA.map(a -> carries
                                ? Level.FITS
                                : FuseRule.judgeLoad(a, ratingA, continuous).level())
                        .orElse(null),
                wire.level(),
                wire.borderline(),
                ampacity.allowedA() > 0 ? ratingA / ampacity.allowedA() : Double.MAX_VALUE,
                Double.isFinite(overloadC) ? overloadC : null,
                inrush,
                carries && wire.level() == Level.FITS && inrush != FuseChoice.Inrush.BLOWS);
    }

    private List<FuseChoice.Overload> overloads(double ratingA) {
        List<FuseChoice.Overload> overloads = new ArrayList<>();
        FuseCurve.BLADE.multiples().forEach(m -> overloads.add(overload(m, m * ratingA)));
        prospectiveA.ifPresent(a -> overloads.add(overload(a / ratingA, a)));
        return overloads;
    }

    private static String colour(FuseRule.Rating rating) {
        if (rating.kind() != FuseRule.Kind.BLADE) {
            return "";
        }
        ReferenceTable table = ReferenceTables.get("blade-fuse-ratings");
        return table.rows().stream()
                .filter(row -> table.getNumber(row, "ratingA") == rating.ratingA())
                .map(row -> table.getCell(row, "colour"))
                .findFirst()
                .orElse("");
    }

    private FuseChoice.Inrush inrush(double ratingA) {
        if (inrushA.isEmpty()) {
            return FuseChoice.Inrush.NOT_ASKED;
        }
        double multiple = inrushA.get() / ratingA;
        if (multiple <= 1 || inrushS < FuseCurve.BLADE.shortestS(multiple)) {
            return FuseChoice.Inrush.HOLDS;
        }
        boolean blows =
                FuseCurve.BLADE.longestS(multiple).filter(s -> inrushS >= s).isPresent();
        return blows ? FuseChoice.Inrush.BLOWS : FuseChoice.Inrush.MAY_BLOW;
    }

    /** Fuse and wire at one current. */
    FuseChoice.Overload overload(double multiple, double amps) {
        Optional<Double> fuseS = FuseCurve.BLADE.longestS(multiple);
        // The fuse holds no more than its rating, so no larger load has warmed the wire before.
        double fromC = Math.min(startC(), Math.min(limitC(), ampacity.temperatureC(amps / multiple)));
        double adiabaticS = AdiabaticLimit.timeS(size.areaMm2(), amps, fromC, limitC());
        double lossS = withLossS(amps, fromC);
        return new FuseChoice.Overload(
                multiple,
                amps,
                fuseS.orElse(null),
                adiabaticS,
                Double.isInfinite(lossS) ? null : lossS,
                protection(fuseS.orElse(Double.POSITIVE_INFINITY), adiabaticS, lossS));
    }

    /** Time of the wire to its limit at a current, no heat lost. */
    double adiabaticS(double amps) {
        return AdiabaticLimit.timeS(size.areaMm2(), amps, startC(), limitC());
    }

    /** The same with heat lost, infinite where it never gets there. Heat lost only lengthens the time. */
    double withLossS(double amps) {
        return withLossS(amps, startC());
    }

    private double withLossS(double amps, double fromC) {
        double endC = ampacity.temperatureC(amps);
        double adiabaticS = AdiabaticLimit.timeS(size.areaMm2(), amps, fromC, limitC());
        return Double.isInfinite(endC)
                ? adiabaticS
                : Math.max(adiabaticS, WireHeating.timeToLimitS(fromC, limitC(), endC, ampacity.timeConstantS()));
    }

    private static FuseChoice.Protection protection(double fuseS, double adiabaticS, double lossS) {
        if (Double.isInfinite(lossS)) {
            return FuseChoice.Protection.NEVER_TOO_HOT;
        }
        if (fuseS <= adiabaticS) {
            return FuseChoice.Protection.BY_ADIABATIC_LIMIT;
        }
        return fuseS <= lossS ? FuseChoice.Protection.BY_TIME_CONSTANT : FuseChoice.Protection.NOT_PROTECTED;
    }

    double startC() {
        return Math.min(limitC(), ampacity.temperatureC(loadA.orElse(0.0)));
    }

    double limitC() {
        double insulationC = surroundings.conditions().insulationC();
        return insulationC <= PVC_MOST_C ? SHORT_PVC_C : Math.max(SHORT_OTHER_C, insulationC);
    }

    private List<Dependence> dependsOn(Optional<FuseChoice.Rating> judged) {
        return judged.map(r -> surroundings
                        .tried(conditions -> FuseRule.judgeWire(
                                r.ratingA(),
                                WireAmpacity.of(size.areaMm2(), conditions).allowedA()))
                        .turns())
                .orElse(List.of());
    }

    private List<Finding> findings(
            Optional<FuseChoice.Rating> best,
            Optional<FuseChoice.Rating> fitted,
            boolean unfused,
            Optional<BetterWire> thicker) {
        List<Finding> findings = new ArrayList<>();
        fitted.ifPresent(f -> findings.addAll(WireFindings.ofFuse(
                loadA.map(a -> FuseRule.judgeLoad(a, f.ratingA(), continuous)).orElse(null),
                FuseRule.judgeWire(f.ratingA(), ampacity.allowedA()),
                ampacity.temperatureC(WireFindings.overloadA(f.ratingA())),
                prospectiveA.stream()
                        .filter(a -> overload(a / f.ratingA(), a).protection() == FuseChoice.Protection.NOT_PROTECTED)
                        .toList(),
                best.map(FuseChoice.Rating::ratingA).orElse(null),
                thicker.orElse(null))));
        if (best.isEmpty() && !unfused) {
            findings.add(Finding.warning(
                            SizingFinding.NO_SUCH_FUSE.with(
                                    arg("size", size.name()),
                                    arg("currentA", loadA.orElse(0.0)),
                                    arg("ampacityA", ampacity.allowedA())),
                            FuseRule.WIRE_BASIS)
                    .remedy(thicker.map(BetterWire::fit).orElseGet(SizingText.DIVIDE_LOAD::with)));
        }
        if (best.isPresent()
                && prospectiveA
                        .filter(a -> a < FAST_MULTIPLE * best.get().ratingA())
                        .isPresent()) {
            findings.add(Finding.note(
                    SizingFinding.FUSE_SLOW_IN_SHORT.with(
                            arg("prospectiveA", prospectiveA.get()),
                            arg("ratingA", best.get().ratingA())),
                    Basis.computed("a short circuit should drive 6 times the rating", "opening time limits of fuses")));
        }
        return findings;
    }

    private Message why(FuseChoice.Rating chosen, List<FuseChoice.Rating> ratings) {
        boolean mayBlow = chosen.inrush() == FuseChoice.Inrush.MAY_BLOW;
        List<Arg> arguments = new ArrayList<>(List.of(
                arg("ratingA", chosen.ratingA()),
                arg("kind", chosen.kind()),
                arg("size", size.name()),
                arg("load", loadA.isPresent() ? "given" : "none"),
                arg("mayBlow", mayBlow ? "yes" : "no")));
        arguments.add(quantities(
                "passedOverA",
                mayBlow
                        ? List.of()
                        : ratings.stream()
                                .filter(r -> loadA.isPresent() && r.suits() && r.ratingA() < chosen.ratingA())
                                .limit(1)
                                .map(FuseChoice.Rating::ratingA)
                                .toList()));
        return SizingText.FUSE_CHOSEN.with(arguments.toArray(new Arg[0]));
    }

    private Message whyNot(boolean unfused, Optional<BetterWire> thicker) {
        return unfused
                ? SizingText.STARTER_CABLES_UNFUSED.with()
                : SizingText.NO_FUSE_CHOSEN.with(
                        arg("size", size.name()),
                        messages("fit", thicker.map(BetterWire::fit).stream().toList()));
    }

    List<Assumption> assumptions() {
        List<Assumption> said = new ArrayList<>(surroundings.assumptions());
        double loaded = loadA.orElse(0.0);
        if (circuit != DropRule.STARTER && size.areaMm2() >= HEAVY_CABLE_MM2 && loaded >= HEAVY_CURRENT_A) {
            said.add(SizingAssumption.NOT_A_STARTER_CABLE.of(Map.of()));
        }
        if (prospectiveA.filter(a -> a > FuseChoice.BREAKING_CAPACITY_A).isPresent()) {
            said.add(SizingAssumption.BREAKING_CAPACITY.of(Map.of(), arg("breakingA", FuseChoice.BREAKING_CAPACITY_A)));
        }
        said.add(SizingAssumption.FUSE_BOX.of(Map.of("fuseBoxC", 25)));
        return said;
    }
}
