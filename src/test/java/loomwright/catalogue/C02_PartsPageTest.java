package loomwright.catalogue;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import org.junit.jupiter.api.Test;

/** docs/parts.md says what the catalogue says; {@link PartsPage} writes it. */
class C02_PartsPageTest {
    @Test
    void thePageIsMadeFromTheCatalogue() throws IOException {
        assertThat(Files.readString(PartsPage.FILE)).isEqualTo(PartsPage.text());
    }

    @Test
    void everyKindThatALoadCanBeHasItsShares() {
        assertThat(PartsPage.text()).contains("### Dynamo (`dynamo`)", "| led | 0.5 | 0.1 | 0.005 |");
    }
}
