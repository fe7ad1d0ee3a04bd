package loomwright.mistakes;

import loomwright.message.MessageCode;

/** What is said of mistakes: what comes of one, what to do about connectors, how it was found. */
enum MistakeText implements MessageCode {
    FUSES_BLOW,
    REVERSED_WIRES,
    NOT_ALL_CALCULATED,
    NO_DIFFERENCE,

    CURRENT_OVER_LIMIT,
    HEAT_OVER_LIMIT,
    BATTERY_SHORTED,
    FED_BACKWARDS,

    LOOSE_END_LIVE,
    SPARK_POLARITY,
    MOTOR_REVERSED,
    RELAY_DIODE,
    BATTERY_REVERSED,
    NO_SPARK,
    CAPACITOR_OFF,
    NO_CHARGE,
    OVERCHARGED,
    NO_FIELD,
    NOT_CALCULATED,

    FIT_OTHER_CONTACTS,
    GENDER_DOES_NOT_HELP,

    MISTAKES_SOLVED,
    MISTAKES_LEFT,
    WITHOUT_MISTAKE,
    FUSES_OPENED,
    SEVERITIES,
    NOT_LISTED
}
