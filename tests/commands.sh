#!/bin/sh
# The command line from outside: exit codes, what goes where, files whole or not at all. Usage: commands.sh PROGRAM SOURCE_DIR
program=$1
source=$2
box=$(mktemp -d)
trap 'rm -rf "$box"' EXIT
bad=0
expect() { # what, status, command...
  what=$1 status=$2
  shift 2
  "$@" > "$box/out" 2> "$box/err"
  got=$?
  [ "$got" = "$status" ] || { echo "FAILED: $what: status $got, not $status"; cat "$box/out" "$box/err"; bad=1; }
}
says() { grep -qF -- "$2" "$box/$1" || { echo "FAILED: '$2' in $1:"; cat "$box/$1"; bad=1; }; }

expect 'no command' 2 "$program"
expect 'a mistyped command' 2 "$program" pakc x
says err "'pakc' is not a command; did you mean 'pack'?"
expect 'help' 0 "$program" --help
says out 'planksheaf new deck.yaml'
expect 'version' 0 "$program" --version
expect 'an unknown option' 2 "$program" pack --nonsense x
expect 'an unknown document' 2 "$program" pack --only letter x
expect 'a job that is not there' 1 "$program" pack "$box/none.yaml"
says err 'none.yaml: error: cannot be read'

expect 'a new job' 0 "$program" new "$box/first.yaml"
expect 'a new job over an old one' 1 "$program" new "$box/first.yaml"
expect 'the new job is in order' 0 "$program" check "$box/first.yaml"
expect 'its pack' 0 "$program" pack "$box/first.yaml"
ref=$(sed -n 's/^ref: \([^ ]*\).*/\1/p' "$box/first.yaml")
for name in quote aftercare safety orders office; do
  [ -s "$box/$ref/$name.pdf" ] || { echo "FAILED: no $name.pdf"; bad=1; }
done
expect 'from standard input' 0 sh -c "cd '$box' && '$program' pack - --only quote -o '$box/piped' < first.yaml"
cmp "$box/$ref/quote.pdf" "$box/piped/$ref/quote.pdf" || bad=1

before=$(cd "$box/$ref" && cat ./*.pdf | cksum)
sed 's/^valid_days: .*/valid_days: minus one/' "$box/first.yaml" > "$box/broken.yaml"
expect 'a job with a mistake' 1 "$program" pack "$box/broken.yaml"
says err "broken.yaml:"
[ "$before" = "$(cd "$box/$ref" && cat ./*.pdf | cksum)" ] || { echo 'FAILED: a refused job changed older files'; bad=1; }
expect 'a job with a mistake, elsewhere' 1 "$program" pack "$box/broken.yaml" -o "$box/nothing"
[ ! -e "$box/nothing" ] || { echo 'FAILED: a refused job made a folder'; bad=1; }
expect 'a good job beside a broken one' 1 "$program" pack "$box/broken.yaml" "$box/first.yaml" -o "$box/both"
[ -s "$box/both/$ref/quote.pdf" ] || { echo 'FAILED: the good job was not made'; bad=1; }
cp "$box/first.yaml" "$box/twin.yaml"
expect 'two jobs of one number' 1 "$program" pack "$box/first.yaml" "$box/twin.yaml" -o "$box/twins"
says err "ref: has the same number and folder as"
[ ! -e "$box/twins" ] || { echo 'FAILED: twins were written'; bad=1; }
sed 's/^work: .*/work: [wash]/; s/^sanding: .*//' "$box/first.yaml" > "$box/washed.yaml"
expect 'a job that coats nothing' 0 "$program" pack "$box/washed.yaml"
[ ! -e "$box/$ref/aftercare.pdf" ] || { echo 'FAILED: an old aftercare sheet stayed'; bad=1; }
expect 'figures' 0 "$program" figures "$box/first.yaml"
expect 'figures, explained' 0 "$program" figures --explain "$box/first.yaml"
says out ' = '
expect 'facts' 0 "$program" facts "$box/first.yaml"
says out 'firm.name: '
says out 'price.total: '
expect 'looks' 0 "$program" looks "$box/looks"
expect 'looks over others' 1 "$program" looks "$box/looks"
sed 's/^## Weather/## Rain and heat/' "$box/looks/en/quote.md" > "$box/quote.md" && mv "$box/quote.md" "$box/looks/en/quote.md"
expect 'a pack with looks of its own' 0 "$program" pack "$box/first.yaml" --looks "$box/looks" --only quote -o "$box/own"
pdftotext "$box/own/$ref/quote.pdf" - | grep -q 'Rain and heat' || { echo 'FAILED: the edited template was not used'; bad=1; }
echo '{{nonsense}}' >> "$box/looks/en/quote.md"
expect 'a template with a mistake' 1 "$program" pack "$box/first.yaml" --looks "$box/looks" -o "$box/own"
says err "looks/en/quote.md:"
says err "'nonsense' is not known here"

# Watching: a save makes the pack again, a mistake is told and waited out.
"$program" watch "$box/first.yaml" -o "$box/watched" > "$box/watch.out" 2> "$box/watch.err" &
watcher=$!
await() { # file, words
  for _ in $(seq 100); do grep -qF -- "$2" "$1" && return; sleep 0.1; done
  echo "FAILED: watch never said '$2'"; cat "$box/watch.out" "$box/watch.err"; bad=1
}
await "$box/watch.out" 'watching'
sed -i 's/^colour: .*/colour: driftwood/' "$box/first.yaml"
await "$box/watch.out" 'changed: '
sed -i 's/^valid_days: .*/valid_days: none/' "$box/first.yaml"
await "$box/watch.out" 'not made'
await "$box/watch.err" 'valid_days'
sed -i 's/^valid_days: .*/valid_days: 20/' "$box/first.yaml"
await "$box/watch.out" 'changed: quote'
kill "$watcher"

touch "$box/file"
expect 'a folder that cannot be made' 2 "$program" pack "$box/first.yaml" -o "$box/file/x"
left=$(find "$box" -name '*.part')
[ -z "$left" ] || { echo "FAILED: left behind: $left"; bad=1; }
exit $bad
