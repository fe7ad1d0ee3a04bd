#!/usr/bin/env bash
# One partition: lines on standard input, answers on standard output, as a program in a pipe.
#
# `check` ends with the worst finding as its status, and 3 if a line could not be answered; its answer says so too. An engine
# takes any status but 0 for a broken program, so here only a wrong command line and a fault of the program count as that.
# LOOMWRIGHT_CHECK holds the command with its options; `loomwright check --quiet` unless set.
set -uo pipefail
${LOOMWRIGHT_CHECK:-loomwright check --quiet}
code=$?
[ "$code" -lt 64 ]
