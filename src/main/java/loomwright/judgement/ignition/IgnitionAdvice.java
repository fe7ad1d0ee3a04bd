package loomwright.judgement.ignition;

import loomwright.message.MessageCode;

/** What is no mistake of the circuit but may be one of its use. */
public enum IgnitionAdvice implements MessageCode {
    KEY_NOT_TO_BE_LEFT_ON,
    TURN_KEY_OFF
}
