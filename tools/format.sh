#!/bin/bash
# Formats all C++ sources in place; with --check says which are not formatted, and fails if any.
# Tables that are kept as printed stand between `clang-format off` and `on`.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."
mode=(-i)
if [[ ${1-} == --check ]]; then mode=(--dry-run -Werror); fi
find core app fuzz bench tests -name '*.h' -print0 -o -name '*.cc' -print0 | sort -z |
  xargs -0 -P "$(nproc)" -n 40 clang-format-14 "${mode[@]}"
