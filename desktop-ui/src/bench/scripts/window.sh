#!/bin/sh
# How soon the window is usable and how long its pulses last, from the jar and with an archive of
# loaded classes as ./datumpeg starts it. Prints Markdown for docs/benchmarks/window.md. POSIX sh.
#
#   desktop-ui/src/bench/scripts/window.sh [FOLDER [JOBS [READINGS [RUNS]]]]
#
# The record is made in FOLDER (0.8 GB) and stays there for the next run. Measure on a machine that
# does nothing else.
set -eu

root=$(CDPATH='' cd -- "$(dirname -- "$0")/../../../.." && pwd -P)
folder=${1:-/dev/shm}
jobs=${2:-1000}
readings=${3:-1000}
runs=${4:-7}
scratch=$(mktemp -d)
trap 'rm -rf "$scratch"' EXIT
cd "$root"

mvn -B -q -Dquick package
mvn -B -q -Pbench -pl desktop-ui -am test-compile dependency:build-classpath \
  -Dmdep.outputFile="$scratch/classpath" -Dmdep.includeScope=test
toolkit=$(tr ':' '\n' < "$scratch/classpath" | sed -n '/openjfx-monocle/p')
jar=$root/desktop-ui/target/datumpeg.jar

bench() {
  java -Xmx2g -Dglass.platform=Monocle -Dmonocle.platform=Headless -Dprism.order=sw \
    -Djava.awt.headless=true -Dbench.commit="$(git rev-parse --short HEAD)" "$@"
}

options="-XX:TieredStopAtLevel=1 -XX:+UseG1GC -XX:MaxGCPauseMillis=15 -XX:GCTimeRatio=1" # as the launcher

one() {
  bench "$@" -cp "$jar:$toolkit:desktop-ui/target/test-classes" datumpeg.desktop.app.WindowBench \
    window "$scratch/small.db" 1
}

# As the launcher makes it: of what one run of the window loads.
bench -cp "$jar:$toolkit:desktop-ui/target/test-classes" datumpeg.desktop.app.WindowBench \
  fill "$scratch/small.db" sample-readings/larkrise-01/job.toml 1 100 > /dev/null
one -XX:DumpLoadedClassList="$scratch/all" > /dev/null 2>&1
sed '/^@lambda-proxy.*picocli/d; /monocle/d; /Bench/d' "$scratch/all" > "$scratch/list"
java -Xshare:dump -XX:SharedClassListFile="$scratch/list" -XX:SharedArchiveFile="$scratch/window.jsa" \
  -jar "$jar" > /dev/null 2>&1

bench -Dbench.options="$options -XX:SharedArchiveFile=$scratch/window.jsa" -cp "$jar:$toolkit:desktop-ui/target/test-classes" \
  datumpeg.desktop.app.WindowBench run "$folder" sample-readings/larkrise-01/job.toml \
  "$jobs" "$readings" "$runs" 2> "$scratch/errors" || {
  cat "$scratch/errors" >&2
  exit 1
}
