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
ls "$box"/*/job.ics > "$box/out" || { echo 'FAILED: no job.ics'; bad=1; }
ref=$(sed -n 's/^ref: \([^ ]*\).*/\1/p' "$box/first.yaml")
for name in quote aftercare safety dayplan orders office; do
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
expect 'a plan' 0 "$program" plan "$box/first.yaml"
says out 'fit for coating'
expect 'a plan as JSON, of other days' 0 "$program" plan --json --from 2027-03-02 --by 2027-03-20 "$box/first.yaml"
says out '"date": "2027-03-20"'
expect 'a plan from no day' 2 "$program" plan --from yesterday "$box/first.yaml"
expect 'a plan that ends before it begins' 1 "$program" plan --from 2027-03-02 --by 2027-03-01 "$box/first.yaml"
says err "error: '2027-03-01' is before '2027-03-02'"
cat > "$box/forecast.csv" <<END
time,air_c,rh_pct,cloud_pct,wind_ms,rain_mm
2027-02-15T06:00,9,80,50,2,0
2027-02-15T08:00,9,80,50,2,0
2027-02-15T09:00,9,80,50,2,0
END
sed 's/^start: .*/&\nweather: forecast.csv/' "$box/first.yaml" > "$box/weather.yaml"
expect 'a forecast with a gap' 1 "$program" plan "$box/weather.yaml"
says err "forecast.csv:3:1: error: time: "
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

# Records, and the year after.
mkdir "$box/jobs"
cp "$box/first.yaml" "$box/jobs/first.yaml"
sed -i "s|\.\./content|$source/content|g; s|^brand: .*|brand: $source/content/brands/demo.yaml|" "$box/jobs/first.yaml"
sed 's/^# done:/done:/; s/^#   - {area/  - {area/; s/^#   - {coat/  - {coat/; s/^# left:/left:/' "$box/jobs/first.yaml" > "$box/recorded.yaml"
expect 'the records of the new job, taken as they stand' 0 "$program" check "$box/recorded.yaml"
expect 'their figures' 0 "$program" figures --json "$box/recorded.yaml"
says out '"litres": 3.1'
expect 'its aftercare sheet' 0 "$program" pack --only aftercare "$box/recorded.yaml" -o "$box/once"
pdftotext -layout "$box/once/$ref/aftercare.pdf" "$box/care.txt"
grep -q '17 Feb 2027.*first, .*3\.1.*A-113' "$box/care.txt" || { echo 'FAILED: the record is not on the aftercare sheet'; bad=1; }
grep -q 'Thursday 18 February 2027 at 10:45' "$box/care.txt" || { echo 'FAILED: the last coat is not when it was laid'; bad=1; }
# Years later, from the same files: file times, clock and place make no difference.
mkdir "$box/later"
cp "$box/recorded.yaml" "$box/later/"
touch -d 2035-01-01 "$box/later/recorded.yaml"
expect 'the sheet again' 0 env TZ=Asia/Tokyo "$program" pack --only aftercare "$box/later/recorded.yaml" -o "$box/twice"
cmp "$box/once/$ref/aftercare.pdf" "$box/twice/$ref/aftercare.pdf" || bad=1

cp "$box/recorded.yaml" "$box/jobs/first.yaml"
expect 'who falls due' 0 "$program" due "$box/jobs" --by 2028-12-31
says out "$ref"
says out '2028-02-18'
says out '2.2'
expect 'nobody yet' 0 "$program" due "$box/jobs" --by 2028-02-17
says out 'nobody falls due'
expect 'as CSV' 0 "$program" due "$box/jobs" --from 2028-01-01 --by 2028-12-31 --csv
says out '"1 Example Street, Exampletown",tern-oil,'
says out ',amount,unit,amount_from,'
says out ',2.2,L,records,'
[ "$(head -c 3 "$box/out" | od -An -tx1)" = ' ef bb bf' ] || { echo 'FAILED: CSV has no byte order mark'; bad=1; }
expect 'as CSV where they buy gallons' 0 "$program" due "$source/out_examples/porch" --by 2035-12-31 --csv
says out ',gal,'
[ "$(grep -c "$(printf '\r')$" "$box/out")" = 2 ] || { echo 'FAILED: CSV lines do not end in CRLF'; bad=1; }
expect 'as JSON' 0 "$program" due "$box/jobs" --by 2028-12-31 --json
/usr/bin/python3 -c 'import json, sys; v, = json.load(open(sys.argv[1])); assert v["litres"] == 2.2 and v["batches"] == ["A-113"], v' "$box/out" || bad=1
expect 'no date' 2 "$program" due "$box/jobs"
expect 'a date that is none' 2 "$program" due "$box/jobs" --by 2028-02-30
says err "'2028-02-30' is not a date"
sed 's/^valid_days: .*/valid_days: minus one/' "$box/jobs/first.yaml" > "$box/jobs/broken.yaml"
expect 'a broken job among others' 1 "$program" due "$box/jobs" --by 2028-12-31
says err 'broken.yaml:'
says out "$ref"
rm "$box/jobs/broken.yaml"

expect 'what the records teach' 0 "$program" rates "$box/jobs" -o "$box/jobs/rates.yaml"
says out 'rates.yaml: spreading rates from 1 job'
expect 'once more, over older rates' 0 "$program" rates "$box/jobs" -o "$box/jobs/rates.yaml"
expect 'to standard output' 0 "$program" rates "$box/jobs"
cmp "$box/out" "$box/jobs/rates.yaml" || bad=1
says out 'product: tern-oil, timber: kwila, state: weathered, coat: 1, rate: '
expect 'over a job' 1 "$program" rates "$box/jobs" -o "$box/first.yaml"
says err 'is there already and holds something else'
sed 's/^# spreading_rates: rates.yaml .*/spreading_rates: jobs\/rates.yaml/' "$box/recorded.yaml" > "$box/taught.yaml"
expect 'a job that uses them' 0 "$program" figures --explain "$box/taught.yaml"
says out 'from 1 of your own jobs'
mkdir "$box/empty"
expect 'rates of nothing' 1 "$program" rates "$box/empty"
says err 'no job records the litres of a coat'

expect 'a start before the last coat' 1 "$program" again "$box/jobs/first.yaml" --start 2027-02-18
says err 'its last coat lies on 2027-02-18'
expect "next year's job" 0 "$program" again "$box/jobs/first.yaml" --start 2028-02-21
says out "$ref-2.yaml: look it over"
expect "next year's job over itself" 1 "$program" again "$box/jobs/first.yaml" --start 2028-02-21
says err 'is there already'
expect "next year's job is in order" 0 "$program" check "$box/jobs/$ref-2.yaml"
grep -q "^after: $ref" "$box/jobs/$ref-2.yaml" || { echo 'FAILED: the new job does not name the old one'; bad=1; }
grep -q '^quoted: 2028-01-24' "$box/jobs/$ref-2.yaml" || { echo 'FAILED: the quote is not four weeks before the start'; bad=1; }
expect 'a job that was followed is not due' 0 "$program" due "$box/jobs" --by 2028-12-31
says out 'nobody falls due'
expect 'and the year after that, elsewhere' 0 "$program" again "$box/jobs/$ref-2.yaml" --start 2029-02-20 --quoted 2029-01-02 -o "$box/other/third.yaml"
expect 'which is in order too' 0 "$program" check "$box/other/third.yaml"
grep -q "^ref: $ref-3" "$box/other/third.yaml" || { echo 'FAILED: the third year has the wrong number'; bad=1; }
sed 's/^work: .*/work: [wash]/; s/^sanding: .*//' "$box/first.yaml" > "$box/uncoated.yaml"
expect 'nothing to renew' 1 "$program" again "$box/uncoated.yaml" --start 2029-02-20
says err 'lays no coat'

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
sed -i 's/^valid_days: .*/valid_days: 7/' "$box/first.yaml"
await "$box/watch.out" 'changed: quote'
kill "$watcher"

touch "$box/file"
expect 'a folder that cannot be made' 2 "$program" pack "$box/first.yaml" -o "$box/file/x"
left=$(find "$box" -name '*.part')
[ -z "$left" ] || { echo "FAILED: left behind: $left"; bad=1; }
# Families of fonts that cannot be set are told, and nothing is set in their place.
mkdir -p "$box/fonts" "$box/odd/themes"
/usr/bin/python3 "$source/tests/odd_fonts.py" /usr/share/fonts/truetype/crosextra/Carlito-Regular.ttf "$box/fonts"
cat > "$box/fonts.conf" <<EOF
<fontconfig><dir>$box/fonts</dir><dir>/usr/share/fonts</dir><cachedir>$box/cache</cachedir></fontconfig>
EOF
for odd in 'Varlito variable.ttf a variable font' 'Collito collection.ttc a font collection'; do
  set -- $odd
  printf 'name: odd\nextends: generous\nfaces: {text: {family: %s}}\n' "$1" > "$box/odd/themes/odd.yaml"
  expect "a family that is $3 $4 $5" 1 env FONTCONFIG_FILE="$box/fonts.conf" "$program" pack "$box/first.yaml" \
    --looks "$box/odd" --theme odd -o "$box/odd"
  says err "odd.yaml:3:24: error: faces.text.family: the font family '$1' cannot be set: '$box/fonts/$2' is $3 $4 $5"
done

exit $bad
