package loomwright;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import loomwright.message.Untranslated;
import org.junit.jupiter.api.Test;
import picocli.CommandLine;
import picocli.CommandLine.Model.ArgSpec;

/** What {@code --help} says is of the catalogue, for every command. */
class OptionWordsTest {
    @Test
    void helpSaysNothingThatIsNotOfTheCatalogue() {
        for (CommandLine command : commands(Main.commandLine()).toList()) {
            String name = command.getCommandName();
            // Names, words and usual values of options are for the shell; the library says "Default" and "command"
            // beside them.
            String given = names(command) + " default command";
            assertThat(Untranslated.words(() -> usage(name), given)).as(name).isEmpty();
        }
    }

    private static Stream<CommandLine> commands(CommandLine main) {
        return Stream.concat(Stream.of(main), main.getSubcommands().values().stream());
    }

    private static String usage(String name) {
        return commands(Main.commandLine())
                .filter(command -> command.getCommandName().equals(name))
                .findFirst()
                .orElseThrow()
                .getUsageMessage(CommandLine.Help.Ansi.OFF);
    }

    private static String names(CommandLine command) {
        Set<String> names = new TreeSet<>(command.getSubcommands().keySet());
        names.add(command.getCommandSpec().qualifiedName());
        for (ArgSpec arg : command.getCommandSpec().args()) {
            names.add(arg.paramLabel());
            names.add(String.valueOf(arg.initialValue()));
            names.add(arg.isOption() ? String.join(" ", ((CommandLine.Model.OptionSpec) arg).names()) : "");
        }
        return names.stream().collect(Collectors.joining(" "));
    }
}
