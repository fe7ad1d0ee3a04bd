package loomwright.circuit;

import com.fasterxml.jackson.annotation.JsonProperty;

/** Where a wire or part lies: decides its ambient temperature. */
public enum Place {
    @JsonProperty("cabin")
    CABIN,
    @JsonProperty("engine-bay")
    ENGINE_BAY
}
