package loomwright.operation;

import loomwright.message.MessageCode;

/** When a load should be live, as parts of the sentences of {@link UsualIntent.Rule}. */
enum IntentText implements MessageCode {
    ANY_TIME,
    TIMES,
    TIME,
    SWITCHES,
    SWITCHES_AND_TIMES
}
