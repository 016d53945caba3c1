#!/bin/bash
# Builds and runs every benchmark; prints the report and keeps it in out/bench.txt.
set -euo pipefail
source "$(dirname "${BASH_SOURCE[0]}")/common.sh"
tools/install.sh bench
mkdir -p build out
build bench bench_programs steamworthy >build/bench.log 2>&1 || { tail -n 40 build/bench.log >&2; exit 1; }
report=out/bench.txt
{
  echo "machine: $(nproc) x $(sed -n 's/^model name[^:]*: //p' /proc/cpuinfo | sort -u | head -n 1)"
  echo "compiler: $(c++ --version | head -n 1)"
  for program in build/bench/bin/*_bench; do
    echo
    echo "== $(basename "$program")"
    "$program" "$@"
    # Another library beside ours, in the same run.
    if [[ $program == */hold_bench ]]; then OMP_NUM_THREADS=1 /usr/bin/python3 bench/hold_scipy.py; fi
    if [[ $program == */paper_bench ]]; then /usr/bin/python3 bench/paper_weasyprint.py; fi
  done
  echo
  echo "== the served program under load"
  STEAMWORTHY_PROGRAM=build/bench/steamworthy /usr/bin/python3 bench/server_load.py
} 2>&1 | tee "$report"
echo "kept in $report"
