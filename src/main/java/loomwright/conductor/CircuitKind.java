package loomwright.conductor;

/** Kinds of circuit with a usual limit of voltage drop; the limits stand in the table "drop-limits". */
public enum CircuitKind {
    IGNITION_FEED,
    LIGHTING,
    STARTER,
    STARTER_CONTROL,
    EARTH,
    ELECTRONICS,
    GENERAL
}
