package loomwright.ignition.change;

import loomwright.message.MessageCode;

/** How a change of the ignition was judged. */
enum ChangeText implements MessageCode {
    ONE_SUPPLY,
    BEFORE,
    AFTER,
    WIRE_CARRIES,
    BYPASS_AT_START_WIRE,
    BALLAST_KEEPS_SOLENOID_OUT
}
