#!/bin/bash
# Explores the small plant of core/closing deeper than the unit tests do, and holds the numbers of states to
# those of bench/exploration. Takes minutes; ./check --long runs it. Options go to the program.
set -euo pipefail
source "$(dirname "${BASH_SOURCE[0]}")/common.sh"
tools/install.sh bench
mkdir -p build
build bench exploration >build/exploration.log 2>&1 || { tail -n 40 build/exploration.log >&2; exit 1; }
exec build/bench/bin/exploration "$@"
