#!/bin/sh
# Changes one line of the code at a time and expects a case to fail: a number or a rule that no case holds shows here.
# By hand: sh tests/mutants.sh [build folder [words]] tries those that have the words in their line; the folder must
# have been made for Ninja. The sources stay as they are: each change is compiled and linked beside them.
set -eu
cd "$(dirname "$0")/.."
build=${1:-build}
words=${2:-}
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
ninja -C "$build" tests > /dev/null
ninja -C "$build" -t commands tests | tail -n 1 | sed "s| -o tests | $work/mutant.o -o $work/tests |" > "$work/link"

# File, test files that can see it, change.
grep -v '^#' tests/mutants.txt | grep -F -- "$words" > "$work/list"

# The named cases pass as the code is.
named() { echo "$1" | sed 's/[^,]*/[#&]/g'; }
used=$(awk '{print $2}' "$work/list" | tr , '\n' | sort -u | paste -sd,)
"$build/tests" -# "$(named "$used")" > "$work/said" || { tail -n 40 "$work/said"; exit 1; }

count=0
lived=0
while read -r file cases change; do
  source=$(find src -path "*/$file")
  [ -f "$source" ] || { echo "no single file: $file: $source"; exit 1; }
  sed "$change" "$source" > "$work/mutant.cpp"
  ! cmp -s "$source" "$work/mutant.cpp" || { echo "changes nothing: $file $change"; exit 1; }
  ninja -C "$build" -t commands "CMakeFiles/core.dir/$source.o" | tail -n 1 |
    sed "s| -MD .* -c .*| -w -o $work/mutant.o -c $work/mutant.cpp|" > "$work/compile"
  (cd "$build" && sh "$work/compile" && sh "$work/link") || { echo "does not build: $file $change"; exit 1; }
  count=$((count + 1))
  if timeout 300 "$work/tests" -# --abort "$(named "$cases")" > "$work/said" 2>&1; then
    lived=$((lived + 1))
    echo "lives: $file $cases $change"
  fi
done < "$work/list"
echo "$count changes, $lived that no case sees"
[ "$lived" = 0 ]
