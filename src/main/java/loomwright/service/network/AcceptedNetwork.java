package loomwright.service.network;

import loomwright.message.MessageCode;

/** What a network to solve may name. */
enum AcceptedNetwork implements MessageCode {
    TWO_NAMES,
    NODE,
    UNUSED_ELEMENT,
    OTHER_NODE
}
