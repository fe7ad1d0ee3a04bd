package loomwright.list;

import loomwright.message.MessageCode;

/** What a list of wires may be. */
enum AcceptedList implements MessageCode {
    ONE_CAR,
    TOGETHER,
    ALL_FIRST,
    ROWS,
    COLUMNS,
    CELL_CHARACTERS,
    FILES_INSIDE,
    UNPACKED_BYTES,
    UTF8,
    CLOSED_QUOTES,
    WORKBOOK,
    NO_DOCUMENT_TYPE,
    HEADINGS,
    READINGS
}
