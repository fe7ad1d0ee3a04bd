package loomwright.service.http;

import static org.assertj.core.api.Assertions.assertThat;

import loomwright.service.LiveService;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A letter of a path may be written as an escape; what divides a path may not be made of one. */
class PathNormaliserTest {
    @ParameterizedTest
    @CsvSource({
        "/v1/plans, /v1/plans",
        "/v1/%70%6Ca%6es, /v1/plans",
        "/%31%5F%2d%7e, /1_-~",
        "/a%2Fb%2eb, /a%2Fb%2eb",
        "/%2565, /%2565",
        "/%25%36%35, /%2565",
        "/%3B%3f%23%00%C3%A9, /%3B%3f%23%00%C3%A9",
        "/%, /%",
        "/%6, /%6",
        "/%zz, /%zz",
    })
    void onlyLettersAndDigitsAreDecodedAndOnlyOnce(String path, String plain) {
        assertThat(PathNormaliser.in(path)).isEqualTo(plain);
    }

    @Test
    void anAddressWithALetterAsAnEscapeIsTheSameAddress() {
        assertThat(answer("/v1/voltage-dro%70")).startsWith("HTTP/1.1 200 ").containsPattern("\\n0\\.\\d+$");
    }

    private static String answer(String path) {
        return LiveService.raw("GET " + path + "?currentA=4&size=16%20AWG&lengthM=3&format=text HTTP/1.1\r\n"
                + "Host: x\r\nConnection: close\r\n\r\n");
    }
}
