package loomwright.ignition.spark;

import loomwright.message.MessageCode;

/** The steps of a spark calculation. */
enum SparkText implements MessageCode {
    COIL_WARM,
    LOOP,
    DRIVING,
    FINAL_CURRENT,
    TIME_CONSTANT,
    CYCLE,
    DWELL_BY_ANGLE,
    DWELL_BY_TIME,
    DWELL_BY_CURRENT,
    DUTY,
    RESIDUAL,
    BREAK_AT_LIMIT,
    BREAK,
    ENERGY,
    AVAILABLE_BY_ENERGY,
    AVAILABLE_BY_CLAMP,
    MARGIN,
    AVERAGE,
    COIL_HEAT,
    BALLAST_HEAT,
    SWITCH_HEAT,
    PRIMARY_CLOSED,
    COIL_WARMED_UP,
    FEED_NEED,
    MARGIN_ENDS,
    RESERVE_ENDS,
    STARTS
}
