package loomwright.conductor;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import loomwright.answer.Basis;
import loomwright.answer.InputError;
import loomwright.answer.RejectedInput;
import org.jspecify.annotations.Nullable;

/** A checked {@link VoltageDrop.Input}: every default filled in, every size read. */
record DropCase(
        double currentA,
        WireCase out,
        Optional<WireCase> back,
        boolean backGrowsAlong,
        double chassisOhm,
        List<Double> jointsOutOhm,
        List<Double> jointsBackOhm,
        double supplyV,
        @Nullable CircuitKind circuit,
        DropLimit limit) {

    /**
     * One wire with the temperature it is calculated at.
     *
     * @param estimate the ampacity the temperature was estimated with, absent where the temperature was given
     */
    record WireCase(
            ConductorSize size,
            double lengthM,
            double temperatureC,
            @Nullable Ampacity estimate,
            List<String> working) {

        VoltageDrop.Wire wire(double currentA) {
            double ohmPerM = size.resistanceOhmPerM(temperatureC);
            boolean over = estimate != null && currentA > estimate.allowedA();
            return new VoltageDrop.Wire(
                    size.name(),
                    lengthM,
                    temperatureC,
                    ohmPerM * lengthM,
                    currentA * ohmPerM * lengthM,
                    currentA * currentA * ohmPerM,
                    over);
        }

        List<Basis> basis() {
            List<Basis> basis = new ArrayList<>(List.of(size.basis()));
            if (estimate != null) {
                basis.addAll(estimate.basis());
                basis.add(Basis.fromMemory(
                        "conductor temperature T2 = T1 + (TR - T1) sqrt(I2 / Imax); square law above Imax",
                        "FAA AC 43.13-1B change 1, paragraph 11-66"));
            }
            return basis;
        }
    }

    static DropCase of(VoltageDrop.Input input) {
        Checked checked = new Checked();
        double currentA = checked.current("/currentA", input.currentA());
        ConductorSize size = own(checked.size("/size", input.size()), input.resistanceOhmPerKm20C(), checked);
        double lengthM = checked.length(input.lengthM(), input.lengthFt());
        ReturnPath path = input.returnPath() == null ? ReturnPath.WIRE : input.returnPath();
        Optional<ConductorSize> returnSize = checked.optionalSize("/returnSize", input.returnSize());
        Optional<Double> returnLengthM = checked.optionalLength(
                "/returnLengthM", input.returnLengthM(), "/returnLengthFt", input.returnLengthFt());
        boolean chassis = path == ReturnPath.CHASSIS;
        checkReturn(input, path, checked);
        double chassisOhm = chassis ? checked.ohm("/chassisOhm", input.chassisOhm()) : 0;
        List<Double> jointsOut = checked.joints("/jointsOutOhm", listOf(input.jointsOutOhm()));
        List<Double> jointsBack = checked.joints("/jointsBackOhm", listOf(input.jointsBackOhm()));
        double supplyV = checked.supply(input.supplyV());
        double temperatureC = checked.temperature("/temperatureC", input.temperatureC(), Copper.REFERENCE_C);
        boolean ownHeating = Boolean.TRUE.equals(input.ownHeating());
        checked.check(
                !ownHeating || input.temperatureC() == null,
                InputError.Code.CONTRADICTION,
                "/temperatureC",
                input.temperatureC(),
                "temperatureC or ownHeating, not both");
        Ampacity.Conditions conditions = checked.conditions(input.insulationC(), input.ambientC(), false, null, false);
        DropLimit limit = checked.limit(input.limitV(), input.limitPercent(), input.circuit(), supplyV);
        checked.reject();

        Heating heating = new Heating(currentA, ownHeating, temperatureC, conditions, input.ampacityTable());
        WireCase out = heating.wire("/size", size, lengthM);
        Optional<WireCase> back = path == ReturnPath.WIRE
                ? Optional.of(heating.wire("/returnSize", returnSize.orElse(size), returnLengthM.orElse(lengthM)))
                : Optional.empty();
        return new DropCase(
                currentA,
                out,
                back,
                returnLengthM.isEmpty(),
                chassisOhm,
                jointsOut,
                jointsBack,
                supplyV,
                input.circuit(),
                limit);
    }

    private static void checkReturn(VoltageDrop.Input input, ReturnPath path, Checked checked) {
        checked.chassis(path, input.chassisOhm());
        checked.check(
                path == ReturnPath.WIRE || input.returnSize() == null,
                InputError.Code.CONTRADICTION,
                "/returnSize",
                input.returnSize(),
                "a return wire only with returnPath wire");
        boolean noReturnLength = input.returnLengthM() == null && input.returnLengthFt() == null;
        checked.check(
                path == ReturnPath.WIRE || noReturnLength,
                InputError.Code.CONTRADICTION,
                input.returnLengthM() != null ? "/returnLengthM" : "/returnLengthFt",
                input.returnLengthM() != null ? input.returnLengthM() : input.returnLengthFt(),
                "a return length only with returnPath wire");
    }

    /** The same size with the resistance of its data sheet. */
    private static ConductorSize own(ConductorSize size, @Nullable Double ohmPerKm, Checked checked) {
        if (ohmPerKm == null) {
            return size;
        }
        double checkedOhmPerKm = checked.optional("/resistanceOhmPerKm20C", ohmPerKm, 1e-3, 1e6, 1);
        return checkedOhmPerKm > 0
                ? new ConductorSize(
                        size.system(),
                        size.name(),
                        size.areaMm2(),
                        checkedOhmPerKm / 1000,
                        Basis.computed("resistance of the wire as given", "the question itself"))
                : size;
    }

    private static List<Double> listOf(@Nullable List<Double> values) {
        return values == null ? List.of() : values;
    }

    /** The temperature of a wire: as given, or as estimated from the current. */
    private record Heating(
            double currentA,
            boolean ownHeating,
            double temperatureC,
            Ampacity.Conditions conditions,
            @Nullable AmpacityTable table) {

        WireCase wire(String pointer, ConductorSize size, double lengthM) {
            if (!ownHeating) {
                return new WireCase(size, lengthM, temperatureC, null, List.of());
            }
            Ampacity ampacity = ampacity(pointer, size);
            boolean over = currentA > ampacity.allowedA();
            double fromC = over ? ampacity.ratingC() - ampacity.riseK(conditions.ambientC()) : conditions.ambientC();
            double estimatedC =
                    WireHeating.estimatedTemperatureC(fromC, ampacity.ratingC(), currentA, ampacity.allowedA());
            if (estimatedC > Copper.MELTING_C) {
                throw new RejectedInput(new InputError(
                        InputError.Code.OUT_OF_RANGE,
                        "/currentA",
                        String.valueOf(currentA),
                        "a current that does not melt " + size.name() + ", whose ampacity is "
                                + FigureText.text(ampacity.allowedA()) + " A"));
            }
            String formula = over ? "(I/Imax)^2, over the ampacity" : "sqrt(I/Imax)";
            return new WireCase(
                    size,
                    lengthM,
                    estimatedC,
                    ampacity,
                    List.of(
                            ampacity.working(),
                            "T = " + FigureText.text(fromC) + " + (" + FigureText.text(ampacity.ratingC()) + " - "
                                    + FigureText.text(fromC) + ") x " + formula + " = "
                                    + FigureText.text(estimatedC)
                                    + " C, I/Imax = " + FigureText.text(currentA) + "/"
                                    + FigureText.text(ampacity.allowedA())));
        }

        private Ampacity ampacity(String pointer, ConductorSize size) {
            List<AmpacityTable> tables = table == null ? List.of(AmpacityTable.values()) : List.of(table);
            return tables.stream()
                    .flatMap(t -> Ampacity.find(size, t, conditions).stream())
                    .filter(a -> a.ratingC() > conditions.ambientC())
                    .findFirst()
                    .orElseThrow(() -> new RejectedInput(new InputError(
                            InputError.Code.OUT_OF_RANGE,
                            pointer,
                            size.name(),
                            "a wire in the range of the ampacity table, at an ambient below the column used: "
                                    + String.join(
                                            " or ",
                                            tables.stream()
                                                    .map(AmpacityTable::range)
                                                    .toList()))));
        }
    }
}
