package loomwright.sizing;

import loomwright.message.MessageCode;

/** Working and reasons of runs, wires and fuses. */
public enum SizingText implements MessageCode {
    WIRE_WARMED,
    DROP_OF_WIRE,
    DROP_OF_CHASSIS,
    DROP_OF_JOINT,
    DROP_IN_ALL,
    DROP_LIMIT,
    SIZE_BY_RULE,
    NO_SIZE_BY_RULE,
    BY_CIRCULAR_MILS,
    BY_HEAT_LAW,
    SIZE_CHOSEN,
    NO_SIZE_CHOSEN,
    USUAL_SIZE,
    STARTER_CABLES_UNFUSED,
    LEAST_RATING,
    MOST_RATING,
    RATING_JUDGED,
    FUSE_AGAINST_WIRE,
    FUSE_CHOSEN,
    NO_FUSE_CHOSEN,
    FIT_SIZE,
    FIT_SIZE_AND_FUSE,
    FIT_FUSE,
    NO_WIRE_CURES,
    CLEAN_CHASSIS_AND_JOINTS,
    DIVIDE_LOAD
}
