# What the scripts of this folder share. Expects $here, the folder benchmarks/.

root=$(cd "$here/.." && pwd)
. "$root/scripts/jdk.sh"
jdk=$(find_jdk) || exit 69
[ ! -e "$root/../shared/arches" ] || export RODWORK_SHARED=$root/../shared
results=$here/target/results
peers=$here/target/peers

# Everything that is measured, built without tests.
build_benchmarks() {
  (cd "$root" && JAVA_HOME=$jdk mvn -q -B package -pl benchmarks -am -DskipTests -Dspotless.check.skip=true) >&2
}

# Java on the class path of the benchmarks, with the flags that ./rodwork uses and at most 1 GiB of heap.
flags=(-Xmx1g -XX:+UseParallelGC)
run_java() {
  "$jdk/bin/java" "${flags[@]}" -cp "$here/target/classes:$here/target/lib/*" "$@"
}

# A flag that gives the common pool so many cores; the calling thread works too.
on_cores() { echo "-Djava.util.concurrent.ForkJoinPool.common.parallelism=$(($1 - 1))"; }
