#!/usr/bin/env bash
# The long form of the fuzzing: coverage-guided, target by target, so many inputs each.
#
#   mvn -Pfuzz -q -pl device-bridge -am -DskipTests test-compile dependency:build-classpath \
#     -Dmdep.outputFile=target/fuzz.classpath
#   device-bridge/src/fuzz/scripts/fuzz.sh "TEXT_LINE:1500000 NMEA:1000000"
#
# What the TOML library asserts of itself is off, as it is for its users.
# Prints a line for each target: name, inputs, seconds, exit status (0: nothing found). What was found lies
# beside the log, in target/fuzz. Without an argument it runs all targets with ten million inputs together.
set -u
cd "$(dirname "$0")/../../../.." || exit 2
ALL="TEXT_LINE:1700000 LINE_PATTERN:1500000 NMEA:1200000 GATT:1200000 REGISTERS:1200000
STREAM_OF_LINES:1000000 STREAM_OF_FRAMES:1000000 DISPLAY:700000 LINK:300000 CAPTURE:100000
LEARN:60000 PROFILE_FILE:30000 JOB_FILE:10000"
SEED=${SEED:-20260302}
WORK=$PWD/target/fuzz
CORPORA=$PWD/device-bridge/src/test/resources/datumpeg/bridge/fuzz
CLASSES=$PWD/device-bridge/target/test-classes:$PWD/device-bridge/target/classes:$PWD/analysis/target/classes
CLASSPATH_OF_LIBRARIES=$(cat "$PWD/device-bridge/target/fuzz.classpath")
for target in ${1:-$ALL}; do
  name=${target%%:*}
  folder=${name,,}
  mkdir -p "$WORK/$folder"
  began=$(date +%s)
  (cd "$WORK" && java -Xmx700m -da:org.tomlj... -Ddatumpeg.root="$OLDPWD" -Ddatumpeg.fuzz.target="$name" \
    -cp "$CLASSES:$CLASSPATH_OF_LIBRARIES" com.code_intelligence.jazzer.Jazzer \
    --target_class=datumpeg.bridge.fuzz.FuzzEntry "--instrumentation_includes=datumpeg.**" \
    -runs="${target##*:}" -seed="$SEED" -max_len=512 -timeout=10 -rss_limit_mb=2000 \
    "$folder" "$CORPORA/$folder") > "$WORK/$name.log" 2>&1
  status=$?
  echo "$name ${target##*:} $(($(date +%s) - began)) $status"
done
