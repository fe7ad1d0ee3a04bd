#!/usr/bin/env bash
# Answers plans in one run of `check`, in shares under GNU parallel and in partitions under Apache Spark, compares the bytes and
# says how long each took.
#
#   run.sh [COUNT [SHARES]] [parallel] [spark]        1000 plans in 4 shares with both, unless said
#
# LOOMWRIGHT_CHECK may hold the command (loomwright check --quiet ...); without it the built classes are run. Ends with 75 if a tool
# is missing.
set -euo pipefail
here=$(cd "$(dirname "$0")" && pwd)
root=$(cd "$here/../.." && pwd)
count=1000 shares=4
[[ ${1:-} =~ ^[0-9]+$ ]] && { count=$1; shift; }
[[ ${1:-} =~ ^[0-9]+$ ]] && { shares=$1; shift; }
made=$(mktemp -d)
trap 'rm -rf "$made"' EXIT
if [ -z "${LOOMWRIGHT_CHECK:-}" ]; then
  mvn -o -B -ntp -q -f "$root/pom.xml" dependency:build-classpath -Dmdep.outputFile="$made/classpath" >"$made/log" 2>&1 ||
    { cat "$made/log"; exit 75; }
  export LOOMWRIGHT_CHECK="java -cp $root/target/classes:$(cat "$made/classpath") loomwright.Main check --quiet --operation solution"
fi

"$here/plans.py" "$count" >"$made/plans.ndjson"
SECONDS=0
"$here/check.sh" <"$made/plans.ndjson" >"$made/one"
echo "one run: $count plans in $SECONDS s"
[ "$(wc -l <"$made/one")" = "$count" ] || { echo "one run answered $(wc -l <"$made/one") of $count"; exit 1; }
for engine in ${*:-parallel spark}; do
  SECONDS=0
  case $engine in
    parallel)
      command -v parallel >"$made/which" || { echo "no parallel"; exit 75; }
      "$here/parallel.sh" "$made/plans.ndjson" "$made/$engine" "$shares"
      ;;
    spark)
      "$here/spark.sh" "$made/plans.ndjson" "$made/parts" "$shares"
      cat "$made"/parts/part-* >"$made/$engine"
      ;;
  esac
  cmp "$made/one" "$made/$engine" || { echo "$engine: other bytes than one run"; exit 1; }
  echo "$engine: $count plans in $shares shares in $SECONDS s, the same bytes as one run"
done
