# Finds the JDK that Rodwork is built and run with: 25 or newer.

# The major version that a JDK folder states in its `release` file; 0 where there is none or no compiler.
jdk_major() {
  local version=0 line
  if [ -x "$1/bin/javac" ] && [ -r "$1/release" ]; then
    while IFS= read -r line; do
      case $line in JAVA_VERSION=*) version=${line#*\"} version=${version%%[.\"+-]*} ;; esac
    done <"$1/release"
  fi
  echo "${version:-0}"
}

# Prints the first JDK >= 25 of: JAVA_HOME, the one `java` on PATH belongs to, the usual folders.
find_jdk() {
  local candidate on_path
  on_path=$(command -v javac || command -v java || true)
  [ -z "$on_path" ] || on_path=$(readlink -f "$on_path" 2>/dev/null || echo "$on_path")
  for candidate in "${JAVA_HOME:-}" "${on_path%/bin/java*}" \
    /usr/lib/jvm/* /usr/java/* /opt/*jdk* /opt/java/* "$HOME"/.jdks/* "$HOME"/.sdkman/candidates/java/* \
    /Library/Java/JavaVirtualMachines/*/Contents/Home "$HOME"/Library/Java/JavaVirtualMachines/*/Contents/Home; do
    [ -n "$candidate" ] || continue
    if [ "$(jdk_major "$candidate")" -ge 25 ] 2>/dev/null; then
      echo "$candidate"
      return 0
    fi
  done
  echo "Rodwork needs a JDK 25 or newer and found none in JAVA_HOME, on PATH or in the usual folders." >&2
  echo "Install one (for example the package temurin-25-jdk or openjdk-25-jdk), or set JAVA_HOME to it." >&2
  return 1
}
