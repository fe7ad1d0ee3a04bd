package loomwright;

import loomwright.message.MessageCode;

/** What the command line says, but for the descriptions of its options. */
enum CommandText implements MessageCode {
    ANSWERS_AT,
    CONTRACT,
    DOCUMENTATION,
    FIRST_ANSWER,
    ANSWERED,
    FINDINGS_COUNTED,
    RATE,
    OPTION_MUST_BE,
    LIMIT_MUST_BE,
    UNKNOWN_LIMIT,
    ORDER_IS_OF_CARS,
    LIST_IS_OF_INPUT,
    OPERATION_MUST_BE,
    NOTHING_TO_CHECK,
    CANNOT_BE_READ,
    CANNOT_BE_WRITTEN,
    REPORT_OVER_PLAN,
    HELP
}
