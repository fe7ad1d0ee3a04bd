package loomwright.service.network;

import loomwright.message.MessageCode;

/** How a network was solved. */
enum NetworkText implements MessageCode {
    SET_UP,
    EQUATIONS,
    CHECKED,
    REDUCED,
    SEEN
}
