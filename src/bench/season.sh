#!/usr/bin/env bash
# Measures `batch` on a made-up season: wall and processor time for each field, how many cores were busy and how much
# memory was held, quarter by quarter of the run. What must be seen: the last quarter holds no more than the ones before,
# and as many cores are busy as there are jobs at a time.
#
#   src/bench/season.sh [-n FIELDS] [-j JOBS] [-m HEAP] [-d FOLDER]
#
#   -n   fields (200)
#   -j   fields done at a time (as many as cores)
#   -m   the largest heap, as java -Xmx has it (java's own default, a quarter of the memory)
#   -d   where the logs and the results go (target/bench/season)
#
# Needs bash, awk, Maven, a JDK and Linux (/proc). Nothing else should run on the machine meanwhile.
set -euo pipefail
cd "$(dirname "$0")/../.."
. src/bench/site.sh

fields=200
jobs=$(nproc)
heap=
work=target/bench/season
while getopts n:j:m:d: option; do
    case $option in
        n) fields=$OPTARG ;;
        j) jobs=$OPTARG ;;
        m) heap=-Xmx$OPTARG ;;
        d) work=$OPTARG ;;
        *) sed -n '2,14p' "$0" >&2; exit 2 ;;
    esac
done

jar=target/bench/rowledger.jar
classes=target/bench/test-classes
if [[ ! -f $jar || -n $(find src report-templates pom.xml -newer "$jar" -print -quit) ]]; then
    echo "building" >&2
    mvn -q -B -Pbench package
    touch "$jar"
fi

mkdir -p "$work"
logs=$work/logs-$fields
if [[ ! -f $logs.records ]]; then
    echo "writing $fields logs" >&2
    rm -rf "$logs"
    java -cp "$classes:$jar:$(cat target/bench/classpath.txt)" io.rowledger.sim.SeasonLogs "$logs" "$fields" > "$work/records"
    mv "$work/records" "$logs.records"
fi

rm -rf "$work/results"
samples=$work/samples.txt
gc=$work/gc.txt
: > "$samples"
rm -f "$gc"
start=$(date +%s%N)
java $heap -Xlog:gc:file="$gc":uptime -jar "$jar" batch "$logs" --out "$work/results" --jobs "$jobs" > "$work/said.txt" &
pid=$!
hertz=$(getconf CLK_TCK)
# Seconds since the start, processor seconds, resident MB.
while [[ -r /proc/$pid/stat ]]; do
    now=$(date +%s%N)
    ticks=$(sed 's/.*) //' /proc/$pid/stat 2> /dev/null | awk '{print $12 + $13}') || break
    mb=$(awk '/^VmRSS/ {print $2 / 1024}' /proc/$pid/status 2> /dev/null) || break
    [[ -n $ticks && -n $mb ]] && awk -v a="$start" -v b="$now" -v t="$ticks" -v h="$hertz" -v m="$mb" \
        'BEGIN {printf "%.2f %.2f %.0f\n", (b - a) / 1e9, t / h, m}' >> "$samples"
    sleep 0.5
done
status=0
wait $pid || status=$?
report() {
head -3 "$work/said.txt"
tail -3 "$work/said.txt" | head -1
echo "exit status $status; $fields fields, $(cat "$logs.records") records, $(du -sm "$logs" | cut -f1) MB of logs, $jobs at a" \
    "time on $(nproc) cores; $(java -version 2>&1 | head -1)"
awk -v n="$fields" 'END {printf "wall %.1f s, cpu %.1f s; for each field %.2f s wall, %.2f s cpu; %.2f cores busy\n",
    $1, $2, $1 / n, $2 / n, $2 / $1}' "$samples"
echo
echo "| quarter of the run | cores busy | resident, mean MB | largest MB | heap in use after collecting, mean MB | largest MB |"
echo "| --- | ---: | ---: | ---: | ---: | ---: |"
end=$(tail -1 "$samples" | cut -d' ' -f1)
for quarter in 0 1 2 3; do
    row=$(awk -v q=$quarter -v e="$end" '{at = int($1 / e * 4); if (at == q) {
            n++; sum += $3; if ($3 > most) most = $3; if (n == 1) {t = $1; c = $2} last = $1; cpu = $2}}
        END {printf "%.2f | %.0f | %.0f", (cpu - c) / (last - t), sum / n, most}' "$samples")
    # [12.345s] GC(7) Pause Young (Normal) (G1 Evacuation Pause) 310M->120M(512M) 12.3ms
    held=$(grep Pause "$gc" | sed -n 's/^\[\([0-9.]*\)s\].* [0-9]*M->\([0-9]*\)M(.*/\1 \2/p' |
        awk -v q=$quarter -v e="$end" '{at = int($1 / e * 4); if (at == q) {n++; sum += $2; if ($2 > most) most = $2}}
            END {if (n) printf "%.0f | %.0f", sum / n, most; else printf "– | –"}')
    echo "| $((quarter + 1)) | $row | $held |"
done
}

report | tee "$work/table.txt"
site_table speed season < "$work/table.txt"
