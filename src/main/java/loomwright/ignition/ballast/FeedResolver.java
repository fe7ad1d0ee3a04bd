package loomwright.ignition.ballast;

import static loomwright.message.Arg.arg;
import static loomwright.message.Arg.plain;
import static loomwright.message.Arg.texts;

import java.util.List;
import loomwright.answer.Accepted;
import loomwright.answer.InputError;
import loomwright.answer.InputErrors;
import loomwright.answer.RejectedInput;
import loomwright.circuit.UsualVoltages;
import loomwright.conductor.ConductorSize;
import loomwright.ignition.AssumedValue;
import loomwright.ignition.Assumptions;
import loomwright.ignition.UsualIgnition;
import loomwright.judgement.ignition.ModuleSupplyRule;
import loomwright.judgement.ignition.PrimaryLoop;
import loomwright.message.Message;
import org.jspecify.annotations.Nullable;

/** Fills what a question about a feed leaves out, and checks the rest; all faults are said together. */
final class FeedResolver {
    private static final int MOST_ELEMENTS = 8;
    private static final double METRES_PER_FOOT = 0.3048;

    private final BallastInput input;
    private final Assumptions assumed = new Assumptions();
    private final InputErrors faults = assumed.faults();
    private final double scale;

    private FeedResolver(BallastInput input) {
        this.input = input;
        double nominalV = nominalV();
        this.scale = nominalV / 12;
    }

    /** A feed with the lines that say what was taken for the caller. */
    record Resolved(IgnitionFeed feed, List<Message> assumed) {}

    /**
     * Resolves a question.
     *
     * @throws RejectedInput with every fault
     */
    static Resolved resolve(BallastInput input) {
        return new FeedResolver(input).resolve(new InputErrors());
    }

    /**
     * As above, for a question with more to it; a ballast of its own is then not asked for.
     *
     * @param more faults found in the rest of the question
     */
    static Resolved resolve(BallastInput input, InputErrors more) {
        return new FeedResolver(input).resolve(more);
    }

    private double nominalV() {
        Double given = input.nominalVoltageV();
        double nominalV = assumed.or(given, AssumedValue.NOMINAL_VOLTAGE, 12, "V");
        boolean known = nominalV == 6 || nominalV == 12 || nominalV == 24;
        faults.check(
                known,
                InputError.Code.NOT_ONE_OF,
                "/nominalVoltageV",
                given,
                Accepted.ONE_OF,
                texts("names", List.of("6", "12", "24")));
        return known ? nominalV : 12;
    }

    private Resolved resolve(InputErrors more) {
        more.list().forEach(faults::add);
        List<Double> elements = elements();
        double ambientC =
                ranged("/ambientC", input.warmth().ambientC(), AssumedValue.AMBIENT_TEMPERATURE, 20, "°C", -60, 150);
        Double ballastC = input.warmth().ballastTemperatureC();
        Double coilC = input.warmth().coilTemperatureC();
        faults.range("/ballastTemperatureC", ballastC, -60, 600).range("/coilTemperatureC", coilC, -60, 250);
        IgnitionFeed.Temperatures temperatures = new IgnitionFeed.Temperatures(
                ambientC, ballastC == null ? ambientC : ballastC, coilC == null ? ambientC : coilC);
        IgnitionFeed feed = new IgnitionFeed(
                scale * 12,
                new IgnitionFeed.TappedBallast(elements, tap(elements.size())),
                supplies(),
                new IgnitionFeed.LeadsOhm(
                        feedOhm(ambientC),
                        ranged(
                                "/returnResistanceOhm",
                                input.leads().returnResistanceOhm(),
                                AssumedValue.RETURN_RESISTANCE,
                                0,
                                "Ω",
                                0,
                                10),
                        bypassOhm()),
                coilOhm(),
                closing(),
                ranged(
                        "/dwellFraction",
                        input.dwellFraction(),
                        AssumedValue.DWELL_FRACTION,
                        PrimaryLoop.USUAL_DWELL,
                        "",
                        0.01,
                        1),
                temperatures,
                thermal(),
                window());
        faults.reject();
        return new Resolved(Boolean.TRUE.equals(input.ballast().turned()) ? feed.turned() : feed, assumed.lines());
    }

    private List<Double> elements() {
        List<Double> elements = input.ballast().elementsOhm();
        if (elements == null) {
            return List.of();
        }
        faults.check(
                elements.size() <= MOST_ELEMENTS,
                InputError.Code.OUT_OF_RANGE,
                "/elementsOhm",
                elements.size(),
                Accepted.ENTRIES_AT_MOST,
                arg("max", MOST_ELEMENTS));
        for (int i = 0; i < elements.size(); i++) {
            faults.range("/elementsOhm/" + i, elements.get(i).doubleValue(), 0.001, 100);
        }
        return elements;
    }

    private @Nullable Integer tap(int elements) {
        Integer tap = input.ballast().bypassTap();
        if (tap != null) {
            faults.range("/bypassTap", tap.doubleValue(), 1, MOST_ELEMENTS)
                    .check(
                            tap <= elements || tap > MOST_ELEMENTS,
                            InputError.Code.CONTRADICTION,
                            "/bypassTap",
                            tap,
                            AcceptedFeed.ELEMENT,
                            arg("elements", elements));
        }
        return tap;
    }

    private IgnitionFeed.Supplies supplies() {
        return new IgnitionFeed.Supplies(
                supply(
                        "/supplyAtRestV",
                        input.supply().supplyAtRestV(),
                        AssumedValue.SUPPLY_AT_REST,
                        UsualVoltages.AT_REST_V),
                supply(
                        "/supplyCrankingV",
                        input.supply().supplyCrankingV(),
                        AssumedValue.SUPPLY_CRANKING,
                        UsualVoltages.CRANKING_V),
                supply(
                        "/supplyChargingV",
                        input.supply().supplyChargingV(),
                        AssumedValue.SUPPLY_RUNNING,
                        UsualVoltages.CHARGING_V));
    }

    private double supply(String pointer, @Nullable Double given, AssumedValue what, double usualAt12V) {
        return ranged(pointer, given, what, usualAt12V * scale, "V", 0.5, 60);
    }

    private double feedOhm(double ambientC) {
        String size = input.leads().feedSize();
        Double given = input.leads().feedResistanceOhm();
        Double metres = input.leads().feedLengthM();
        Double feet = input.leads().feedLengthFt();
        faults.range("/feedLengthM", metres, 0.001, 1000).range("/feedLengthFt", feet, 0.001, 1000);
        boolean byWire = size != null && given == null && (metres == null) != (feet == null);
        boolean byOhm = size == null && metres == null && feet == null;
        faults.check(
                byWire || byOhm,
                InputError.Code.CONTRADICTION,
                size == null ? "/feedResistanceOhm" : "/feedSize",
                size,
                Accepted.PAIR_OR_ALONE,
                arg("name", "feedSize"),
                texts("with", List.of("feedLengthM", "feedLengthFt")),
                arg("alone", "feedResistanceOhm"));
        if (size == null) {
            return ranged(
                    "/feedResistanceOhm", given, AssumedValue.FEED_RESISTANCE, UsualIgnition.FEED_OHM, "Ω", 0, 10);
        }
        double lengthM = metres != null ? metres : feet != null ? feet * METRES_PER_FOOT : 1;
        return wireOhm(size, lengthM, ambientC);
    }

    private double wireOhm(String size, double lengthM, double ambientC) {
        try {
            ConductorSize conductor = ConductorSize.parse(size);
            double ohmPerM = conductor.resistanceOhmPerM(ambientC);
            double ohm = ohmPerM * lengthM;
            assumed.note(BallastText.FEED_WIRE.with(
                    arg("size", conductor.name()),
                    arg("ambientC", ambientC),
                    arg("resistanceOhmPerM", ohmPerM),
                    arg("lengthM", lengthM),
                    arg("resistanceOhm", ohm)));
            return ohm;
        } catch (RejectedInput rejected) {
            rejected.faults().forEach(fault -> faults.add(fault.under("/feedSize")));
            return 0;
        }
    }

    private double bypassOhm() {
        Double given = input.leads().bypassResistanceOhm();
        if (input.ballast().bypassTap() == null) {
            faults.range("/bypassResistanceOhm", given, 0, 10);
            return 0;
        }
        return ranged("/bypassResistanceOhm", given, AssumedValue.BYPASS_RESISTANCE, 0, "Ω", 0, 10);
    }

    private double coilOhm() {
        Double given = input.coilPrimaryOhm();
        faults.required("/coilPrimaryOhm", given).range("/coilPrimaryOhm", given, 0.05, 100);
        return given == null ? 1 : given;
    }

    private IgnitionFeed.Closing closing() {
        Double dropV = input.primarySwitch().moduleDropV();
        Double limitA = input.primarySwitch().moduleLimitA();
        Double contactBreakerOhm = input.primarySwitch().contactBreakerOhm();
        faults.range("/moduleDropV", dropV, 0, 5).range("/moduleLimitA", limitA, 0.5, 30);
        faults.range("/contactBreakerOhm", contactBreakerOhm, 0, 10);
        faults.range("/moduleLeastV", input.primarySwitch().moduleLeastV(), 0, 60);
        boolean module =
                dropV != null || limitA != null || input.primarySwitch().moduleLeastV() != null;
        faults.check(
                !module || contactBreakerOhm == null,
                InputError.Code.CONTRADICTION,
                "/contactBreakerOhm",
                contactBreakerOhm,
                AcceptedFeed.CONTACTS_OR_MODULE,
                arg("contacts", "contactBreakerOhm"),
                texts("module", List.of("moduleDropV", "moduleLimitA")));
        if (!module) {
            return new IgnitionFeed.Closing(
                    false, assumed.or(contactBreakerOhm, AssumedValue.CONTACT_RESISTANCE, 0.03, "Ω"), 0, null, 0);
        }
        return new IgnitionFeed.Closing(
                true,
                0,
                assumed.or(dropV, AssumedValue.MODULE_SATURATION, 1, "V"),
                limitA,
                assumed.or(
                        input.primarySwitch().moduleLeastV(),
                        AssumedValue.MODULE_LEAST,
                        ModuleSupplyRule.deadV(scale * 12),
                        "V"));
    }

    private IgnitionFeed.Thermal thermal() {
        Double ballast = input.warmth().ballastThermalResistanceKPerW();
        Double coil = input.warmth().coilThermalResistanceKPerW();
        Double coefficient = input.warmth().ballastCoefficientPerK();
        faults.range("/ballastThermalResistanceKPerW", ballast, 0, 100)
                .range("/coilThermalResistanceKPerW", coil, 0, 100)
                .range("/ballastCoefficientPerK", coefficient, -0.001, 0.01);
        boolean asked = ballast != null || coil != null;
        faults.check(
                !asked
                        || (input.warmth().coilTemperatureC() == null
                                && input.warmth().ballastTemperatureC() == null),
                InputError.Code.CONTRADICTION,
                coil == null ? "/ballastThermalResistanceKPerW" : "/coilThermalResistanceKPerW",
                coil == null ? ballast : coil,
                AcceptedFeed.NO_THERMAL_RESISTANCE);
        return new IgnitionFeed.Thermal(
                asked, coefficient == null ? 0 : coefficient, ballast == null ? 0 : ballast, coil == null ? 0 : coil);
    }

    private IgnitionFeed.Window window() {
        Double lowV = input.window().windowLowV();
        Double highV = input.window().windowHighV();
        faults.range("/windowLowV", lowV, 0.1, 60)
                .range("/windowHighV", highV, 0.1, 60)
                .check(
                        lowV == null || highV == null || lowV < highV,
                        InputError.Code.CONTRADICTION,
                        "/windowHighV",
                        highV,
                        AcceptedFeed.WINDOW,
                        plain("low", lowV == null ? 0 : lowV));
        return new IgnitionFeed.Window(lowV, highV, UsualVoltages.CRANKING_V * scale);
    }

    private double ranged(
            String pointer,
            @Nullable Double given,
            AssumedValue what,
            double usual,
            String unit,
            double min,
            double max) {
        faults.range(pointer, given, min, max);
        return assumed.or(given, what, usual, unit);
    }
}
