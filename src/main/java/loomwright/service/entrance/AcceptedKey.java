package loomwright.service.entrance;

import loomwright.message.MessageCode;

/** What the files and options of access may hold. */
public enum AcceptedKey implements MessageCode {
    LINE,
    ANY,
    ORIGIN
}
