# Installs what is missing of Debian's packages named in the files that are given. Sourced, from the top of the project.
install_missing() {
  missing=
  for p in $(cat "$@"); do
    dpkg-query -W -f='${Status}' "$p" 2>/dev/null | grep -q 'ok installed' || missing="$missing $p"
  done
  [ -n "$missing" ] || return 0
  if [ "$(id -u)" != 0 ]; then
    echo "these packages of Debian are missing; have them installed, then run this again:" >&2
    echo "  sudo apt-get update && sudo apt-get install --no-install-recommends$missing" >&2
    exit 2
  fi
  echo "installing:$missing"
  apt-get update -q
  # shellcheck disable=SC2086
  DEBIAN_FRONTEND=noninteractive apt-get install -q -y --no-install-recommends $missing
}
