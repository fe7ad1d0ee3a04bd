package loomwright.circuit;

/**
 * A winding that moves an armature: it pulls in from some volts, and stays in down to far fewer. What holds for relays holds for
 * solenoids in this.
 */
public sealed interface Electromagnet extends Consumer permits Relay, Solenoid {}
