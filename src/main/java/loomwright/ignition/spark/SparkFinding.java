package loomwright.ignition.spark;

import loomwright.message.MessageCode;

/** What an adviser would add to the figures of a spark, and what to do about it. */
public enum SparkFinding implements MessageCode {
    NO_SPARK,
    RESERVE_MISSED,
    /** A wide gap without a coil and module made for it, which fires to some speed. */
    GAP_NEEDS_OTHER_COIL,
    REQUIRED_SPREAD,
    OUTSIDE_FORMULA_RANGE,
    /** A stored energy at which a real coil is saturated long before. */
    ENERGY_NOT_REAL,
    SPARK_CUT_SHORT,
    COIL_BURNS,
    MODULE_SUPPLY_LOW,
    // What to do.
    RAISE_SPARK,
    SET_GAP_OR_FIT_MODULE,
    LOOK_UP_INDUCTANCE,
    COOL_COIL,
    RAISE_SUPPLY,
    FIT_MODULE_FOR_SYSTEM
}
