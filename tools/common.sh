# Sourced by run, check and the scripts in tools/: where we are, how we build, how time is told.
# Leaves the shell in the source folder, whatever folder it was called from.
cd "$(dirname "${BASH_SOURCE[0]}")/.."

# A user without a home (a service, a bare container) still gets a compiler cache: beside the build.
if [[ -z ${HOME-} || ! -w ${HOME-} ]]; then export HOME=$PWD/.cache; mkdir -p "$HOME"; fi
# Paths below the source folder count as relative, so that two clones share their cache.
export CCACHE_BASEDIR=$PWD CCACHE_NOHASHDIR=1

jobs=$(nproc)

# seconds_since START  prints seconds with one decimal; START is from $EPOCHREALTIME.
seconds_since() {
  local now=${EPOCHREALTIME/,/.} start=${1/,/.}
  local tenths=$(((${now/./} - ${start/./} + 50000) / 100000))
  printf '%d.%d' $((tenths / 10)) $((tenths % 10))
}

# build PRESET [TARGET...]  configures if that has not been done, and builds.
build() {
  local preset=$1
  shift
  if [[ ! -f build/$preset/build.ninja || CMakePresets.json -nt build/$preset/build.ninja ]]; then
    cmake --preset "$preset" || return 1
  fi
  ninja -C "build/$preset" -j "$jobs" "$@"
}

# step WORDS COMMAND...  names what it does, runs it, quiet unless it fails, and prints how long it took. Its output is
# kept in the file that $log names.
step() {
  local words=$1 start=$EPOCHREALTIME
  shift
  printf '%-44s ' "$words"
  if ! "$@" >"$log" 2>&1; then
    echo
    tail -n 40 "$log" >&2
    echo "failed: $words (all of it is in $log)" >&2
    exit 1
  fi
  printf '%7s s\n' "$(seconds_since "$start")"
}
