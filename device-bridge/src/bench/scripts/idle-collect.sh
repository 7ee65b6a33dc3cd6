#!/bin/sh
# Processor time and memory of `collect` with one serial link and one Bluetooth LE link on which
# nothing comes. Argument: seconds to look at it. Needs Linux, socat and dbus-daemon; run from the
# top of the repository, after a build with the profile bench (docs/benchmarks/links.md).
set -eu
seconds=${1:-600}
folder=$(mktemp -d)
pid=
trap 'kill $pid $cable $air 2> /dev/null || true; rm -rf "$folder"' EXIT
socat "pty,raw,echo=0,link=$folder/meter" "pty,raw,echo=0,link=$folder/far-end" &
cable=$!
mkfifo "$folder/held"
java -cp "device-bridge/target/test-classes:device-bridge/target/classes:$(cat device-bridge/target/bench.cp)" \
  datumpeg.bridge.link.ble.SilentMeter "$folder" < "$folder/held" > "$folder/air" 2> "$folder/air.log" &
air=$!
exec 9> "$folder/held"
while [ ! -e "$folder/meter" ] || [ "$(wc -l < "$folder/air")" -lt 2 ]; do sleep 0.1; done
DBUS_SYSTEM_BUS_ADDRESS=$(sed -n 1p "$folder/air")
export DBUS_SYSTEM_BUS_ADDRESS
./datumpeg job add sample-readings/larkrise-01/job.toml --record "$folder/record.db" > "$folder/said"
./datumpeg collect larkrise-01 --stage arrival --link "serial:$folder/meter" \
  --link "$(sed -n 2p "$folder/air")" --record "$folder/record.db" 2>> "$folder/said" &
pid=$!
sleep 20 # starting is not idling

ticks() {
  # utime and stime, fields 14 and 15 of proc(5), after the name in brackets
  sed 's/.*) //' "/proc/$pid/stat" | awk '{ print $12 + $13 }'
}

before=$(ticks)
most=0
end=$(($(date +%s) + seconds))
while [ "$(date +%s)" -lt "$end" ]; do
  sleep 5
  now=$(awk '/^VmRSS/ { print $2 }' "/proc/$pid/status")
  [ "$now" -le "$most" ] || most=$now
done
after=$(ticks)
awk -v ticks=$((after - before)) -v hertz="$(getconf CLK_TCK)" -v seconds="$seconds" -v most="$most" \
  'BEGIN { printf "| %d | %.2f | %.3f | %.0f |\n", seconds, ticks / hertz, 100 * ticks / hertz / seconds, most / 1024 }'
cat "$folder/said" >&2
tr '\0' ' ' < "/proc/$pid/cmdline" >&2
