#!/usr/bin/env bash
# Shares the lines of a file among several `check`, with GNU parallel, and puts the answers together in order.
#
#   parallel.sh PLANS ANSWERS [JOBS]        as many jobs as processors unless said
#
# Each job reads blocks of whole lines; --keep-order lets the answers come in the order of the lines.
set -euo pipefail
here=$(cd "$(dirname "$0")" && pwd)
size=$(stat -c %s "$1")
jobs=${3:-$(nproc)}
parallel --will-cite --pipe --keep-order --jobs "$jobs" --block $((size / jobs + 1)) "$here/check.sh" <"$1" >"$2"
