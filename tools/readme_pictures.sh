#!/bin/bash
# Makes the pictures of the README from the example boiler: one page of the test sheet and the drawing.
#
#   tools/readme_pictures.sh [PROGRAM]     PROGRAM is build/release/steamworthy unless said otherwise
#
# Needs pdftoppm (poppler-utils). The pictures are grey and small enough to commit.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."
program=${1:-build/release/steamworthy}
folder=$(mktemp -d)
trap 'rm -rf "$folder"' EXIT

"$program" paper test-sheet examples/watertube.toml --work gaskets --rule us-marine-ordinary \
  --authority "the marine inspector of the demo plant" --ceiling "48 bar" --hold "30 min" \
  --trait lap_seam=no -o "$folder/sheet.pdf" >/dev/null
"$program" draw examples/watertube.toml -o "$folder/drawing.pdf" >/dev/null

mkdir -p docs/pictures
for name in sheet drawing; do
  pdftoppm -r 72 -gray -png -singlefile -f 1 -l 1 "$folder/$name.pdf" "docs/pictures/$name"
done
ls -l docs/pictures/*.png
