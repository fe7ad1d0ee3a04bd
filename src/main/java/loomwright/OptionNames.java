package loomwright;

import static loomwright.message.Arg.arg;

import java.io.IOException;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import loomwright.answer.InputError;
import loomwright.answer.RejectedInput;
import loomwright.message.Message;
import loomwright.service.limits.Options;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;

/** What is wrong with a limit, said of the option, or the line of the file of limits, that sets it. */
final class OptionNames {
    private static final String OPTION = "--";

    private OptionNames() {}

    /**
     * Makes limits whose names are not those of their options.
     *
     * @param options the option, or the name in the file of limits, for each name of a limit
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
     * Options of a command line. A limit without an option stands in the file of limits under the same words.
     *
     * @throws ParameterException if one is not accepted, or the file cannot be read
     */
    static Options checked(CommandSpec spec, WorkLimits work, Function<LimitsFile, Options> options) {
        try {
            return named(limit -> ofTheSameWords(spec, limit), () -> {
                try {
                    return options.apply(work.limits == null ? new LimitsFile() : LimitsFile.read(work.limits));
                } catch (IOException e) {
                    throw wrong(spec, CommandText.CANNOT_BE_READ.with(arg("file", String.valueOf(work.limits))), e);
                }
            });
        } catch (RejectedInput rejected) {
            List<Message> faults = rejected.faults().stream()
                    .map(fault -> said(fault).with(arg("name", fault.pointer()), arg("accepted", fault.accepted())))
                    .toList();
            throw new ParameterException(
                    spec.commandLine(),
                    faults.stream().map(Message::text).collect(Collectors.joining(System.lineSeparator())),
                    rejected);
        }
    }

    private static CommandText said(InputError fault) {
        if (fault.pointer().startsWith(OPTION)) {
            return CommandText.OPTION_MUST_BE;
        }
        return fault.code() == InputError.Code.UNKNOWN_NAME ? CommandText.UNKNOWN_LIMIT : CommandText.LIMIT_MUST_BE;
    }

    static ParameterException wrong(CommandSpec spec, Message message, @Nullable Throwable cause) {
        return new ParameterException(spec.commandLine(), message.text(), cause);
    }

    private static String ofTheSameWords(CommandSpec spec, String limit) {
        String words = limit.replaceAll("([A-Z])", "-$1").toLowerCase(Locale.ROOT);
        return spec.optionsMap().containsKey(OPTION + words) ? OPTION + words : words;
    }
}
