package loomwright.circuit;

import com.fasterxml.jackson.annotation.JsonProperty;

/** Which pole of the battery is joined to the chassis. */
public enum EarthPolarity {
    @JsonProperty("negative")
    NEGATIVE,
    @JsonProperty("positive")
    POSITIVE
}
