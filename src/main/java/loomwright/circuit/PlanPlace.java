package loomwright.circuit;

import loomwright.message.MessageCode;

/** What is missing from a plan, where no line of it can be named. */
enum PlanPlace implements MessageCode {
    EARTH,
    SOURCE
}
