#!/bin/bash
# Computes the hydrostatic test of the demo boiler and makes every paper of it, blank and filled from the
# demo closing, in out/. Installs and builds what is missing.
set -euo pipefail
source "$(dirname "${BASH_SOURCE[0]}")/common.sh"

log=build/papers.log
mkdir -p build out

steamworthy=build/release/steamworthy
boiler=examples/watertube.toml

step "packages installed" tools/install.sh run
step "program built: $steamworthy" build release steamworthy
step "description checked: $boiler" "$steamworthy" check "$boiler"

# What is said of the demo's test.
said=(--work gaskets --rule us-marine-ordinary --authority "the marine inspector of the demo plant"
  --ceiling "48 bar" --hold "30 min" --trait lap_seam=no)

# sheet NAME ARGUMENTS...  writes one form of the test sheet into out/.
sheet() {
  "$steamworthy" sheet "$boiler" "${said[@]}" "${@:2}" >"out/$1"
}

# papers FOLDER ARGUMENTS...  makes every paper of the demo boiler in that folder.
papers() {
  local folder=$1
  mkdir -p "$folder"
  "$steamworthy" draw "$boiler" "${@:2}" -o "$folder/drawing.pdf" || return
  local kind
  for kind in test-sheet pressure-log closures walkdown tally handover leave-safe taking-over labels \
    temporaries isolations stores; do
    "$steamworthy" paper "$kind" "$boiler" "${said[@]}" "${@:2}" -o "$folder/$kind.pdf" || return
  done
}

# blank_papers  with nothing filled in, and the tables.
blank_papers() {
  papers out/papers || return
  "$steamworthy" table "$boiler" "${said[@]}" -o out/papers/tables.xlsx
}

# filled_papers  from the demo closing, with its test record.
filled_papers() {
  local facts=(--facts examples/demo-plant.jsonl --facts examples/demo-closing.jsonl)
  papers out/papers/filled "${facts[@]}" || return
  "$steamworthy" record "$boiler" examples/holds/demo-hold.csv --test examples/holds/demo-hold.toml "${said[@]}" \
    "${facts[@]}" -o out/papers/filled/record.pdf
}

step "test sheet: out/test-sheet.txt" sheet test-sheet.txt
step "with workings: out/test-sheet-working.txt" sheet test-sheet-working.txt --working
step "in US units: out/test-sheet-us.txt" sheet test-sheet-us.txt --units us
step "as JSON: out/test-sheet.json" sheet test-sheet.json --json --working
step "drawing, papers, tables: out/papers" blank_papers
step "filled: out/papers/filled" filled_papers

echo
grep -E "^(Test sheet|Rule)|^  (go to|never above|water to fill|water to pump|greatest share|smallest loss)" out/test-sheet.txt
echo
echo "$PWD/out holds the whole sheet; $steamworthy --help tells what else there is."
