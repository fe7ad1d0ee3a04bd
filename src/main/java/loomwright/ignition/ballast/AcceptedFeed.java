package loomwright.ignition.ballast;

import loomwright.message.MessageCode;

/** What the feed of an ignition coil may be. */
enum AcceptedFeed implements MessageCode {
    ELEMENT,
    CONTACTS_OR_MODULE,
    NO_THERMAL_RESISTANCE,
    WINDOW
}
