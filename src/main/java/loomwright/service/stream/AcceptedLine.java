package loomwright.service.stream;

import loomwright.message.MessageCode;

/** What a line of a bulk run may hold. */
enum AcceptedLine implements MessageCode {
    HEADER,
    INPUT,
    KEY
}
