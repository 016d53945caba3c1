#!/bin/bash
# Tries ./run and ./check on a bare Debian 12: a debootstrap folder with nothing but its base system.
#
#   sudo tools/fresh_debian_trial.sh [FOLDER]     default /var/tmp/steamworthy-fresh
#
# The bare system is kept as FOLDER/base.tar for the next trial. Packages come from where this
# machine's own apt gets them, with its settings. The commit that is checked out is what is tried.
# While ./run serves the first time, $WALK, if set, is run with its one-time link: a browser of this machine
# reaches it. Writes FOLDER/report.txt: what ./run and ./check printed, first and second time, with the seconds.
# Needs root, debootstrap and git.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."
folder=${1-/var/tmp/steamworthy-fresh}
suite=bookworm
system=$folder/system
report=$folder/report.txt
if [[ $(id -u) != 0 ]]; then echo "only root can make a system in a folder" >&2; exit 1; fi

mounts=(proc dev dev/shm)
unmount_all() {
  local i
  for ((i = ${#mounts[@]} - 1; i >= 0; i--)); do
    if mountpoint -q "$system/${mounts[i]}"; then umount "$system/${mounts[i]}"; fi
  done
}
trap unmount_all EXIT

mkdir -p "$folder"
unmount_all
if [[ -e $system ]]; then rm -rf --one-file-system "$system"; fi
mkdir "$system"

if [[ ! -f $folder/base.tar ]]; then
  mirror=$(apt-get indextargets --format '$(SITE) $(RELEASE)' | awk -v s=$suite '$2 == s {print $1; exit}')
  debootstrap --variant=minbase "$suite" "$system" "$mirror" >"$folder/debootstrap.log"
  tar -C "$system" -cf "$folder/base.tar.part" .
  mv "$folder/base.tar.part" "$folder/base.tar"
else
  tar -C "$system" -xf "$folder/base.tar"
fi

# The same sources as here, but only Debian's own: what is tried is what Debian 12 has.
rm -f "$system/etc/apt/sources.list"
apt-get indextargets --format '$(SITE) $(RELEASE) $(COMPONENT)' | sort -u |
  awk -v s=$suite '$2 ~ "^" s {print "deb", $1, $2, $3}' >"$system/etc/apt/sources.list"
apt-config dump Acquire >"$system/etc/apt/apt.conf.d/99-as-on-the-host"
cp --dereference /etc/resolv.conf /etc/hosts "$system/etc/"
mount -t proc proc "$system/proc"
mount --bind /dev "$system/dev"
mountpoint -q /dev/shm && mount --bind /dev/shm "$system/dev/shm" || mount -t tmpfs tmpfs "$system/dev/shm"

# A clone, in a folder with a blank in its name.
source_folder="/srv/a clone/steamworthy"
mkdir -p "$system/srv/a clone"
git clone -q --no-hardlinks . "$system$source_folder"

# npm in the folder asks whom this machine's asks, and trusts whom it trusts.
npm_settings=()
if command -v npm >/dev/null; then npm_settings=("npm_config_registry=$(npm config get registry)"); fi
if [[ -n ${NODE_EXTRA_CA_CERTS-} ]]; then
  cp "$NODE_EXTRA_CA_CERTS" "$system/etc/authorities.crt"
  npm_settings+=("NODE_EXTRA_CA_CERTS=/etc/authorities.crt" "npm_config_cafile=/etc/authorities.crt")
fi
inside() {
  exec chroot "$system" /usr/bin/env -i PATH=/usr/local/sbin:/usr/local/bin:/usr/sbin:/usr/bin:/sbin:/bin \
    HOME=/root LANG=C.UTF-8 CI=true "${npm_settings[@]}" "$@" </dev/null
}
seconds_from() { echo $(((${EPOCHREALTIME/./} - ${1/./}) / 1000000)); }
# trial_run [COMMAND...]  ./run until it has said its link, then the command with that link.
trial_run() {
  local start=$EPOCHREALTIME said=$folder/run.out link
  echo "== run"
  (inside "$source_folder/run") >"$said" 2>&1 &
  local process=$!
  until grep -q /enrol# "$said" || ! kill -0 $process 2>/dev/null; do sleep 0.2; done
  cat "$said"
  echo "== run: served after $(seconds_from "$start") s"
  link=$(grep -o 'http[^ ]*/enrol#[A-Z0-9]*' "$said" || true)
  if [[ $# != 0 && -n $link ]]; then "$@" "$link"; fi
  if kill $process 2>/dev/null; then wait $process || true; fi
}
trial() {
  local start=$EPOCHREALTIME code=0
  echo "== $*"
  (inside "$source_folder/$1" "${@:2}") 2>&1 || code=$?
  echo "== $*: ended with $code after $(seconds_from "$start") s"
}
{
  git log -1 --format='commit %h, %cs'
  echo "cores: $(nproc), load before: $(cut -d ' ' -f 1-3 /proc/loadavg)"
  trial_run ${WALK-}
  trial_run
  if [[ ${2-} != run ]]; then
    trial check
    trial check
  fi
} | tee "$report"
echo "kept in $report"
