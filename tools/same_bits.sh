#!/bin/bash
# Compiles all of core with em++, and compares what its numeric functions give in WebAssembly with
# what they give natively, bit by bit (tests/same_bits/same_bits.cc). Fails at the first difference.
#
# tools/wasm.sh compiles only what has changed.
set -euo pipefail
source "$(dirname "${BASH_SOURCE[0]}")/common.sh"

out=build/wasm
tools/wasm.sh "$out/same_bits.js"

build release same_bits
build/release/same_bits >"$out/native.txt"
node "$out/same_bits.js" >"$out/wasm.txt"

if ! cmp -s "$out/native.txt" "$out/wasm.txt"; then
  name=$(diff "$out/native.txt" "$out/wasm.txt" | sed -n '2{s/^[<>] \([^ ]*\).*/\1/p;q}')
  echo "same_bits: $name differs (input, bits natively | in WebAssembly):" >&2
  build/release/same_bits rows "$name" >"$out/native_rows.txt"
  node "$out/same_bits.js" rows "$name" >"$out/wasm_rows.txt"
  diff -y --suppress-common-lines "$out/native_rows.txt" "$out/wasm_rows.txt" | head -n 5 >&2
  exit 1
fi
functions=$(wc -l <"$out/native.txt")
if [[ $functions == 0 ]]; then
  echo "same_bits: no function was compared" >&2
  exit 1
fi
echo "same_bits: $functions functions x 10000 inputs, equal bits natively and in WebAssembly"
