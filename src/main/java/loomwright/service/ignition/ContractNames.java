package loomwright.service.ignition;

import java.util.Map;
import java.util.function.Supplier;
import loomwright.answer.InputError;
import loomwright.answer.RejectedInput;
import org.jspecify.annotations.Nullable;

/** Names of the domain that the contract calls otherwise, because it has milli, kilo or pico in the unit. */
final class ContractNames {

    /** A name of the contract, and how many of its unit make one of SI. */
    private record Outside(String name, double perSi) {}

    private static final Map<String, Outside> BY_DOMAIN = Map.ofEntries(
            Map.entry("inductanceH", new Outside("inductanceMh", 1e3)),
            Map.entry("secondaryCapacitanceF", new Outside("secondaryCapacitancePf", 1e12)),
            Map.entry("pressurePa", new Outside("pressureKpa", 1e-3)),
            Map.entry("manifoldPressurePa", new Outside("manifoldPressureKpa", 1e-3)),
            Map.entry("dwellS", new Outside("dwellMs", 1e3)),
            Map.entry("ratingA", new Outside("switchRatingA", 1)),
            Map.entry("preset", new Outside("coilKind", 1)),
            Map.entry("meantFor", new Outside("coilMeantFor", 1)),
            Map.entry("kind", new Outside("switchedBy", 1)),
            Map.entry("speedSweep/from", new Outside("speedFromRpm", 1)),
            Map.entry("speedSweep/to", new Outside("speedToRpm", 1)),
            Map.entry("supplySweep/from", new Outside("supplyFromV", 1)),
            Map.entry("supplySweep/to", new Outside("supplyToV", 1)));

    private ContractNames() {}

    /** The answer, or its faults under the names of the contract. */
    static <T> T named(Supplier<T> answer) {
        try {
            return answer.get();
        } catch (RejectedInput rejected) {
            throw new RejectedInput(
                    rejected.faults().stream().map(ContractNames::named).toList());
        }
    }

    private static InputError named(InputError fault) {
        int last = fault.pointer().startsWith("/before/") || fault.pointer().startsWith("/after/")
                ? fault.pointer().indexOf('/', 1)
                : 0;
        Outside outside = BY_DOMAIN.get(
                fault.pointer().substring(Math.min(last + 1, fault.pointer().length())));
        if (outside == null) {
            return fault;
        }
        return new InputError(
                fault.code(),
                fault.pointer().substring(0, last + 1) + outside.name(),
                scaled(fault.value(), outside.perSi()),
                fault.accepted());
    }

    private static @Nullable String scaled(@Nullable String value, double perSi) {
        return value == null || perSi == 1 || !value.matches("[0-9.E+-]+")
                ? value
                : String.valueOf(Double.parseDouble(value) * perSi);
    }

    /** The same fault at another place. */
    static InputError at(InputError fault, String pointer) {
        return new InputError(fault.code(), pointer, fault.value(), fault.accepted());
    }
}
