package loomwright.network;

import loomwright.message.MessageCode;

/** What an element of a network may be. */
public enum AcceptedElement implements MessageCode {
    ZERO_OR_NUMBER,
    ANY_NODE,
    TWO_NODES,
    NODE_INDEX,
    RESISTOR
}
