package loomwright.service.input;

import loomwright.message.MessageCode;

/** What a request may send. */
enum AcceptedBody implements MessageCode {
    DOUBLE,
    FORM_BOUNDARY,
    FORM_FIELDS,
    PARAMETER_ONCE,
    ONE_PLAN,
    TWO_PLANS,
    FIELD_ONCE,
    FORM,
    ANSWER,
    STATED,
    PLAN_ITSELF,
    OBJECT_WITH,
    VALUES_OF_THE_QUESTION,
    ONE_OBJECT
}
