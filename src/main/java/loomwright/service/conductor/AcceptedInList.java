package loomwright.service.conductor;

import loomwright.message.MessageCode;

/** What a list of the service holds. */
enum AcceptedInList implements MessageCode {
    TABLE
}
