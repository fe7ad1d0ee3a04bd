package loomwright;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import picocli.CommandLine;

/** The options of the command line. */
class MainTest {
    @Test
    void theOptionsOfTheInstructionsExist() throws IOException {
        // Those of the start script and of tools are no options of the service.
        Set<String> others = Set.of("--make-archive");
        assertThat(Pattern.compile("`(--[a-z-]+)")
                        .matcher(Files.readString(Path.of("docs/running.md")))
                        .results()
                        .map(found -> found.group(1))
                        .filter(option -> !others.contains(option)))
                .isNotEmpty()
                .isSubsetOf(new CommandLine(new Main())
                        .getCommandSpec()
                        .optionsMap()
                        .keySet());
    }

    @Test
    void aLimitOutOfRangeIsRefusedAtStart() {
        assertRefused("--body-bytes must be a number from 100 to 1000000000", "--body-bytes", "-1");
    }

    @ParameterizedTest
    @MethodSource("limits")
    void everyLimitOutOfRangeIsSaidOfItsOption(String option) {
        assertRefused(option + " must be a number from ", option, "-1");
    }

    static List<String> limits() {
        return Stream.of(new WorkLimits(), new ServerLimits())
                .flatMap(limits -> CommandLine.Model.CommandSpec.forAnnotatedObject(limits).options().stream())
                .map(CommandLine.Model.OptionSpec::longestName)
                .filter(option -> !option.equals("--limits"))
                .toList();
    }

    @Test
    void whatIsWrongWithTheFileOfKeysIsSaidOfItsLine(@TempDir Path folder) throws IOException {
        Path keys = Files.writeString(folder.resolve("keys"), "# callers\nworkshop short\n");
        assertRefused("--api-key-file, line 2 must be a name", "--api-key-file", keys.toString());
    }

    @Test
    void anOriginThatIsNoneIsRefusedAtStart() {
        assertRefused("--allow-origin must be scheme and host", "--allow-origin", "*");
    }

    /** A knob that nobody turns belongs into the file of limits. */
    @Test
    void thereAreFewOptions() {
        assertThat(new CommandLine(new Main()).getCommandSpec().options())
                .filteredOn(option -> !option.usageHelp() && !option.versionHelp())
                .hasSizeLessThanOrEqualTo(13);
    }

    @Test
    void everyOptionIsDescribed() {
        CommandLine main = Main.commandLine();
        for (CommandLine one : List.of(main, main.getSubcommands().get("check"))) {
            assertThat(one.getCommandSpec().args())
                    .allSatisfy(arg -> assertThat(arg.description()).isNotEmpty());
        }
    }

    @Test
    void anUnknownOptionIsRefused() {
        assertRefused("--no-such", "--no-such");
    }

    @Test
    void aPortInUseIsSaidInOneLine() throws IOException {
        try (ServerSocket taken = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            String port = String.valueOf(taken.getLocalPort());
            assertRefused("port " + port + " is in use", "--host", "127.0.0.1", "--port", port);
        }
    }

    /** 203.0.113.0/24 is kept for documentation (RFC 5737), {@code invalid} for names that are none (RFC 2606). */
    @ParameterizedTest
    @ValueSource(strings = {"203.0.113.7", "no-such-host.invalid"})
    void anAddressThatIsNotOfThisMachineIsSaidInOneLine(String host) {
        assertRefused(host, "--host", host);
    }

    @Test
    void aFileOfKeysThatCannotBeReadIsSaidInOneLine(@TempDir Path folder) {
        assertRefused("cannot be read", "--api-key-file", folder.toString());
    }

    private static void assertRefused(String said, String... arguments) {
        StringWriter errors = new StringWriter();
        int code = Main.commandLine().setErr(new PrintWriter(errors)).execute(arguments);
        assertThat(code).isEqualTo(2);
        assertThat(errors.toString().lines().toList())
                .hasSizeBetween(2, 3)
                .first()
                .asString()
                .contains(said);
    }
}
