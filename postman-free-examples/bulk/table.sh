#!/bin/sh
# A table of loads in, a table of wire sizes out: rows as a spreadsheet saves them.
set -eu

curl -sS --fail -N -T - -X POST -H 'Content-Type: text/csv' \
    "${LOOMWRIGHT:-http://127.0.0.1:8080}/v1/bulk/conductor-size" <<'TABLE'
key,currentA,lengthM,circuit,system
head lamps,9.2,2.5,lighting,metric-iso6722
horn,5,1.8,,metric-iso6722
ignition,4,1.2,ignition-feed,metric-iso6722
TABLE
