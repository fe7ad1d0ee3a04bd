package loomwright.readings;

import loomwright.message.MessageCode;

/** What a question about a sheet of readings may name. */
enum AcceptedTolerance implements MessageCode {
    TOLERANCE,
    CONSUMER,
    THING
}
