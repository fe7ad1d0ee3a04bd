package loomwright.list;

import loomwright.message.MessageCode;

/** Where something stands in a list, in the words of its writer. */
enum ListPlace implements MessageCode {
    WORKSHEET,
    ROW,
    COLUMN,
    HEADINGS
}
