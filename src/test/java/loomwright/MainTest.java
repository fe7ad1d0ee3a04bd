package loomwright;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.lang.reflect.RecordComponent;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Pattern;
import loomwright.service.ServiceLimits;
import org.junit.jupiter.api.Test;
import picocli.CommandLine;

/** The options of the command line. */
class MainTest {
    @Test
    void everyLimitCanBeSet() {
        List<String> limits = Arrays.stream(ServiceLimits.class.getRecordComponents())
                .map(RecordComponent::getName)
                .map(name -> "--" + name.replaceAll("([A-Z])", "-$1").toLowerCase(Locale.ROOT))
                .toList();
        assertThat(new CommandLine(new Main()).getCommandSpec().optionsMap().keySet())
                .containsAll(limits);
    }

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
        assertRefused("bodyBytes", "--body-bytes", "-1");
    }

    @Test
    void anOriginThatIsNoneIsRefusedAtStart() {
        assertRefused("allowedOrigins", "--allow-origin", "*");
    }

    @Test
    void anUnknownOptionIsRefused() {
        assertRefused("--no-such", "--no-such");
    }

    private static void assertRefused(String said, String... arguments) {
        StringWriter errors = new StringWriter();
        int code = new CommandLine(new Main()).setErr(new PrintWriter(errors)).execute(arguments);
        assertThat(code).isEqualTo(2);
        assertThat(errors.toString()).contains(said);
    }
}
