#!/usr/bin/env bash
# Shares the lines of a file among several `check`, with Apache Spark on this machine (its local mode).
#
#   spark.sh PLANS FOLDER [PARTITIONS]        4 partitions unless said
#
# FOLDER must not be there yet; it gets one file of answers for each partition, which are in order. Needs Maven and a JDK 17; what
# Spark needs comes from the registry that Maven is set up for, 75 if it cannot be reached. On a cluster the same program is given
# to spark-submit, with `loomwright` installed on each worker.
set -euo pipefail
here=$(cd "$(dirname "$0")" && pwd)
made=$(mktemp -d)
trap 'rm -rf "$made"' EXIT
mvn -B -ntp -q -f "$here/spark/pom.xml" dependency:build-classpath \
  -Dmdep.outputFile="$made/classpath" >"$made/log" 2>&1 || { cat "$made/log"; echo "Maven could not fetch Spark."; exit 75; }
javac -d "$made" -cp "$(cat "$made/classpath")" "$here/spark/SparkPipe.java"
# What Spark 3.5 needs of the inside of Java 17, as its own start script says.
opens=$(printf -- '--add-opens=java.base/%s=ALL-UNNAMED ' java.lang java.lang.invoke java.lang.reflect java.io java.net java.nio \
  java.util java.util.concurrent java.util.concurrent.atomic sun.nio.ch sun.nio.cs sun.security.action sun.util.calendar)
# shellcheck disable=SC2086
java $opens -Dfile.encoding=UTF-8 -cp "$made:$(cat "$made/classpath")" \
  SparkPipe "$1" "$2" "${3:-4}" "$here/check.sh" 2>"$made/log" || { tail -30 "$made/log"; exit 1; }
