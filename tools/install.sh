#!/bin/bash
# Installs what is missing of the Debian packages named in tools/packages.txt.
#
#   tools/install.sh run      to build the program and run it
#   tools/install.sh check    to build and run the tests as well
#   tools/install.sh bench    to build the benchmarks as well
#
# Says nothing and asks no server if everything is there.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."

case "${1-}" in
  run | check | bench) set_wanted=$1 ;;
  *) echo "usage: tools/install.sh run|check|bench" >&2; exit 2 ;;
esac

mapfile -t wanted < <(sed 's/#.*//' tools/packages.txt |
  awk -v s="$set_wanted" '$1 == "run" || $1 == s {print $2}')

# dpkg-query exits with 1 when it has never heard of a package: that is what we ask.
there=$(dpkg-query -W -f '${db:Status-Status} ${Package}\n' "${wanted[@]}" 2>/dev/null |
  sed -n 's/^installed //p' || true)
missing=()
for package in "${wanted[@]}"; do
  if [[ $'\n'$there$'\n' == *$'\n'$package$'\n'* ]]; then continue; fi
  # A node that came from elsewhere serves as well as Debian's.
  if [[ $package == nodejs ]] && command -v node >/dev/null; then continue; fi
  if [[ $package == npm ]] && command -v npm >/dev/null; then continue; fi
  missing+=("$package")
done
if [[ ${#missing[@]} == 0 ]]; then exit 0; fi

become_root=()
if [[ $(id -u) != 0 ]]; then
  if command -v sudo >/dev/null && sudo -n true 2>/dev/null || { [[ -t 0 ]] && command -v sudo >/dev/null; }
  then
    become_root=(sudo)
  else
    echo "These packages are missing and only root can install them: apt-get install ${missing[*]}" >&2
    exit 1
  fi
fi

apt() {
  "${become_root[@]}" env DEBIAN_FRONTEND=noninteractive apt-get -qq -o Dpkg::Use-Pty=0 "$@"
}
log=$(mktemp)
trap 'rm -f "$log"' EXIT
echo "installing ${#missing[@]} packages: ${missing[*]}"
if ! { apt update && apt install -y --no-install-recommends "${missing[@]}"; } >"$log" 2>&1 </dev/null; then
  tail -n 30 "$log" >&2
  echo "apt-get could not install: ${missing[*]}" >&2
  exit 1
fi
