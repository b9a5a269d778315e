#!/bin/sh
# Installs what is missing from Debian's packages. Sourced by tests/run.sh and out_examples/make.sh, from the top.
missing=
for p in $(cat tests/packages.txt); do
  dpkg-query -W -f='${Status}' "$p" 2>/dev/null | grep -q 'ok installed' || missing="$missing $p"
done
if [ -n "$missing" ]; then
  sudo=
  [ "$(id -u)" = 0 ] || sudo=sudo
  echo "installing:$missing"
  $sudo apt-get update -q
  # shellcheck disable=SC2086
  DEBIAN_FRONTEND=noninteractive $sudo apt-get install -q -y --no-install-recommends $missing
fi
