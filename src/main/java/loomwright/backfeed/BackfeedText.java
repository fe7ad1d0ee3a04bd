package loomwright.backfeed;

import loomwright.message.MessageCode;

/** What is said of unintended feeds: what a load does, by which path, what helps and what that costs. */
public enum BackfeedText implements MessageCode {
    OPERATES,
    STAYS_IN,
    WOULD_STAY_IN,
    GLOWS,
    STALLS,
    LEAKS,
    ALSO_LIVE,
    FEED,
    FEED_OF_HOLD_IN,
    WINDINGS_TOGETHER,
    TURN_KEY,
    MOVE_SWITCH,

    PATH_STEP,
    PATH_STEP_REVERSED,
    PATH_STEP_RUNNING_DOWN,

    TAKE_OUT_WIRE,
    FIT_DIODE,
    FIT_RELAY,
    MOVE_WIRE,
    SEPARATE_EARTH,
    EARTH_SPLICE,
    REPAIR_JOINT,
    REPAIR_WIRE_END,
    SECOND_POLE,
    EFFECT,

    COMBINATIONS_SEARCHED,
    HELD_SWITCHES,
    SWITCH_MOVES,
    REMEDIES_LEFT,
    FAULTS_LEFT,
    CURED_TOGETHER,
    NOTHING_FOUND,
    NOT_LISTED,
    CURRENT_PATH,
    REMEDY,
    NO_TIME_FOR_REMEDY
}
