# Builds what is stale, and nothing else. Expects $root.

jar=$root/app/target/rodwork.jar
cache=$root/app/target/rodwork.aot
kept=$root/app/target/kept
built=$root/app/target/rodwork.built
log=$root/app/target/build.log
# Large pages: the first touch of fresh memory is a good part of a short run. Linux alone knows them.
java_options=(-XX:+IgnoreUnrecognizedVMOptions -XX:+UseTransparentHugePages -XX:+UseParallelGC -XX:MaxRAMPercentage=50 -Djava.awt.headless=true
  "-Drodwork.home=$root" "-Drodwork.kept=$kept")
modules="geometry rules anatomy survey design casework demo app"

# Whether any of the named files and folders is newer than the stamp, or the stamp is missing.
newer() {
  local stamp=$1
  shift
  [ ! -e "$stamp" ] || [ -n "$(find "$@" -newer "$stamp" -print -quit 2>/dev/null)" ]
}

# Only one build at a time in this folder; where there is no flock, none is kept waiting.
only_one() {
  mkdir -p "$root/app/target"
  if command -v flock >/dev/null; then
    exec 9>"$root/app/target/build.lock"
    flock 9
  fi
}
next_one() { exec 9>&-; }

java_stale() {
  local module sources=("$root/pom.xml")
  for module in $modules; do
    sources+=("$root/$module/pom.xml" "$root/$module/src/main")
  done
  [ ! -e "$jar" ] || newer "$built" "${sources[@]}"
}

build_java() {
  java_stale || return 0
  only_one
  if java_stale; then
    command -v mvn >/dev/null || fail "Building Rodwork needs Maven (the command mvn); install the package maven."
    echo "Building Rodwork ..." >&2
    touch "$built.new"
    rm -rf "$cache" "$kept"
    (cd "$root" && JAVA_HOME=$1 mvn -q -B package -pl app -am -DskipTests -Dspotless.check.skip=true) >"$log" 2>&1 9>&- ||
      failed_build
    # One run over the usual work, so that later starts find classes, profiles and demo casts ready.
    mkdir -p "$kept"
    "$1/bin/java" "${java_options[@]}" "-XX:AOTCacheOutput=$cache" -jar "$jar" rehearse >"$log" 2>&1 9>&- || rm -f "$cache"
    mv "$built.new" "$built"
  fi
  next_one
}

web_stale() {
  newer "$root/web/dist/index.html" "$root/web/package.json" "$root/web/package-lock.json" "$root"/web/*.ts \
    "$root"/web/*.json "$root/web/index.html" "$root/web/src" "$root/web/public"
}

build_web() {
  [ -e "$root/web/package.json" ] && web_stale || return 0
  only_one
  if web_stale; then
    command -v npm >/dev/null || fail "Building the bench needs Node 20 or newer with npm; install the packages nodejs and npm."
    echo "Building the bench ..." >&2
    web_packages >"$log" 2>&1 9>&- || failed_build
    (cd "$root/web" && npm run build) >"$log" 2>&1 9>&- || failed_build
    touch "$root/web/dist/index.html"
  fi
  next_one
}

# The packages that package-lock.json names, fetched again only when it changed.
web_packages() {
  ! newer "$root/web/node_modules/.package-lock.json" "$root/web/package-lock.json" ||
    (cd "$root/web" && PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD=1 npm ci --no-audit --no-fund)
}

failed_build() {
  tail -n 40 "$log" >&2
  fail "The build failed; the whole log is in ${log#"$root"/}."
}

fail() {
  echo "$1" >&2
  exit 69
}
