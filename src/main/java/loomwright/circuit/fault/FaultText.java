package loomwright.circuit.fault;

import loomwright.message.MessageCode;

/** What a fault is, as a sentence. */
enum FaultText implements MessageCode {
    LEADS_SWAPPED,
    CONNECTORS_CROSSED,
    WIRE_OFF,
    WIRE_MISPLACED,
    RELAY_STUCK_OPEN,
    RELAY_STUCK_CLOSED,
    BAD_JOINT,
    FUSE_BLOWN,
    EARTH_LOST,
    SHORT_TO_EARTH,
    OPEN_INSIDE,
    BATTERY_DISCHARGED,
    /** Less than half charged. */
    BATTERY_FLAT,
    /** Half charged or more. */
    BATTERY_PARTLY_CHARGED,
    BATTERY_WORN,
    NOT_CHARGING,
    SHORT_INSIDE,
    WIRES_TOUCH,
    VALUE_OFF,
    CONTACTS_WORN,
    REGULATOR_OFF,
    SWITCH_STUCK,
    CONTACT_OPEN,
    CONTACT_WORN,
    CONTACT_SOUND
}
