#!/usr/bin/env bash
# Runs everything that docs/benchmarks.md reports, and writes one file of results, as Markdown and as JSON.
# Needs a JDK 17, Maven, Python 3.9 and GNU time; the script peer also GeoPandas and networkx
# (Debian: time python3-geopandas python3-networkx). Needs no special rights. Nothing else should be running.
set -euo pipefail
here=$(cd "$(dirname "$0")" && pwd)
root=$(dirname "$here")

usage() {
  cat <<'TEXT'
benchmarks/run-all.sh [OPTION]...

  --quick              a smoke run of some minutes: one shot a benchmark, few scars; no figures to quote
  --thorough           JMH with the settings in its code: two forks, up to 100,000 scars; hours
  --sizes=LIST         scars of the runs beside the script peer (10000,100000; quick: 2000)
  --large              Meadowmark alone with 300,000 scars too
  --huge               the whole job in parts too, with 100,000 and 1,000,000 scars: an hour
  --beds=FILE#LAYER    beds to scar (the open 1999 beds in ../shared/data, else those of the bundled sample)
  --areas=FILE#LAYER   management areas (those beside these beds; "" for none)
  --peer-python=FILE   Python that has GeoPandas and networkx (/usr/bin/python3)
  --quiet-minutes=N    wait at most so long for the load to fall before each run (30; quick: 0)
  --output=DIR         where the results go (benchmarks/target/results)
  --no-build           use what was built before
  --no-jmh             whole processes only
  --no-processes       JMH only
TEXT
}

quick=no thorough=no large=no huge=no build=yes jmh=yes processes=yes
sizes='' beds='' areas='' areas_given=no peer_python=/usr/bin/python3 quiet_minutes='' output=$here/target/results
for option in "$@"; do
  case $option in
    --quick) quick=yes ;;
    --thorough) thorough=yes ;;
    --large) large=yes ;;
    --huge) huge=yes ;;
    --no-build) build=no ;;
    --no-jmh) jmh=no ;;
    --no-processes) processes=no ;;
    --sizes=*) sizes=${option#*=} ;;
    --beds=*) beds=${option#*=} ;;
    --areas=*) areas=${option#*=} areas_given=yes ;;
    --peer-python=*) peer_python=${option#*=} ;;
    --quiet-minutes=*) quiet_minutes=${option#*=} ;;
    --output=*) output=${option#*=} ;;
    --help) usage; exit 0 ;;
    *) echo "error: no such option: $option; see --help" >&2; exit 2 ;;
  esac
done

python=python3
command -v "$python" >/dev/null || { echo "error: python3 is not on the path; install it" >&2; exit 1; }
if [ "$processes" = yes ] && [ ! -x /usr/bin/time ]; then
  echo "error: GNU time is not at /usr/bin/time; install it (Debian: time) or give --no-processes" >&2
  exit 1
fi

if [ "$quick" = yes ]; then
  sizes=${sizes:-2000} quiet_minutes=${quiet_minutes:-0}
else
  sizes=${sizes:-10000,100000} quiet_minutes=${quiet_minutes:-30}
fi
alone=''
[ "$large" = yes ] && alone=300000
in_parts=''
[ "$huge" = yes ] && in_parts=100000,1000000

if [ -z "$beds" ]; then
  data=$root/../shared/data
  if [ -e "$data/tampa-bay-seagrass-1999.gpkg" ]; then
    beds=$data/tampa-bay-seagrass-1999.gpkg#sg1999
    [ "$areas_given" = yes ] || areas=$data/tampa-bay-segments.gpkg#segclp
  else
    echo "note: no ../shared/data; the beds of the bundled sample are taken; name others with --beds" >&2
    beds=$root/gis-samples/data/quillmere-sound/season-1/beds.gpkg
    [ "$areas_given" = yes ] || areas=''
  fi
fi

mkdir -p "$output"
output=$(cd "$output" && pwd)
# Results of an earlier run must not pass for this one's.
rm -f "$output"/{jmh-*.json,jmh.txt,processes.json,processes.md,results.json,results.md}
status=0

if [ "$build" = yes ]; then
  echo "building" >&2
  (cd "$root" && mvn -B -ntp -q -Pbenchmarks package -DskipTests)
fi

run_jmh() { # NAME OPTION...
  local name=$1
  shift
  (cd "$root" && exec java -jar "${jars[0]}" "$@" -foe true -rf json -rff "$output/jmh-$name.json" \
    >>"$output/jmh.txt" 2>&1) || { status=1; echo "error: JMH failed; see $output/jmh.txt" >&2; }
}

if [ "$jmh" = yes ]; then
  echo "JMH; see $output/jmh.txt" >&2
  jars=("$here"/target/lib/benchmarks-*.jar)
  [ -e "${jars[0]}" ] || { echo "error: no ${jars[0]}; leave out --no-build" >&2; exit 1; }
  # A million scars along channels, and half a million matched: each shot is a long run of its own.
  large_ones='ChannelRanking|ScarMatching'
  if [ "$quick" = yes ]; then
    run_jmh stages -f 1 -wi 0 -i 1 -r 1s -w 1s -p scars=2000 -e "$large_ones"
  elif [ "$thorough" = yes ]; then
    run_jmh all
  else
    run_jmh stages -f 1 -wi 2 -i 3 -p scars=10000 -e "$large_ones"
    run_jmh large -f 1 -wi 0 -i 1 "$large_ones"
  fi
fi

if [ "$processes" = yes ]; then
  echo "whole processes; see $output/processes.md" >&2
  if "$peer_python" -c 'import geopandas, networkx' 2>/dev/null; then
    both=$sizes
  else
    echo "note: $peer_python has no GeoPandas or networkx; Meadowmark runs alone" >&2
    both='' alone=$sizes${alone:+,$alone}
  fi
  "$python" "$here/compare.py" --sizes "$both" --ours-only "$alone" --in-parts "$in_parts" --beds "$beds" --areas "$areas" \
    --peer-python "$peer_python" --quiet-minutes "$quiet_minutes" --work "$here/target/compare" \
    --json "$output/processes.json" >"$output/processes.md" || {
    status=1
    echo "error: a run failed or figures differ; see $output/processes.md" >&2
  }
fi

"$python" "$here/write_results.py" --root "$root" --output "$output" --quick "$quick" --status "$status"
echo "Results are in $output/results.md and $output/results.json" >&2
exit "$status"
