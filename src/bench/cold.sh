#!/usr/bin/env bash
# Measures whole processes from cold: a small job (the sample with the plugged row) and a big one (144,000 records, 24 rows) by
# `java -jar`, by the installed launcher and, with -o, by another jar, in turn; the share of the compilers by Java's own count; the
# same ground by a general geometry library. Writes the tables of src/site/markdown/speed.md.
#
#   src/bench/cold.sh [-n RUNS] [-o JAR] [-s FOLDER] [-b RIG.yaml] [-l LAUNCHER] [-g] [-d FOLDER]
#
#   -n   counted runs of each (5)
#   -o   another jar to compare with, put first
#   -s   that jar's own checkout, for sample rig files it understands (this one)
#   -b   a rig file of the big job that it understands (that of this program)
#   -l   the launcher of an image that mvn -Pinstaller package built (left out where there is none)
#   -g   also the general geometry library (python3-shapely, python3-numpy); takes minutes
#   -d   where the log and the results go (target/bench/cold)
#
# Needs bash, Python 3, Maven and a JDK. Nothing else should run on the machine meanwhile.
set -euo pipefail
cd "$(dirname "$0")/../.."
. src/bench/site.sh

runs=5
other=
others=.
launcher=target/installer/deb/opt/rowledger/bin/rowledger
general=
big_rig=
work=target/bench/cold
while getopts n:o:s:b:l:gd: option; do
    case $option in
        n) runs=$OPTARG ;;
        o) other=$OPTARG ;;
        s) others=$OPTARG ;;
        b) big_rig=$OPTARG ;;
        l) launcher=$OPTARG ;;
        g) general=1 ;;
        d) work=$OPTARG ;;
        *) sed -n '2,19p' "$0" >&2; exit 2 ;;
    esac
done

jar=target/bench/rowledger.jar
if [[ ! -f $jar || -n $(find src report-templates pom.xml -newer "$jar" -print -quit) ]]; then
    echo "building" >&2
    mvn -q -B -Pbench package
    touch "$jar"
fi
mkdir -p "$work"
log=$work/log
if [[ ! -f $log/whole ]]; then
    java -cp "target/bench/test-classes:$jar:$(cat target/bench/classpath.txt)" io.rowledger.sim.BenchmarkLogs "$log" 1 clean
    touch "$log/whole"
fi
big_rig=${big_rig:-$log/rig.yaml}

# What install.md shows: an archive of the jar's classes, made once.
archived=$work/archived/rowledger.jar
if [[ ! -f ${archived%.jar}.jsa || $jar -nt ${archived%.jar}.jsa ]]; then
    rm -rf "$work/archived"
    mkdir -p "$work/archived"
    cp "$jar" "$archived"
    java -XX:ArchiveClassesAtExit="${archived%.jar}.jsa" -Xlog:disable -jar "$archived" demo --out "$work/archived/demo" > /dev/null
fi

small() {
    local sample=$1/sample-logs/plugged-row
    echo "report $sample/log.csv --rig $sample/rig.yaml --boundary $sample/boundary.geojson --quiet --out $work/$2"
}
big() { echo "report $log/log.csv --rig $1 --boundary $log/boundary.geojson --quiet --out $work/$2"; }

pairs() { # pairs: the calls in turn; $1 is the function that makes the arguments, the rest those of the other and of this program
    local -a calls=()
    [[ -n $other ]] && calls+=("other jar=java -jar $other $1")
    calls+=("current jar=java -jar $jar $2" "current jar, class archive beside it=java -jar $archived $2")
    [[ -x $launcher ]] && calls+=("installed=$launcher $3")
    /usr/bin/python3 src/bench/pairs.py "$runs" "${calls[@]}"
}

compilers() { # seconds of the compilers' threads in one run, as Java counts them
    java -XX:+CITime -jar "$jar" $1 2> /dev/null | awk '
        /^ *C1 {/ {sub(/.*standard: */, ""); c1 = $1}
        /^ *C2 {/ {sub(/.*standard: */, ""); c2 = $1}
        END {printf "Compilers in one run of `java -jar`: first %.2f s, optimizing %.2f s.\n", c1, c2}'
}

report() {
    echo "Median of $runs runs in turn on $(nproc) cores; $(java -version 2>&1 | head -1)"
    echo
    echo "Small job, 5,797 records and 12 rows:"
    echo
    pairs "$(small "$others" other)" "$(small . jar)" "$(small . installed)"
    echo
    compilers "$(small . jar)"
    echo
    echo "Big job, 144,000 records and 24 rows:"
    echo
    pairs "$(big "$big_rig" big-other)" "$(big "$log/rig.yaml" big-jar)" "$(big "$log/rig.yaml" big-installed)"
    echo
    compilers "$(big "$log/rig.yaml" big-jar)"
    echo
    echo "\`inspect\` on the small log:"
    echo
    local sample=sample-logs/plugged-row/log.csv
    pairs "inspect $sample" "inspect $sample" "inspect $sample"
    if [[ -n $general ]]; then
        echo
        echo "The big log's ground alone by a general geometry library, in turn with the whole report:"
        echo
        /usr/bin/python3 src/bench/pairs.py 1 "current jar=java -jar $jar $(big "$log/rig.yaml" big-jar)" \
            "general library=/usr/bin/python3 src/bench/general_stack.py $log/log.csv 24 0.762" \
            "general library, strips simplified to 5 cm=/usr/bin/python3 src/bench/general_stack.py $log/log.csv 24 0.762 0.05"
    fi
}

report | tee "$work/table.txt"
site_table speed cold < "$work/table.txt"
