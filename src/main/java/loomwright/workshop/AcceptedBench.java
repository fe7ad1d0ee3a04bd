package loomwright.workshop;

import loomwright.message.MessageCode;

/** What a question of the bench may name. */
enum AcceptedBench implements MessageCode {
    ONLY_WITH,
    MADE_FOR,
    MARKED,
    AT_POSTS,
    DWELL,
    WIRE
}
