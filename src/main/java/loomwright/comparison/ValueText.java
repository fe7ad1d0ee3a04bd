package loomwright.comparison;

import loomwright.message.MessageCode;

/** Words that stand for a value of a property, or between several. */
enum ValueText implements MessageCode {
    NONE,
    YES,
    NO,
    OPEN,
    OR,
    WITH
}
