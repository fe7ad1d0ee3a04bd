package loomwright.sizing;

import loomwright.message.MessageCode;

/** What a run of wire may be. */
enum AcceptedRun implements MessageCode {
    ONLY_WITH,
    LENGTH,
    AMBIENT,
    LOAD
}
