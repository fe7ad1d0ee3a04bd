package loomwright.ignition.ballast;

import loomwright.message.MessageCode;

/** What is said about a ballast and its feed. */
enum BallastText implements MessageCode {
    FEED_WIRE,
    COIL_WARM,
    BALLAST_WARM,
    MODULE_DEAD,
    CURRENT_WITH_MODULE,
    MODULE_SUPPLY_COUNTED,
    MODULE_LIMITS,
    CURRENT_WITH_CONTACTS,
    CURRENT_WITH_BYPASS,
    COIL_VOLTAGE,
    HEAT,
    AVERAGE,
    WARMED,
    COIL_VERDICT,
    CRANKING_SUPPLY,
    NO_BALLAST,
    TURNED,
    TURNED_WITH_TAP,
    BYPASSED,
    ELEMENT_CARRIES,
    ELEMENT_OPEN,
    ELEMENT_SHORTED,
    BALLAST_GIVES,
    BALLAST_NOT_REACHED,
    WANTED_BY_VOLTAGE,
    WANTED_BY_HEAT,
    BALLAST_BY_OHMS_LAW,
    TAP,
    TAP_NOT_REACHED
}
