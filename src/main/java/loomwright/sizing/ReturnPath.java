package loomwright.sizing;

/** How the current comes back to the source. */
public enum ReturnPath {
    /** By a wire, the same as the feed unless another is named. */
    WIRE,
    /** By the chassis, with a resistance. */
    CHASSIS,
    /** Not counted: the length given is the whole run, or the return is judged apart. */
    NONE
}
