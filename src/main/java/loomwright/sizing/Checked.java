package loomwright.sizing;

import static loomwright.message.Arg.arg;
import static loomwright.message.Arg.plain;
import static loomwright.message.Arg.texts;

import java.util.List;
import java.util.Optional;
import loomwright.answer.Accepted;
import loomwright.answer.InputError;
import loomwright.answer.InputErrors;
import loomwright.answer.RejectedInput;
import loomwright.circuit.Place;
import loomwright.conductor.ConductorSize;
import loomwright.conductor.Copper;
import loomwright.conductor.SizeSystem;
import loomwright.judgement.CrankingRule;
import loomwright.judgement.DropRule;
import loomwright.judgement.LampLaw;
import loomwright.judgement.wire.WireConditions;
import loomwright.message.Arg;
import loomwright.message.MessageCode;
import org.jspecify.annotations.Nullable;

/**
 * Reads the values of an input and collects its faults. After a fault a method returns a harmless value, so that the
 * rest is still inspected; {@link #reject()} must be called before anything is calculated.
 */
final class Checked {
    static final double MAX_CURRENT_A = 1e5;
    private static final double MIN_CURRENT_A = 1e-6;
    private static final double MIN_LENGTH_M = 1e-3;
    private static final double MAX_LENGTH_M = 1e4;
    private static final double MAX_OHM = 1e6;
    private static final double MIN_SUPPLY_V = 3;
    private static final double MAX_SUPPLY_V = 100;
    private static final double DEFAULT_SUPPLY_V = 12;
    private static final int MAX_JOINTS = 50;
    /** From this voltage on 33 CFR 183.435(b) requires the bundle factors. */
    static final double BUNDLE_RULE_FROM_V = 50;
    /** Chassis with the earth joint of a branch circuit, 5 milliohm each: common practice, no source. */
    static final double USUAL_CHASSIS_OHM = 0.010;
    /** The same in bad order, for comparison. */
    static final double POOR_CHASSIS_OHM = 0.020;

    private final InputErrors faults = new InputErrors();

    void reject() {
        faults.reject();
    }

    void check(
            boolean holds,
            InputError.Code code,
            String pointer,
            @Nullable Object value,
            MessageCode accepted,
            Arg... arguments) {
        faults.check(holds, code, pointer, value, accepted, arguments);
    }

    /** A required number in a range. */
    double number(String pointer, @Nullable Double value, double min, double max) {
        faults.required(pointer, value);
        return optional(pointer, value, min, max, min);
    }

    /** A number in a range, or its default. */
    double optional(String pointer, @Nullable Double value, double min, double max, double otherwise) {
        faults.range(pointer, value, min, max);
        return value != null && value >= min && value <= max ? value : otherwise;
    }

    double current(String pointer, @Nullable Double value) {
        return number(pointer, value, MIN_CURRENT_A, MAX_CURRENT_A);
    }

    double supply(@Nullable Double supplyV) {
        return optional("/supplyV", supplyV, MIN_SUPPLY_V, MAX_SUPPLY_V, DEFAULT_SUPPLY_V);
    }

    double temperature(String pointer, @Nullable Double value, double otherwise) {
        return optional(pointer, value, Copper.MIN_TEMPERATURE_C, Copper.MAX_TEMPERATURE_C, otherwise);
    }

    /** A resistance, 0 allowed. */
    double ohm(String pointer, @Nullable Double value) {
        return optional(pointer, value, 0, MAX_OHM, 0);
    }

    /** How the current comes back: as given, else by a wire; not at all where the limit is of the live side alone. */
    static ReturnPath path(@Nullable ReturnPath given, @Nullable DropRule circuit) {
        if (given != null) {
            return given;
        }
        return circuit != null && circuit.ofLiveSide() ? ReturnPath.NONE : ReturnPath.WIRE;
    }

    /**
     * The resistance of the return by the chassis: as given, or the usual one. Nothing but with a chassis return.
     *
     * @return 0 without a chassis return
     */
    double chassis(ReturnPath path, @Nullable Double chassisOhm, @Nullable DropRule circuit) {
        boolean byChassis = path == ReturnPath.CHASSIS;
        check(
                byChassis || chassisOhm == null,
                InputError.Code.CONTRADICTION,
                "/chassisOhm",
                chassisOhm,
                AcceptedRun.ONLY_WITH,
                arg("name", "returnPath"),
                arg("value", "chassis"));
        double usual = circuit == DropRule.STARTER ? CrankingRule.CHASSIS_OHM : USUAL_CHASSIS_OHM;
        return byChassis ? optional("/chassisOhm", chassisOhm, 0, MAX_OHM, usual) : 0;
    }

    List<Double> joints(String pointer, List<Double> ohms) {
        check(
                ohms.size() <= MAX_JOINTS,
                InputError.Code.OVER_LIMIT,
                pointer,
                ohms.size(),
                Accepted.ENTRIES_AT_MOST,
                arg("max", MAX_JOINTS));
        for (int i = 0; i < ohms.size(); i++) {
            faults.range(pointer + "/" + i, ohms.get(i), 0, MAX_OHM);
        }
        return ohms;
    }

    /** A length that must be given, in metres or in feet. */
    double length(RunLength run) {
        Double metres = run.lengthM();
        Double feet = run.lengthFt();
        if (metres == null && feet == null) {
            check(
                    false,
                    InputError.Code.MISSING,
                    "/lengthM",
                    null,
                    AcceptedRun.LENGTH,
                    arg("metres", "lengthM"),
                    arg("feet", "lengthFt"));
        }
        return optionalLength("/lengthM", metres, "/lengthFt", feet).orElse(MIN_LENGTH_M);
    }

    /** A length in metres or in feet, or none. */
    Optional<Double> optionalLength(
            String metresPointer, @Nullable Double metres, String feetPointer, @Nullable Double feet) {
        check(
                metres == null || feet == null,
                InputError.Code.CONTRADICTION,
                feetPointer,
                feet,
                Accepted.NOT_BOTH,
                arg("first", metresPointer.substring(1)),
                arg("second", feetPointer.substring(1)));
        faults.range(metresPointer, metres, MIN_LENGTH_M, MAX_LENGTH_M);
        faults.range(feetPointer, feet, MIN_LENGTH_M, MAX_LENGTH_M / Copper.METRES_PER_FOOT);
        if (metres != null) {
            return Optional.of(metres);
        }
        return Optional.ofNullable(feet).map(ft -> ft * Copper.METRES_PER_FOOT);
    }

    /** A required size; after a fault some size. */
    ConductorSize size(String pointer, @Nullable String text) {
        faults.required(pointer, text);
        return optionalSize(pointer, text)
                .orElseGet(() -> ConductorSize.list(SizeSystem.AWG).get(0));
    }

    Optional<ConductorSize> optionalSize(String pointer, @Nullable String text) {
        if (text == null) {
            return Optional.empty();
        }
        try {
            return Optional.of(ConductorSize.parse(text));
        } catch (RejectedInput rejected) {
            rejected.faults().forEach(fault -> faults.add(fault.under(pointer)));
            return Optional.empty();
        }
    }

    /** What the wire is exposed to. */
    Surroundings surroundings(Laying laying, double supplyV) {
        Double ambientC = laying.ambientC();
        Integer bundleCount = laying.bundleCount();
        Boolean bundleFactors = laying.bundleFactors();
        Place place = laying.place();
        double rating = optional("/insulationC", laying.insulationC(), 40, 300, WireConditions.USUAL_INSULATION_C);
        double usual = WireConditions.usualAmbientC(place == null ? Place.CABIN : place);
        double ambient = temperature("/ambientC", ambientC, usual);
        int bundle = bundleCount == null ? 1 : bundleCount;
        check(
                bundle >= 1 && bundle <= 1000,
                InputError.Code.OUT_OF_RANGE,
                "/bundleCount",
                bundleCount,
                Accepted.NUMBER,
                plain("min", 1),
                plain("max", 1000));
        check(
                ambient < rating,
                InputError.Code.CONTRADICTION,
                "/ambientC",
                ambient,
                AcceptedRun.AMBIENT,
                arg("ratingC", rating));
        boolean applied = bundleFactors == null ? supplyV >= BUNDLE_RULE_FROM_V : bundleFactors;
        return new Surroundings(
                new WireConditions(rating, ambient, applied ? Math.max(1, bundle) : 1),
                Math.max(1, bundle),
                ambientC != null,
                laying.insulationC() != null,
                bundleCount != null);
    }

    /** The limit of the drop: given in volts or in per cent, or that of the kind of circuit. */
    DropLimit limit(PermittedDrop permitted, double supplyV) {
        Double limitV = permitted.limitV();
        Double limitPercent = permitted.limitPercent();
        check(
                limitV == null || limitPercent == null,
                InputError.Code.CONTRADICTION,
                "/limitPercent",
                limitPercent,
                Accepted.NOT_BOTH,
                arg("first", "limitV"),
                arg("second", "limitPercent"));
        faults.range("/limitV", limitV, 1e-3, MAX_SUPPLY_V).range("/limitPercent", limitPercent, 0.01, 99);
        return DropLimit.of(limitV, limitPercent, permitted.circuit(), supplyV);
    }

    /**
     * The current of a load: as given, or from its watts. A lamp draws by the law of filaments at the supply; anything
     * else its watts at the nominal voltage.
     */
    double load(LoadRating load, @Nullable DropRule circuit, double supplyV) {
        Double currentA = load.currentA();
        Double powerW = load.powerW();
        check(
                currentA == null || powerW == null,
                InputError.Code.CONTRADICTION,
                "/powerW",
                powerW,
                Accepted.NOT_BOTH,
                arg("first", "currentA"),
                arg("second", "powerW"));
        if (powerW == null) {
            check(
                    currentA != null,
                    InputError.Code.MISSING,
                    "/currentA",
                    null,
                    AcceptedRun.LOAD,
                    texts("names", List.of("currentA", "powerW")));
            return optional("/currentA", currentA, MIN_CURRENT_A, MAX_CURRENT_A, MIN_CURRENT_A);
        }
        double watts = optional("/powerW", powerW, 1e-3, 1e6, 1);
        double nominalV = DropLimit.nominalV(supplyV);
        if (circuit == DropRule.HEADLAMP || circuit == DropRule.SMALL_LAMP) {
            double testV = LampLaw.testV(nominalV, watts);
            return watts / testV * LampLaw.currentFraction(supplyV / testV);
        }
        return watts / nominalV;
    }
}
