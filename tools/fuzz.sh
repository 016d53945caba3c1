#!/bin/bash
# Runs every fuzz target for some seconds, two at a time. Usage: tools/fuzz.sh [SECONDS]
#
# The target x_fuzz starts from fuzz/seeds/x/, with the words of fuzz/x.dict if there is one. What it
# finds worth keeping goes to build/fuzz/corpus/x/ and an input that crashes to build/fuzz/crash-x-...:
# run build/fuzz/bin/x_fuzz on that file to see it again.
# Builds first: cmake --preset fuzz && ninja -C build/fuzz fuzz_targets.
set -uo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."
seconds=${1-20}

fuzz_one() {
  local name=$1 seconds=$2 log=build/fuzz/$1.log
  if [[ ! -d fuzz/seeds/$name ]]; then
    echo "failed: fuzz/seeds/$name is missing"
    return 1
  fi
  mkdir -p "build/fuzz/corpus/$name"
  local options=(-max_total_time="$seconds" -timeout=10 -rss_limit_mb=4096 -print_final_stats=1
    -artifact_prefix="build/fuzz/crash-$name-")
  if [[ -f fuzz/$name.dict ]]; then options+=(-dict="fuzz/$name.dict"); fi
  if ! "build/fuzz/bin/${name}_fuzz" "${options[@]}" "build/fuzz/corpus/$name" "fuzz/seeds/$name" \
    >"$log" 2>&1 </dev/null; then
    tail -n 40 "$log"
    echo "failed: $name"
    return 1
  fi
  local inputs
  inputs=$(sed -n 's/^stat::number_of_executed_units: *//p' "$log")
  if [[ ${inputs:-0} == 0 ]]; then
    echo "failed: $name ran no input"
    return 1
  fi
  echo "passed: $name, $inputs inputs"
}
export -f fuzz_one

mapfile -t names < <(find fuzz -maxdepth 1 -name '*_fuzz.cc' -printf '%f\n' | sed 's/_fuzz\.cc$//' | sort)
results=$(printf '%s\0' "${names[@]}" | xargs -0 -P 2 -I '{}' bash -c 'fuzz_one "$0" "$1"' '{}' "$seconds")
echo "$results"
passed=$(grep -c '^passed: ' <<<"$results")
failed=$((${#names[@]} - passed))
echo "$passed passed, $failed failed"
[[ $failed == 0 ]]
