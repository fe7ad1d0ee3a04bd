package loomwright.mistakes;

import loomwright.answer.Severity;

/** What no reading shows but a person should know of a mistake. */
record Note(Severity severity, String text) {}
