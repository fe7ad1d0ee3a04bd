package loomwright;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.lang.reflect.RecordComponent;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
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
