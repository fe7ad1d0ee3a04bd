package loomwright.service.http;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Content negotiation: RFC 9110, section 12.5.1. */
class AcceptTest {
    private static final List<String> THERE = List.of("application/json", "text/plain", "text/csv");

    @ParameterizedTest(name = "{0} gives {1}")
    @CsvSource(
            delimiter = '|',
            value = {
                "*/* | application/json",
                "text/csv | text/csv",
                "TEXT/CSV | text/csv",
                "text/* | text/plain",
                "text/csv;q=0.5, text/plain;q=0.4 | text/csv",
                "text/*;q=0.3, text/csv;q=0.7, */*;q=0.1 | text/csv",
                "*/*, application/json;q=0 | text/plain",
                "text/html, */*;q=0.1 | application/json",
                "application/problem+json | application/json",
                "image/png | none",
                "image/png, application/problem+json | none",
                "application/json;q=0 | none",
                "nonsense | none"
            })
    void theMostWantedFormIsChosen(String header, String expected) {
        assertThat(Accept.choose(header, THERE).orElse("none")).isEqualTo(expected);
    }

    /** The example of RFC 9110, section 12.5.1: its table gives text/html;level=3 0.7, image/jpeg 0.5, text/plain 0.3. */
    @ParameterizedTest(name = "among {0} the choice is {1}")
    @CsvSource({
        "image/jpeg;text/plain, image/jpeg",
        "text/plain;text/html, text/html",
        "text/plain;audio/basic, audio/basic"
    })
    void theExampleOfTheStandard(String there, String expected) {
        String header = "text/*;q=0.3, text/html;q=0.7, text/html;level=1, text/html;level=2;q=0.4, */*;q=0.5";
        assertThat(Accept.choose(header, List.of(there.split(";")))).contains(expected);
    }
}
