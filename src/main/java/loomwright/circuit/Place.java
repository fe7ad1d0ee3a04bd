package loomwright.circuit;

import com.fasterxml.jackson.annotation.JsonProperty;
import loomwright.message.MessageCode;

/** Where a wire or part lies: decides its ambient temperature. */
public enum Place implements MessageCode {
    @JsonProperty("cabin")
    CABIN,
    @JsonProperty("engine-bay")
    ENGINE_BAY
}
