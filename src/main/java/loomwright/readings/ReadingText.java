package loomwright.readings;

import loomwright.message.MessageCode;

/** What the sheet of readings says to a person. */
enum ReadingText implements MessageCode {
    STATE,
    // What a reading shows.
    SUPPLY_BRIDGED,
    CONTINUITY,
    CONTACTS,
    ACROSS,
    CONTACTS_OPEN,
    COIL_AT_WORK,
    BATTERY,
    BATTERY_AT_WORK,
    CHARGING,
    DEAD,
    LOAD,
    FEED_DROP,
    RETURN_DROP,
    HALVING,
    OWN_RESISTANCE,
    RELAY_MAY_BE_EITHER,
    BACKFED,
    // Before any reading.
    LOOK_FIRST,
    OHMS_FIRST,
    THEN_VOLTS,
    KEEP_LOAD_ON,
    DISABLE_IGNITION,
    // What is not on the sheet.
    RESISTANCE_TOO_LOW,
    NOT_POWERED,
    MOTORS_LEFT_OUT,
    // How the sheet was made.
    READINGS_COUNTED,
    OHM_BOUNDS,
    VOLT_BOUNDS,
    METER_ERROR
}
