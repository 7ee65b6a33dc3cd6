#!/bin/sh
# How long a command takes from Return to prompt. Prints a Markdown table; the committed one is
# docs/benchmarks/startup.md. POSIX sh, date with nanoseconds (GNU or busybox), awk.
#
#   device-bridge/src/bench/scripts/startup.sh [RUNS] > docs/benchmarks/startup.md
#
# The job is the three-bay sample job with all its stages. Measure on a machine that does nothing else.
set -eu

root=$(CDPATH='' cd -- "$(dirname -- "$0")/../../../.." && pwd -P)
runs=${1:-20}
job=larkrise-01
sample=$root/sample-readings/$job
scratch=$(mktemp -d)
trap 'rm -rf "$scratch"' EXIT
export DATUMPEG_RECORD="$scratch/record.db"
java=${JAVA_HOME:+$JAVA_HOME/bin/}java
datumpeg=$root/datumpeg

now() {
  date +%s%N
}

# seconds NAME COMMAND... : median and extremes of the runs; a command that fails is a failure here too.
seconds() {
  name=$1
  shift
  "$@" > "$scratch/out" 2>&1 || {
    printf '%s failed:\n' "$name" >&2
    cat "$scratch/out" >&2
    exit 1
  }
  : > "$scratch/times"
  i=0
  while [ "$i" -lt "$runs" ]; do
    before=$(now)
    "$@" > /dev/null 2>&1
    after=$(now)
    echo $((after - before)) >> "$scratch/times"
    i=$((i + 1))
  done
  sort -n "$scratch/times" | awk -v name="$name" '
    { t[NR] = $1 / 1e9 }
    END {
      median = NR % 2 ? t[(NR + 1) / 2] : (t[NR / 2] + t[NR / 2 + 1]) / 2
      printf "| %s | %.3f | %.3f | %.3f | %d |\n", name, median, t[1], t[NR], NR
    }'
}

fresh_clone() {
  rm -rf "$scratch/clone"
  git clone -q "$root" "$scratch/clone"
  "$scratch/clone/datumpeg" demo
}

machine() {
  model=$(sed -n 's/^model name[^:]*: //p' /proc/cpuinfo 2> /dev/null | head -n 1)
  printf '%s, %s processors, %s' "${model:-$(uname -m)}" "$(getconf _NPROCESSORS_ONLN)" "$(uname -sr)"
}

"$datumpeg" --version > /dev/null
# What the crew did, line by line as the sample job tells it.
(
  cd "$sample"
  sed '/^#/d' steps.txt | while read -r line; do
    eval "\"\$datumpeg\" $line" > /dev/null
  done
)

cat << EOF
# Start-up

Wall-clock seconds of the whole command, launcher included; classes and files warm in memory.
Measured by \`device-bridge/src/bench/scripts/startup.sh\`.

- commit: $(git -C "$root" rev-parse --short HEAD)$(git -C "$root" diff --quiet HEAD || echo ' with changes')
- machine: $(machine)
- Java: $("$java" -version 2>&1 | sed -n 2p)

| command | median | least | most | runs |
|---|---|---|---|---|
EOF
seconds 'java -version' "$java" -version
seconds 'datumpeg --version' "$datumpeg" --version
seconds 'datumpeg job list' "$datumpeg" job list
seconds 'datumpeg reduce --json, three-bay job' "$datumpeg" reduce "$job" --json
runs=1
seconds 'fresh clone to the answer of datumpeg demo' fresh_clone
cat << 'EOF'

Targets: `job list` at most 0.30 s above `java -version`; `reduce --json` of the three-bay job under 1.0 s;
fresh clone to the demonstration's answer under 60 s with the dependencies already in the local repository.
EOF
