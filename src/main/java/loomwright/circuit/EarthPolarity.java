package loomwright.circuit;

import com.fasterxml.jackson.annotation.JsonProperty;

/** Which pole of the battery is joined to the chassis. */
public enum EarthPolarity {
    @JsonProperty("negative")
    NEGATIVE,
    @JsonProperty("positive")
    POSITIVE;

    /**
     * The sign that current has in the direction of feed, away from the live pole through the load to the chassis: with
     * the positive pole earthed it flows the other way.
     */
    public int feedSign() {
        return this == NEGATIVE ? 1 : -1;
    }
}
