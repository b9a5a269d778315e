#!/bin/sh
# Changes what the program reads, each target for so many seconds: sh tests/fuzz/run.sh SECONDS [TARGET...]
# Needs clang and libclang-rt-14-dev. What comes new is kept in build-fuzz/TARGET and goes on from there. Ends with 1
# where something was found; TARGET=job build-fuzz/fuzz FILE runs that again.
set -eu
cd "$(dirname "$0")/../.."
seconds=$1
shift
cmake --preset fuzz > /dev/null
cmake --build --preset fuzz
[ $# -gt 0 ] || set -- $(build-fuzz/fuzz)
found=0
for target; do
  mkdir -p "build-fuzz/$target"
  export TARGET="$target"
  SEEDS="build-fuzz/$target" build-fuzz/fuzz
  build-fuzz/fuzz -max_total_time="$seconds" -max_len=100000 -timeout=20 -rss_limit_mb=4096 -print_final_stats=1 \
    -artifact_prefix="build-fuzz/$target-" "build-fuzz/$target" > "build-fuzz/$target.log" 2>&1 || {
    grep -vE '^#|^INFO' "build-fuzz/$target.log" | head -n 60
    found=1
  }
  echo "$target: $(sed -n 's/^stat::number_of_executed_units: *//p' "build-fuzz/$target.log") runs"
done
exit "$found"
