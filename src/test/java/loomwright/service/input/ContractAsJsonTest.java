package loomwright.service.input;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.json.JsonMapper;
import loomwright.service.LiveService;
import org.junit.jupiter.api.Test;

/** The contract as a distribution has it. */
class ContractAsJsonTest {
    @Test
    void itSaysWhatTheContractSays() throws Exception {
        assertThat(new JsonMapper().readTree(ContractAsJson.bytes(LiveService.CONTRACT.document())))
                .isEqualTo(LiveService.CONTRACT.document());
    }
}
