#!/bin/bash
# Compiles all of core with em++, and compares what its numeric functions give in WebAssembly with
# what they give natively, bit by bit (tests/same_bits/same_bits.cc). Fails at the first difference.
#
# Only changed sources are compiled again: objects and the Ninja file stay in build/wasm.
set -euo pipefail
source "$(dirname "${BASH_SOURCE[0]}")/common.sh"

# Debian's emscripten brings its libraries ready built and finds acorn only here.
export NODE_PATH=/usr/share/nodejs
unset EM_CACHE
out=build/wasm
mkdir -p "$out/include"

# Debian's headers without the rest of /usr/include, which belongs to another machine.
for folder in eigen3/Eigen nlohmann toml++ fast_float fmt; do
  ln -sfn "/usr/include/$folder" "$out/include/${folder##*/}"
done

# write_ninja  one line a source of core; -O2 and the floating point rules are those of cmake/options.cmake.
write_ninja() {
  local version objects=()
  version=$(sed -n 's/^project(steamworthy VERSION \([0-9.]*\).*/\1/p' CMakeLists.txt)
  cat <<END
builddir = $out
flags = -std=c++20 -O2 -fexceptions -ffp-contract=off -DFMT_HEADER_ONLY -DEIGEN_DONT_VECTORIZE $
  -DSTEAMWORTHY_VERSION=\\"$version\\" -Icore -Itests -isystem $out/include
rule compile
  command = em++ \$flags -MMD -MF \$out.d -c \$in -o \$out
  depfile = \$out.d
  deps = gcc
  description = em++ \$in
rule link
  command = em++ -O1 -fexceptions -sWASM_ASYNC_COMPILATION=0 -sALLOW_MEMORY_GROWTH=1 \$in -o \$out
  description = em++ \$out
END
  local source
  for source in core/*/*.cc tests/same_bits/*.cc; do
    if [[ $source == *_test.cc || $source == core/testing/* ]]; then continue; fi
    echo "build $out/$source.o: compile $source"
    objects+=("$out/$source.o")
  done
  echo "build $out/same_bits.js: link ${objects[*]}"
}
write_ninja >"$out/build.ninja.new"
cmp -s "$out/build.ninja.new" "$out/build.ninja" || cp "$out/build.ninja.new" "$out/build.ninja"
ninja -f "$out/build.ninja" -j "$jobs"

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
