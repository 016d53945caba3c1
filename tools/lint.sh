#!/bin/bash
# Runs clang-tidy (see .clang-tidy) on the sources, or on those named.
#
#   tools/lint.sh                          all of core and app; takes minutes
#   tools/lint.sh core/water/density.cc    one file
set -euo pipefail
source "$(dirname "${BASH_SOURCE[0]}")/common.sh"
if [[ $# == 0 ]]; then
  mapfile -t files < <(find core app -name '*.cc' ! -name '*_test.cc' | sort)
else
  files=("$@")
fi
# Of the preset for clang, so that the compile commands hold no option that clang does not know.
[[ -f build/fuzz/compile_commands.json ]] || cmake --preset fuzz >build/lint.log
printf '%s\0' "${files[@]}" | xargs -0 -P "$jobs" -n 4 clang-tidy-14 -p build/fuzz --quiet
