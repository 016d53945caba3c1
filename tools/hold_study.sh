#!/bin/bash
# Runs the study of the hold analysis on simulated tests and writes its tables between the markers of
# docs/methods/hold.md. Options go to the study, for instance `--cases 100 --harsh 50 --worst 10`; with
# any option the tables are only printed.
set -euo pipefail
source "$(dirname "${BASH_SOURCE[0]}")/common.sh"
tools/install.sh bench
mkdir -p build out
build bench hold_study >build/hold_study.log 2>&1 || { tail -n 40 build/hold_study.log >&2; exit 1; }
if [[ $# -gt 0 ]]; then exec build/bench/bin/hold_study "$@"; fi

page=docs/methods/hold.md
begin='<!-- study: begin -->' end='<!-- study: end -->'
[[ $(grep -cxF -e "$begin" -e "$end" "$page") == 2 ]] || { echo "$page: the markers of the study are missing" >&2; exit 1; }
start=$EPOCHREALTIME
build/bench/bin/hold_study --worst 15 --csv out/hold_study.csv >out/hold_study.md 2>out/hold_study_worst.txt ||
  { cat out/hold_study_worst.txt >&2; exit 1; }
{
  sed "/^$begin\$/q" "$page"
  echo
  cat out/hold_study.md
  echo
  sed -n "/^$end\$/,\$p" "$page"
} >out/hold_page.md
cp out/hold_page.md "$page"
echo "tables in $page, worst cases in out/hold_study_worst.txt, all in out/hold_study.csv"
echo "in $(seconds_since "$start") s"
