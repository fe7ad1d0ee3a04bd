package loomwright.diagnosis;

import loomwright.message.MessageCode;

/** What a diagnosis says to a person. */
enum DiagnosisText implements MessageCode {
    // The outcome.
    PLAN_CONSISTENT,
    ONE_FAULT,
    TWO_FAULTS,
    UNEXPLAINED,
    NEAREST,
    EQUAL_EXPLANATIONS,
    CONFIRM_FIRST,
    NOT_CONFIRMED,
    CONTACTS_SEEM_OPEN,
    LOAD_ITSELF,
    // What one way to explain is.
    NO_FAULT,
    FAULT,
    FAULTS,
    // What to ask first.
    LEADS_REVERSED,
    FACTOR_THOUSAND,
    SWITCH_ELSEWHERE,
    VOLTS,
    OHMS,
    TAKE_AGAIN,
    LOOK_AGAIN,
    // What to do about a battery.
    ADVICE_DISCHARGED,
    ADVICE_WORN,
    ADVICE_NOT_CHARGING,
    // The next reading.
    MEASURE_VOLTS,
    MEASURE_OHMS,
    LEAD_ON,
    LEAD_ON_WIRES,
    WIRE_OF_COLOUR,
    STATE,
    SWITCH_AT,
    CONTACTS_AT,
    MEANS,
    OR,
    // How the answer was found.
    READINGS_DEVIATE,
    FAULTS_TRIED,
    PAIRS_TRIED,
    UNSOLVED,
    SPREAD,
    WEIGHTS
}
