package loomwright.judgement;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import org.junit.jupiter.api.Test;

/** docs/judgement.md says what the code judges by; {@link JudgementPage} writes it. */
class J10_JudgementPageTest {
    @Test
    void thePageIsMadeFromTheCode() throws IOException {
        assertThat(Files.readString(JudgementPage.FILE)).isEqualTo(JudgementPage.text());
    }

    @Test
    void itNamesLimitSourceAndWhoAsks() {
        assertThat(JudgementPage.text())
                .contains("## Fuse rule", "33 CFR 183.455(c)(1)", "`/v1/plans/review`", "## Drain rule", "25 mA");
    }
}
