package loomwright.mistakes;

import loomwright.answer.Severity;
import loomwright.message.Message;

/** What no reading shows but a person should know of a mistake. */
record Note(Severity severity, Message message) {}
