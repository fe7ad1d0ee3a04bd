package loomwright.service.http;

import static org.assertj.core.api.Assertions.assertThat;

import org.eclipse.jetty.http.HttpFields;
import org.eclipse.jetty.http.HttpHeader;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** RFC 9110, section 12.5.3. */
class EncodingChoiceTest {
    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            gzip                        | true
            gzip;q=1.0                  | true
            GZIP                        | true
            x-gzip                      | true
            br, gzip;q=0.5              | true
            deflate, gzip, br           | true
            *                           | true
            br;q=1, *;q=0.1             | true
            gzip;q=0                    | false
            gzip;q=0.000                | false
            *, gzip;q=0                 | false
            identity                    | false
            identity, gzip;q=0.5        | false
            gzip, identity;q=0.5        | true
            br                          | false
            *;q=0                       | false
            """)
    void gzipIsWantedWhereItIsTheBestThereIs(String header, boolean isWanted) {
        assertThat(EncodingChoice.isGzipWanted(HttpFields.build().put(HttpHeader.ACCEPT_ENCODING, header)))
                .isEqualTo(isWanted);
    }
}
