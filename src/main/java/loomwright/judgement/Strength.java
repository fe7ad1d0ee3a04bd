package loomwright.judgement;

/** What a load does with the volts or amperes that it gets, best first. */
public enum Strength {
    /** It does what it is for. */
    WORKS,
    /** Dim, slow or unsure. A relay or solenoid stays in once it is in, but may not pull in. */
    WEAK,
    /** A lamp glows, a motor creeps or stands and heats. */
    CREEPS,
    /** Nothing that anybody notices. */
    DEAD
}
