#!/bin/bash
# Compiles core with em++.
#
#   tools/wasm.sh                core's face for the browser, and the same for Node, into web/generated
#   tools/wasm.sh TARGET...      targets of build/wasm/build.ninja
#
# Only changed sources are compiled again: objects and the Ninja file stay in build/wasm.
set -euo pipefail
source "$(dirname "${BASH_SOURCE[0]}")/common.sh"

# Debian's emscripten brings its libraries ready built and finds acorn only here.
export NODE_PATH=/usr/share/nodejs
unset EM_CACHE
# em++ is clang, which ccache cannot tell by the name.
export CCACHE_COMPILERTYPE=clang
out=build/wasm
face=web/generated
mkdir -p "$out/include" "$face"

# Debian's headers without the rest of /usr/include, which belongs to another machine.
for folder in eigen3/Eigen nlohmann toml++ fast_float fmt; do
  ln -sfn "/usr/include/$folder" "$out/include/${folder##*/}"
done

# write_ninja  one line a source of core; -O2 and the floating point rules are those of cmake/options.cmake.
write_ninja() {
  local version objects=() source
  version=$(sed -n 's/^project(steamworthy VERSION \([0-9.]*\).*/\1/p' CMakeLists.txt)
  cat <<END
builddir = $out
flags = -std=c++20 -O2 -fexceptions -ffp-contract=off -DFMT_HEADER_ONLY -DEIGEN_DONT_VECTORIZE $
  -DSTEAMWORTHY_VERSION=\\"$version\\" -Icore -Itests -isystem $out/include
whole = -O2 -fexceptions -sALLOW_MEMORY_GROWTH=1 -sMODULARIZE=1 -sDYNAMIC_EXECUTION=0 -sFILESYSTEM=0 $
  -sEXPORTED_FUNCTIONS=_steamworthy_answer,_malloc,_free $
  -sEXPORTED_RUNTIME_METHODS=UTF8ToString,stringToUTF8,lengthBytesUTF8
rule compile
  command = ccache em++ \$flags -MMD -MF \$out.d -c \$in -o \$out
  depfile = \$out.d
  deps = gcc
  description = em++ \$in
rule link
  command = em++ -O1 -fexceptions -sWASM_ASYNC_COMPILATION=0 -sALLOW_MEMORY_GROWTH=1 \$in -o \$out
  description = em++ \$out
rule archive
  command = rm -f \$out && emar rcs \$out \$in
  description = emar \$out
rule browser
  command = em++ \$whole -sEXPORT_ES6=1 -sENVIRONMENT=web,worker \$in -o \$out
  description = em++ \$out
rule node
  command = em++ \$whole -sENVIRONMENT=node \$in -o \$out
  description = em++ \$out
END
  for source in core/*/*.cc; do
    if [[ $source == *_test.cc || $source == core/testing/* ]]; then continue; fi
    echo "build $out/$source.o: compile $source"
    objects+=("$out/$source.o")
  done
  for source in tests/same_bits/*.cc wasm/*.cc; do
    echo "build $out/$source.o: compile $source"
  done
  local tests=(tests/same_bits/*.cc)
  echo "build $out/same_bits.js: link ${objects[*]} ${tests[*]/#/$out/}" | sed 's/\(tests[^ ]*\.cc\)\b/\1.o/g'
  # Of an archive only what the face needs is linked.
  echo "build $out/core.a: archive ${objects[*]}"
  echo "build $face/core.mjs | $face/core.wasm: browser $out/wasm/face.cc.o $out/core.a"
  echo "build $face/core_node.cjs | $face/core_node.wasm: node $out/wasm/face.cc.o $out/core.a"
}
write_ninja >"$out/build.ninja.new"
cmp -s "$out/build.ninja.new" "$out/build.ninja" || cp "$out/build.ninja.new" "$out/build.ninja"
if [[ $# == 0 ]]; then set -- "$face/core.mjs" "$face/core_node.cjs"; fi
ninja --quiet -f "$out/build.ninja" -j "$jobs" "$@" | { grep -v "^ninja: no work to do" || true; }
