package loomwright.ignition.primary;

import loomwright.message.MessageCode;

/** What an ignition may be. */
enum AcceptedIgnition implements MessageCode {
    NO_WASTED_SPARK,
    EVEN_CYLINDERS,
    MODULE_LIMIT
}
