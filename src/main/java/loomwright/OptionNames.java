package loomwright;

import java.util.Locale;
import java.util.Map;
import java.util.function.Supplier;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import loomwright.answer.InputError;
import loomwright.answer.RejectedInput;
import loomwright.service.limits.Options;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;

/** What is wrong with a limit, said of the option that sets it. */
final class OptionNames {
    private static final String OPTION = "--";

    private OptionNames() {}

    /**
     * Makes limits whose names are not those of their options.
     *
     * @param options the option for each name of a limit
     */
    static <T> T named(Map<String, String> options, Supplier<T> limits) {
        return named(limit -> options.getOrDefault(limit, limit), limits);
    }

    /** The same by rule. */
    static <T> T named(UnaryOperator<String> optionOf, Supplier<T> limits) {
        try {
            return limits.get();
        } catch (RejectedInput rejected) {
            throw new RejectedInput(rejected.faults().stream()
                    .map(fault -> named(optionOf, fault))
                    .toList());
        }
    }

    private static InputError named(UnaryOperator<String> optionOf, InputError fault) {
        String place = fault.pointer();
        return place.startsWith(OPTION)
                ? fault
                : new InputError(
                        fault.code(), optionOf.apply(place.replaceFirst("^/", "")), fault.value(), fault.accepted());
    }

    /**
     * Options of a command line; a limit without an option of its own name has one of the same words.
     *
     * @throws ParameterException if one is not accepted
     */
    static Options checked(CommandSpec spec, Supplier<Options> options) {
        try {
            return named(OptionNames::ofTheSameWords, options);
        } catch (RejectedInput rejected) {
            throw new ParameterException(
                    spec.commandLine(),
                    rejected.faults().stream()
                            .map(fault -> fault.pointer() + ": accepted is " + fault.accepted())
                            .collect(Collectors.joining("; ")),
                    rejected);
        }
    }

    private static String ofTheSameWords(String limit) {
        return OPTION + limit.replaceAll("([A-Z])", "-$1").toLowerCase(Locale.ROOT);
    }
}
