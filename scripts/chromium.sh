# Finds a Chromium for the browser tests, or installs Debian's. Sets and exports RODWORK_CHROMIUM.

find_chromium() {
  local name
  for name in "${RODWORK_CHROMIUM:-}" chromium chromium-browser google-chrome; do
    [ -n "$name" ] && command -v "$name" && return 0
  done
  return 1
}

need_chromium() {
  if ! RODWORK_CHROMIUM=$(find_chromium); then
    local as_root=()
    [ "$(id -u)" = 0 ] || as_root=(sudo -n)
    if ! { command -v apt-get >/dev/null &&
      ${as_root[@]+"${as_root[@]}"} apt-get update -qq &&
      DEBIAN_FRONTEND=noninteractive ${as_root[@]+"${as_root[@]}"} apt-get install -y -qq --no-install-recommends chromium fonts-dejavu-core; }; then
      echo "The browser tests need Chromium: install the package chromium, or set RODWORK_CHROMIUM to one." >&2
      return 1
    fi
    RODWORK_CHROMIUM=$(find_chromium) || return 1
  fi
  export RODWORK_CHROMIUM
  echo "$RODWORK_CHROMIUM"
}
