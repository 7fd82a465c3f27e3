#!/usr/bin/env bash
# Measures the whole program on a big made-up log: wall time, processor time and largest memory of N runs, each in a
# fresh process, then seconds per million strips by stage.
#
#   src/bench/whole-run.sh [-n RUNS] [-x TIMES] [-k clean|rough|flicker] [-d FOLDER]
#
#   -n   runs of each kind; the medians are printed (5)
#   -x   how many times 144,000 records (1)
#   -k   clean RTK, rough differential fixes, or flickering meters (clean)
#   -d   where the log and the results go (target/bench/whole-run)
#
# Needs bash, awk, GNU time (package "time"), Maven and a JDK. Nothing else should run on the machine meanwhile.
set -euo pipefail
cd "$(dirname "$0")/../.."
. src/bench/site.sh

runs=5
times=1
kind=clean
work=target/bench/whole-run
while getopts n:x:k:d: option; do
    case $option in
        n) runs=$OPTARG ;;
        x) times=$OPTARG ;;
        k) kind=$OPTARG ;;
        d) work=$OPTARG ;;
        *) sed -n '2,12p' "$0" >&2; exit 2 ;;
    esac
done

jar=target/bench/rowledger.jar
classes=target/bench/test-classes
if [[ ! -f $jar || -n $(find src report-templates pom.xml -newer "$jar" -print -quit) ]]; then
    echo "building" >&2
    mvn -q -B -Pbench package
    touch "$jar"
fi

log=$work/$kind-x$times
if [[ ! -f $log/whole ]]; then
    echo "writing a log of $((144000 * times)) records" >&2
    java -cp "$classes:$jar:$(cat target/bench/classpath.txt)" io.rowledger.sim.BenchmarkLogs "$log" "$times" "$kind"
    touch "$log/whole"
fi
cat "$log/log.csv" > /dev/null  # into the file cache, for the first run as for the others

median() { sort -g | awk '{v[NR] = $1} END {print NR % 2 ? v[(NR + 1) / 2] : (v[NR / 2] + v[NR / 2 + 1]) / 2}'; }

figures=$work/figures.txt
stages=$work/stages.txt
: > "$figures"
: > "$stages"
for ((i = 1; i <= runs; i++)); do
    command time -o "$work/time.txt" -f '%e %U %S %M' java -jar "$jar" report "$log/log.csv" --rig "$log/rig.yaml" \
        --boundary "$log/boundary.geojson" --out "$work/results" > /dev/null
    cat "$work/time.txt" >> "$figures"
done
for ((i = 1; i <= runs; i++)); do
    java -cp "$classes:$jar" io.rowledger.bench.Stages "$log" "$work/results" >> "$stages"
done

report() {
echo "$kind, $((144000 * times)) records, $(wc -c < "$log/log.csv") bytes; median of $runs runs on $(nproc) cores;" \
    "$(java -version 2>&1 | head -1)"
awk '{print $1}' "$figures" | median | awk '{printf "wall     %7.2f s\n", $1}'
awk '{print $2 + $3}' "$figures" | median | awk '{printf "cpu      %7.2f s\n", $1}'
awk '{print $4}' "$figures" | median | awk '{printf "memory   %7.0f MB", $1 / 1024}'
awk '{if ($4 > m) m = $4} END {printf " (largest %.0f MB)\n", m / 1024}' "$figures"
echo
strips=$(awk -F'\t' '$1 == "strips" {print $2; exit}' "$stages")
awk -v n="$strips" 'BEGIN {printf "%.2f million strips (steps x rows)\n\n", n / 1e6}'
echo "| stage | s | s per million strips |"
echo "| --- | ---: | ---: |"
awk -F'\t' '$1 != "strips" && !seen[$1]++ {print $1}' "$stages" | while read -r stage; do
    awk -F'\t' -v s="$stage" '$1 == s {print $2}' "$stages" | median |
        awk -v s="$stage" -v n="$strips" '{printf "| %s | %.2f | %.3f |\n", s, $1, $1 / n * 1e6}'
done
}

report | tee "$work/table.txt"
# The page has the table of the plain case.
[[ $kind == clean && $times == 1 ]] && site_table speed whole-run < "$work/table.txt" || true
