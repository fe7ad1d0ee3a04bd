#!/usr/bin/env bash
# CSV answers open as they are: a spreadsheet program converts some, and no cell may have changed.
# Needs soffice (Debian: libreoffice-calc), curl and python3.
set -euo pipefail
service=${1:-${LOOMWRIGHT:-http://127.0.0.1:8080}}
folder=$(mktemp -d)
trap 'rm -rf "$folder"' EXIT
curl -sf "$service/v1/conductors?format=csv" >"$folder/conductors.csv"
curl -sf "$service/v1/ballast?elementsOhm=0.7,0.7&bypassTap=1&coilPrimaryOhm=1.5&format=csv" >"$folder/ballast.csv"
curl -sf "$service/v1/spark?speedFromRpm=500&speedToRpm=6000&speedSteps=12&format=csv" >"$folder/spark.csv"
curl -sf "$service/v1/examples/sandpiper-unguarded-bypass" >"$folder/plan.json"
for of in solution review; do
  curl -sf -H 'Content-Type: application/json' --data-binary @"$folder/plan.json" \
    "$service/v1/plans/$of?format=csv" >"$folder/$of.csv"
done
mkdir "$folder/opened"
# Commas, double quotes, UTF-8, English numbers recognised; out again with every digit that the cell holds.
soffice -env:UserInstallation="file://$folder/profile" --headless --infilter='CSV:44,34,76,1,,1033,false,true' \
  --convert-to fods --outdir "$folder/opened" "$folder"/*.csv >"$folder/log" 2>&1
python3 "$(dirname "$0")/same_cells.py" "$folder" "$folder/opened"
