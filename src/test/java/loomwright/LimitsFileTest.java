package loomwright;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Properties;
import loomwright.answer.InputError;
import loomwright.answer.RejectedInput;
import loomwright.message.MessageFinder;
import loomwright.service.limits.Options;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The limits that have no option. */
class LimitsFileTest {
    private static String shipped() throws IOException {
        return Files.readString(Path.of("docs/limits.properties"));
    }

    private static Options options(String file) throws IOException {
        return new ServerLimits().with(new WorkLimits(), LimitsFile.read(new StringReader(file)));
    }

    private static Properties properties() throws IOException {
        Properties all = new Properties();
        all.load(new StringReader(shipped().replace("#bulk-lines", "bulk-lines")));
        return all;
    }

    static List<String> names() throws IOException {
        return List.copyOf(properties().stringPropertyNames());
    }

    @Test
    void theShippedFileSaysTheUsualValues() throws IOException {
        assertThat(options(shipped())).isEqualTo(options("")).isEqualTo(Options.DEFAULT);
    }

    @Test
    void theShippedFileNamesEveryLimit() throws IOException {
        List<String> names = names();
        LimitsFile file = LimitsFile.read(new StringReader("no-such = 1"));
        assertThatThrownBy(() -> new ServerLimits().with(new WorkLimits(), file))
                .isInstanceOfSatisfying(RejectedInput.class, rejected -> {
                    InputError fault = rejected.faults().get(0);
                    assertThat(fault.code()).isEqualTo(InputError.Code.UNKNOWN_NAME);
                    assertThat(MessageFinder.words(fault.accepted(), "names"))
                            .containsExactlyInAnyOrderElementsOf(names);
                });
    }

    @ParameterizedTest
    @MethodSource("names")
    void everyLimitOfTheFileCountsAndIsHeldToItsRange(String name) throws IOException {
        if (!name.equals("check-every-request")) {
            assertThatThrownBy(() -> options(name + " = -1"))
                    .isInstanceOfSatisfying(
                            RejectedInput.class,
                            rejected -> assertThat(rejected.faults())
                                    .singleElement()
                                    .satisfies(
                                            fault -> assertThat(fault.code()).isEqualTo(InputError.Code.OUT_OF_RANGE)));
        }
        int usual = Integer.parseInt(properties().getProperty(name));
        int other = usual > 1 ? usual - 1 : usual + 1;
        assertThat(options(name + " = " + other)).isNotEqualTo(Options.DEFAULT);
    }

    @Test
    void whatIsNoWholeNumberIsRefused() {
        assertThatThrownBy(() -> options("tokens = many"))
                .isInstanceOfSatisfying(
                        RejectedInput.class,
                        rejected -> assertThat(rejected.faults())
                                .singleElement()
                                .satisfies(fault -> assertThat(fault.pointer()).isEqualTo("tokens")));
    }
}
