#!/bin/bash
# Runs every fuzz target for some seconds, two at a time. Usage: tools/fuzz.sh [SECONDS]
#
# Starts from fuzz/seeds/NAME/; what it finds worth keeping goes to build/fuzz/corpus/NAME/ and an
# input that crashes to build/fuzz/crash-NAME-.... Run a target on such a file to see it again.
# Builds first: cmake --preset fuzz && ninja -C build/fuzz fuzz_targets.
set -uo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."
seconds=${1-20}

fuzz_one() {
  local name=$1 seconds=$2 folders=() log=build/fuzz/$1.log
  mkdir -p "build/fuzz/corpus/$name"
  folders=("build/fuzz/corpus/$name")
  if [[ -d fuzz/seeds/$name ]]; then folders+=("fuzz/seeds/$name"); fi
  local options=(-max_total_time="$seconds" -timeout=10 -rss_limit_mb=4096 -print_final_stats=1
    -artifact_prefix="build/fuzz/crash-$name-")
  if [[ -f fuzz/$name.dict ]]; then options+=(-dict="fuzz/$name.dict"); fi
  if "build/fuzz/bin/$name" "${options[@]}" "${folders[@]}" >"$log" 2>&1 </dev/null; then
    local runs
    runs=$(sed -n 's/^stat::number_of_executed_units: *//p' "$log")
    if [[ ${runs:-0} == 0 ]]; then echo "failed: $name ran no input"; return 1; fi
    echo "passed: $name, $runs inputs"
  else
    tail -n 40 "$log"
    echo "failed: $name"
    return 1
  fi
}
export -f fuzz_one

mapfile -t names < <(find fuzz -maxdepth 1 -name '*_fuzz.cc' -printf '%f\n' | sed 's/\.cc$//' | sort)
results=$(printf '%s\0' "${names[@]}" | xargs -0 -P 2 -I '{}' bash -c 'fuzz_one "$0" "$1"' '{}' "$seconds")
echo "$results"
passed=$(grep -c '^passed: ' <<<"$results")
failed=$((${#names[@]} - passed))
echo "$passed passed, $failed failed"
[[ $failed == 0 ]]
