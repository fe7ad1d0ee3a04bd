package loomwright.conductor;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import loomwright.answer.InputError;
import org.jspecify.annotations.Nullable;

/** A checked {@link FuseChoice.Input}. */
record FuseCase(
        double currentA,
        Optional<Double> inrushA,
        double inrushS,
        ConductorSize size,
        Ampacity.Conditions conditions,
        boolean insulationAssumed,
        double limitC,
        Optional<Double> prospectiveA,
        Optional<Ampacity> ampacity,
        Optional<Double> timeConstantS,
        @Nullable CircuitKind circuit) {
    /** Copper and current from which a cable may well be a battery or starter cable. */
    private static final double HEAVY_CABLE_MM2 = 13;

    private static final double HEAVY_CURRENT_A = 100;

    static FuseCase of(FuseChoice.Input input) {
        Checked checked = new Checked();
        double currentA = checked.current("/currentA", input.currentA());
        ConductorSize size = checked.size("/size", input.size());
        boolean inrush = input.inrushA() != null || input.inrushS() != null;
        double inrushA = inrush ? checked.current("/inrushA", input.inrushA()) : currentA;
        double inrushS = inrush ? checked.number("/inrushS", input.inrushS(), 1e-6, 3600) : 0;
        Ampacity.Conditions conditions = checked.conditions(input.insulationC(), input.ambientC(), false, null, false);
        double limitC = checked.optional(
                "/limitC",
                input.limitC(),
                conditions.insulationC(),
                Copper.MAX_TEMPERATURE_C,
                conditions.insulationC());
        if (input.prospectiveA() != null) {
            checked.current("/prospectiveA", input.prospectiveA());
        }
        double givenTau = checked.optional("/timeConstantS", input.timeConstantS(), 0.1, 1e5, 0);
        AmpacityTable named = input.ampacityTable();
        Optional<Ampacity> ampacity = ampacity(size, conditions, named);
        checked.check(
                named == null || ampacity.isPresent(),
                InputError.Code.OUT_OF_RANGE,
                "/ampacityTable",
                named,
                "a table that lists the wire; this one: " + (named == null ? "" : named.range()));
        checked.check(
                input.timeConstantS() == null || ampacity.isPresent(),
                InputError.Code.CONTRADICTION,
                "/timeConstantS",
                input.timeConstantS(),
                "a time constant only for a wire that an ampacity table lists");
        checked.reject();
        return new FuseCase(
                currentA,
                inrush ? Optional.of(inrushA) : Optional.empty(),
                inrushS,
                size,
                conditions,
                input.insulationC() == null,
                limitC,
                Optional.ofNullable(input.prospectiveA()),
                ampacity,
                ampacity.map(a -> givenTau > 0
                        ? givenTau
                        : WireHeating.timeConstantS(size, a.riseK(conditions.ambientC()), a.ratingC(), a.allowedA())),
                input.circuit());
    }

    private static Optional<Ampacity> ampacity(
            ConductorSize size, Ampacity.Conditions conditions, @Nullable AmpacityTable named) {
        List<AmpacityTable> tables = named == null ? List.of(AmpacityTable.values()) : List.of(named);
        return tables.stream()
                .flatMap(t -> Ampacity.find(size, t, conditions).stream())
                .filter(a -> a.ratingC() > conditions.ambientC())
                .findFirst();
    }

    FuseChoice.Result solve() {
        List<FuseChoice.Rating> ratings = judgeStandard();
        boolean unfused = circuit == CircuitKind.STARTER;
        Optional<FuseChoice.Rating> best = unfused ? Optional.empty() : best(ratings);
        return new FuseChoice.Result(
                best.map(FuseChoice.Rating::ratingA).orElse(null),
                best.map(r -> why(r, ratings)).orElseGet(() -> whyNot(ratings, unfused)),
                ratings,
                ampacity.orElse(null),
                startC(),
                limitC,
                timeConstantS.orElse(null),
                LinkRating.find(size, conditions.ambientC()).orElse(null),
                unfused,
                notes());
    }

    List<FuseChoice.Rating> judgeStandard() {
        ReferenceTable table = ReferenceTables.get("blade-fuse-ratings");
        return table.rows().stream()
                .map(row -> judge(table.getNumber(row, "ratingA"), table.getCell(row, "colour")))
                .toList();
    }

    private Optional<FuseChoice.Rating> best(List<FuseChoice.Rating> ratings) {
        List<FuseChoice.Rating> suitable =
                ratings.stream().filter(FuseChoice.Rating::suits).toList();
        return suitable.stream()
                .filter(r -> r.inrush() != FuseChoice.Inrush.MAY_BLOW)
                .findFirst()
                .or(() -> suitable.stream().findFirst());
    }

    FuseChoice.Rating judge(double ratingA, String colour) {
        List<FuseChoice.Overload> overloads = new ArrayList<>();
        FuseCurve.multiples().forEach(m -> overloads.add(overload(m, m * ratingA)));
        prospectiveA.ifPresent(a -> overloads.add(overload(a / ratingA, a)));
        return new FuseChoice.Rating(
                ratingA,
                colour,
                currentA <= FuseChoice.LOAD_SHARE * ratingA,
                ampacity.map(a -> ratingA <= a.allowedA()).orElse(null),
                inrush(ratingA),
                overloads,
                overloads.stream().noneMatch(o -> o.protection() == FuseChoice.Protection.NOT_PROTECTED));
    }

    private FuseChoice.Inrush inrush(double ratingA) {
        if (inrushA.isEmpty()) {
            return FuseChoice.Inrush.NOT_ASKED;
        }
        double multiple = inrushA.get() / ratingA;
        if (multiple <= 1 || inrushS < FuseCurve.shortestS(multiple)) {
            return FuseChoice.Inrush.HOLDS;
        }
        boolean blows = FuseCurve.longestS(multiple).filter(s -> inrushS >= s).isPresent();
        return blows ? FuseChoice.Inrush.BLOWS : FuseChoice.Inrush.MAY_BLOW;
    }

    /** Fuse and wire at one current. */
    FuseChoice.Overload overload(double multiple, double amps) {
        Optional<Double> fuseS = FuseCurve.longestS(multiple);
        double adiabaticS = adiabaticS(amps);
        double lossS = withLossS(amps).orElse(0.0);
        return new FuseChoice.Overload(
                multiple,
                amps,
                fuseS.orElse(null),
                adiabaticS,
                ampacity.isEmpty() || Double.isInfinite(lossS) ? null : lossS,
                protection(fuseS.orElse(Double.POSITIVE_INFINITY), adiabaticS, lossS));
    }

    /** Time of the wire to its limit at a current, no heat lost. */
    double adiabaticS(double amps) {
        return AdiabaticLimit.timeS(size.areaMm2(), amps, startC(), limitC);
    }

    /**
     * The same with heat lost, infinite where it never gets there; empty where no ampacity is known. The heat balance takes
     * the resistance of the hot wire from the start, so at large currents it falls short of the adiabatic time, whose
     * resistance grows with the temperature. Heat lost only lengthens the time: the longer of the two holds.
     */
    Optional<Double> withLossS(double amps) {
        return ampacity.flatMap(a -> timeConstantS.map(tau -> Math.max(
                adiabaticS(amps),
                WireHeating.timeToLimitS(startC(), limitC, a.steadyC(amps, conditions.ambientC()), tau))));
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

    private double startC() {
        return ampacity.map(a -> a.steadyC(currentA, conditions.ambientC())).orElse(conditions.ambientC());
    }

    private String why(FuseChoice.Rating chosen, List<FuseChoice.Rating> ratings) {
        String text = FigureText.text(chosen.ratingA()) + " A (" + chosen.colour() + "): carries the load, protects "
                + size.name();
        if (chosen.inrush() == FuseChoice.Inrush.MAY_BLOW) {
            return text + "; it may blow at switch-on, no larger one suits";
        }
        return ratings.stream()
                .filter(r -> r.suits() && r.ratingA() < chosen.ratingA())
                .findFirst()
                .map(r -> text + "; " + FigureText.text(r.ratingA())
                        + " A would suit but for the switch-on, where it may blow")
                .orElse(text);
    }

    private String whyNot(List<FuseChoice.Rating> ratings, boolean unfused) {
        if (unfused) {
            return "battery and starter cables are usually unfused: keep them short, apart and guarded against chafing";
        }
        if (ampacity.filter(a -> currentA > a.allowedA()).isPresent()) {
            return "no fuse: the load itself is above the ampacity of " + size.name() + ", take a thicker wire";
        }
        List<FuseChoice.Rating> carrying =
                ratings.stream().filter(FuseChoice.Rating::carriesLoad).toList();
        return carrying.stream()
                .filter(r -> r.inrush() != FuseChoice.Inrush.BLOWS)
                .findFirst()
                .or(() -> carrying.stream().findFirst())
                .map(r -> "no blade fuse suits: " + FigureText.text(r.ratingA()) + " A " + FuseChoice.obstacle(r)
                        + (r.inrush() == FuseChoice.Inrush.BLOWS ? "" : ", take a thicker wire"))
                .orElse("no blade fuse of the standard series carries this load at " + FuseChoice.LOAD_PERCENT
                        + " of its rating");
    }

    private List<String> notes() {
        List<String> notes = new ArrayList<>();
        if (insulationAssumed) {
            notes.add(Checked.Defaults.INSULATION_NOTE);
        }
        if (ampacity.isEmpty()) {
            notes.add("no ampacity table lists a wire as thin as " + size.name() + ": judged without heat loss, from"
                    + " the ambient temperature");
        }
        if (circuit != CircuitKind.STARTER && size.areaMm2() >= HEAVY_CABLE_MM2 && currentA >= HEAVY_CURRENT_A) {
            notes.add("if this is the battery or starter cable: those are usually unfused");
        }
        if (prospectiveA.filter(a -> a > FuseChoice.BREAKING_CAPACITY_A).isPresent()) {
            notes.add(
                    "the prospective current is above the 1000 A that blade fuses must be able to break (ISO 8820-3)");
        }
        notes.add("a fuse in hot surroundings opens earlier: its maker's derating comes on top");
        return notes;
    }
}
