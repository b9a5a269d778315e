#!/bin/sh
# The command line from outside: exit codes, what goes where, files whole or not at all. Usage: commands.sh PROGRAM SOURCE_DIR
program=$1
source=$2
box=$(mktemp -d)
trap 'rm -rf "$box"' EXIT
bad=0
export XDG_CONFIG_HOME="$box/config"
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
expect 'an unknown document' 2 "$program" pack --only ofice x
says err "--only: error: 'ofice' is not a document; did you mean 'office'?"
says err '  hint: documents: quote, aftercare, safety, dayplan, orders, office'
expect 'a job that is not there' 1 "$program" pack "$box/none.yaml"
says err 'none.yaml: error: cannot be read'

expect 'a new job' 0 "$program" new "$box/first.yaml"
says out "first make the firm's folder, beside it or above: 'planksheaf firm firm --region nz'"
expect 'of a customer where there is no book' 1 "$program" new "$box/second.yaml" --customer example
says err "--customer: error: 'example' is not one of the firm's customers"
expect 'a job of no firm' 1 "$program" check "$box/first.yaml"
says err "first.yaml: error: firm: there is no firm's folder: no 'firm' beside the job or above it"
mkdir "$box/config"
expect 'a firm' 0 "$program" firm "$box/config/planksheaf"
says out "planksheaf: 2 files to edit"
expect 'the firm of all my jobs' 0 "$program" check "$box/first.yaml"
says out "firm: $box/config/planksheaf (firm.yaml, customers.csv)"
expect 'a firm nearer by' 0 "$program" firm "$box/firm"
expect 'the nearest firm' 0 "$program" check "$box/first.yaml"
says out "firm: $box/firm (firm.yaml, customers.csv)"
rm -r "$box/config"
expect 'a firm over an old one' 1 "$program" firm "$box/firm"
says err "$box/firm/firm.yaml: error: is there already"
expect 'a firm of no region' 2 "$program" firm "$box/elsewhere" --region fr
says err "'fr' is not a known region"
expect 'a new job over an old one' 1 "$program" new "$box/first.yaml"
expect 'a new job of no region' 2 "$program" new "$box/nowhere.yaml" --region fr
says err "'fr' is not a known region"
for region in au gb ie nz us; do
  expect "a new job of $region" 0 "$program" new "$box/place-$region.yaml" --region $region
  grep -q "^  region: $region " "$box/place-$region.yaml" || { echo "FAILED: $region is not in its job"; bad=1; }
  expect "the new job of $region" 0 "$program" check "$box/place-$region.yaml"
  says out "$box/place-$region.yaml: in order"
  expect "a firm of $region" 0 "$program" firm "$box/place/$region/firm" --region $region
  expect "its new job" 0 "$program" new "$box/place/$region/job.yaml"
  grep -q "^  region: $region " "$box/place/$region/job.yaml" || { echo "FAILED: $region is not in the job of its firm"; bad=1; }
  expect "its pack" 0 "$program" pack "$box/place/$region/job.yaml"
done
grep -E '^ +(shape|boards|joists):' "$box/place-us.yaml" | grep -E '[0-9] m' && { echo 'FAILED: metres in a job of the United States'; bad=1; }
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
mkdir "$box/sub"
sed "s/^ref: .*/ref: other/" "$box/first.yaml" > "$box/sub/other.yaml"
cp "$box/sub/other.yaml" "$box/other.yaml"
expect 'two of one number, in two folders, and a third' 1 "$program" pack "$box/other.yaml" "$box/sub/other.yaml" "$box/sub/../first.yaml" "$box/sub/../other.yaml"
says err "$box/other.yaml: error: ref: has the same number and folder as '$box/sub/../other.yaml'"
[ "$(sort "$box/out")" = "$box/$ref: 7 files
$box/sub/other: 7 files" ] || { echo 'FAILED: who was packed:'; cat "$box/out"; bad=1; }
sed 's/^work: .*/work: [wash]/; s/^sanding: .*//' "$box/first.yaml" > "$box/washed.yaml"
expect 'a job that coats nothing' 0 "$program" pack "$box/washed.yaml"
[ ! -e "$box/$ref/aftercare.pdf" ] || { echo 'FAILED: an old aftercare sheet stayed'; bad=1; }
expect 'figures' 0 "$program" figures "$box/first.yaml"
expect 'figures, explained' 0 "$program" figures --explain "$box/first.yaml"
says out ' = '
expect 'figures for the accounts' 0 "$program" figures --csv "$box/first.yaml"
says out 'ref,customer,kind,text,area,quantity,unit,rate,amount,tax_pct,currency'
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
says out "# firm: $box/firm (firm.yaml, customers.csv)"
expect 'copies to edit' 0 "$program" firm "$box/firm" --copy templates/en/quote.md,themes
says out "$box/firm: 3 files to edit"
expect 'copies over others' 1 "$program" firm "$box/firm" --copy templates
says err "$box/firm/templates/en/quote.md: error: is there already"
expect 'copies of what is not shipped' 2 "$program" firm "$box/firm" --copy templates/en/quot.md
says err "there is no 'templates/en/quot.md' that comes with planksheaf; did you mean 'templates/en/quote.md'?"
expect 'for a customer, with the next number' 0 "$program" new "$box/sub/third.yaml" --customer example --product plover-wb --number next
says out "  its number is JOB-2027-002, the next after JOB-2027-001 in $box/"
grep -q '^customer: example ' "$box/sub/third.yaml" || { echo 'FAILED: the customer is not in the new job'; bad=1; }
grep -q '^  address: \[1 Example Street, Exampletown\]' "$box/sub/third.yaml" || { echo 'FAILED: his address is not that of the site'; bad=1; }
expect 'is in order' 0 "$program" facts "$box/sub/third.yaml"
says out 'customer.name: A. Customer'
rm "$box/sub/third.yaml"
expect 'an unknown product' 1 "$program" new "$box/sub/third.yaml" --product plover
says err "--product: error: 'plover' is not a product; did you mean 'plover-wb'?"
sed -i 's/^## Price and weather/## Rain and heat/' "$box/firm/templates/en/quote.md"
expect 'a pack with a template of its own' 0 "$program" pack "$box/first.yaml" --only quote -o "$box/own"
pdftotext "$box/own/$ref/quote.pdf" - | grep -q 'Rain and heat' || { echo 'FAILED: the edited template was not used'; bad=1; }
printf '%s\n' --- 'reader: customer' 'heading: Receipt' --- '# {{title}}' > "$box/firm/templates/en/receipt.md"
expect 'a document of their own' 0 "$program" pack "$box/first.yaml" --only receipt -o "$box/own"
[ -s "$box/own/$ref/receipt.pdf" ] || { echo 'FAILED: no receipt.pdf'; bad=1; }
expect 'a firm without it' 2 "$program" pack "$box/first.yaml" --firm "$source/out_examples/firms/tideboard" --only receipt -o "$box/own"
says err "--only: error: 'receipt' is not a document"
expect 'where a job is from' 0 "$program" check "$box/first.yaml" "$box/sub/other.yaml"
[ "$(cat "$box/out")" = "firm: $box/firm (firm.yaml, customers.csv, templates/en/quote.md, templates/en/receipt.md, themes/compact.yaml, themes/generous.yaml)
$box/first.yaml: in order
$box/sub/other.yaml: in order" ] || { echo 'FAILED: what check says of the firm:'; cat "$box/out"; bad=1; }
echo '{{nonsense}}' >> "$box/firm/templates/en/quote.md"
expect 'a template with a mistake' 1 "$program" pack "$box/first.yaml" -o "$box/own"
says err "firm/templates/en/quote.md:"
says err "'nonsense' is not known here"
rm -r "$box/firm/templates" "$box/firm/themes"

# Records, and the year after.
mkdir "$box/jobs"
cp "$box/first.yaml" "$box/jobs/first.yaml"
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
expect 'the sheet for the visit' 0 "$program" pack --only lookover "$box/recorded.yaml" -o "$box/visit"
pdftotext -layout "$box/visit/$ref/lookover.pdf" "$box/visit.txt"
grep -q 'Deck.*18 Feb 2027.*A-113' "$box/visit.txt" || { echo 'FAILED: last time is not on the look-over sheet'; cat "$box/visit.txt"; bad=1; }
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
sed 's/^  name: .*/  name: "=1+1, or more"/; s/^  phone: .*/  phone: +64 3 555 0100/; s/^colour: .*/colour: "@natural"/; s/^ref: .*/ref: -7/' \
  "$box/jobs/first.yaml" > "$box/jobs/formula.yaml"
expect 'CSV with what a spreadsheet would compute' 0 "$program" due "$box/jobs" --by 2028-12-31 --csv
says out ",-7,\"'=1+1, or more\",'+64 3 555 0100,customer@home.example,\"1 Example Street, Exampletown\",tern-oil,'@natural,"
rm "$box/jobs/formula.yaml"
expect 'as JSON' 0 "$program" due "$box/jobs" --by 2028-12-31 --json
/usr/bin/python3 -c 'import json, sys; v, = json.load(open(sys.argv[1])); assert v["litres"] == 2.2 and v["batches"] == ["A-113"], v' "$box/out" || bad=1
latin=$(printf 'caf\351.yaml')
sed "s/^ref: .*/ref: OTHER-1/" "$box/jobs/first.yaml" > "$box/jobs/$latin"
expect 'as JSON, with a file name that is not UTF-8' 0 "$program" due "$box/jobs" --by 2028-12-31 --json
/usr/bin/python3 -c 'import json, sys; v = json.load(open(sys.argv[1])); assert any(one["file"].endswith("/caf\ufffd.yaml") for one in v), v' "$box/out" || bad=1
rm "$box/jobs/$latin"
expect 'in rounds' 0 "$program" due "$box/jobs" --by 2028-12-31 --by-place
says out 'Round 1, due 2028-02-18: 1 visit, '
says out 'L of tern-oil'
cp "$box/out" "$box/round"
expect 'with letters' 0 "$program" due "$box/jobs" --by 2028-12-31 --today 2028-02-02 --letters "$box/letters"
says out "$box/letters: letters and e-mails to 1 customer"
[ "$(ls "$box/letters" | tr '\n' ' ')" = "$ref.pdf $ref.txt " ] || { echo 'FAILED: other letters'; ls "$box/letters"; bad=1; }
[ "$(pdfinfo "$box/letters/$ref.pdf" | sed -n 's/^Pages: *//p')" = 1 ] || { echo 'FAILED: the letter has not one page'; bad=1; }
grep -q '^To: A. Customer <customer@home.example>$' "$box/letters/$ref.txt" || { echo 'FAILED: the e-mail is to nobody'; bad=1; }
grep -q '^Subject: Deck: the next coat is due$' "$box/letters/$ref.txt" || { echo 'FAILED: the e-mail has no subject'; bad=1; }
grep -q '^- Mon 14 Feb to Fri 18 Feb$' "$box/letters/$ref.txt" || { echo 'FAILED: the e-mail has no weeks'; bad=1; }
expect 'letters over letters' 1 "$program" due "$box/jobs" --by 2028-12-31 --letters "$box/letters"
says err "--letters: error: '$box/letters' is there already and not empty"
expect 'no letters' 0 "$program" due "$box/jobs" --by 2028-02-17 --letters "$box/no-letters"
says out 'nobody to write to'
[ ! -e "$box/no-letters" ] || { echo 'FAILED: a folder of no letters'; bad=1; }
sed 's/^ref: .*/ref: POLISH-1/; s/^  name: .*/  name: P. Customer/; s/^quoted:.*/languages: {reminder: [pl]}\n&/' "$box/jobs/first.yaml" > "$box/jobs/polish.yaml"
sed 's/^ref: .*/ref: LOST-1/; s/^  name: .*/  name: L. Customer/; s/^# firm:.*//; s/^quoted:.*/firm: gone\n&/' "$box/jobs/first.yaml" > "$box/jobs/lost.yaml"
expect 'letters but to those that cannot be computed or written to' 1 "$program" due "$box/jobs" --by 2028-12-31 --by-place --letters "$box/other-letters"
says err "lost.yaml:"
says err "'$box/jobs/gone' is not a firm's folder: there is no such folder"
says err "languages.reminder: there is no template of 'reminder' in 'pl'"
says err 'no letter to P. Customer, POLISH-1: mend what is told above'
says err 'no letter to L. Customer, LOST-1: mend what is told above'
says out "$box/other-letters: letters and e-mails to 1 customer"
says out 'LOST-1'
[ "$(ls "$box/other-letters" | tr '\n' ' ')" = "$ref.pdf $ref.txt " ] || { echo 'FAILED: other letters'; ls "$box/other-letters"; bad=1; }
rm "$box/jobs/polish.yaml" "$box/jobs/lost.yaml"
mkdir -p "$box/firm/templates/en" && cp "$source/templates/en/reminder_mail.md" "$box/firm/templates/en/"
printf '\n| a | b |\n|---|---|\n| c | d |\n' >> "$box/firm/templates/en/reminder_mail.md"
expect 'an e-mail with a table' 1 "$program" due "$box/jobs" --by 2028-12-31 --letters "$box/no-letters"
says err 'reminder_mail.md:'
says err 'an e-mail is plain text: paragraphs and lists only'
[ ! -e "$box/no-letters" ] || { echo 'FAILED: letters that are not whole'; bad=1; }
rm -r "$box/firm/templates"
expect 'a list that ends before it begins' 2 "$program" due "$box/jobs" --from 2028-06-30 --by 2028-01-01
says err "--from: '2028-06-30' is after --by, '2028-01-01'"
cp "$box/jobs/first.yaml" "$box/jobs/copy.yaml"
ln -s first.yaml "$box/jobs/link.yaml"
{ echo '{'; grep -v '^ *#' "$box/first.yaml" | /usr/bin/python3 -c 'import json, sys, yaml
job = yaml.load(sys.stdin, yaml.BaseLoader)
job["ref"], job["customer"]["name"] = "IN-BRACES", "Braces"
print(json.dumps(job)[1:])'; } > "$box/jobs/braces.yaml"
expect 'copies and links count once, a job in braces is seen' 0 "$program" due "$box/jobs" --by 2028-12-31 --csv
[ "$(wc -l < "$box/out")" = 3 ] || { echo 'FAILED: not two visits'; cat "$box/out"; bad=1; }
says out 'IN-BRACES'
sed 's/^ref: .*/ref: ROUND/; s/^customer:.*/after: ROUND-2\n&/' "$box/jobs/first.yaml" > "$box/jobs/copy.yaml"
sed 's/^ref: .*/ref: ROUND-2/; s/^after: .*/after: ROUND/' "$box/jobs/copy.yaml" > "$box/jobs/braces.yaml"
expect 'jobs in a circle' 1 "$program" due "$box/jobs" --by 2028-12-31
says err "error: after: 'ROUND-2' and 'ROUND' follow each other in a circle"
says out 'ROUND'
rm "$box/jobs/copy.yaml" "$box/jobs/link.yaml" "$box/jobs/braces.yaml"
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
says out 'product: tern-oil, timber: kwila, state: weathered, sanded: yes, coat: 1, rate: '
expect 'over a job' 1 "$program" rates "$box/jobs" -o "$box/first.yaml"
says err 'is there already and holds something else'
mkdir "$box/slip"
sed 's/used: 3.1 L/used: 31 L/' "$box/recorded.yaml" > "$box/slip/job.yaml"
expect 'a slip of the pen' 0 "$program" check "$box/slip/job.yaml"
says err 'warning: done[1].used: 31 L is more than twice the '
expect 'which is not learned from' 0 "$program" rates "$box/slip"
says err 'job.yaml:'
says err ': warning: done[1].used: set aside: '
grep -q 'coat: 1' "$box/out" && { echo 'FAILED: a wrong record was learned'; bad=1; }
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
grep -q '^  coats  *2  *1$' "$box/out" || { echo 'FAILED: what differs is not told'; cat "$box/out"; bad=1; }
expect "next year's job over itself" 1 "$program" again "$box/jobs/first.yaml" --start 2028-02-21
says err 'is there already'
expect "next year's job is in order" 0 "$program" check "$box/jobs/$ref-2.yaml"
expect 'its figures' 0 "$program" figures --json "$box/jobs/$ref-2.yaml"
amounts=$(/usr/bin/python3 -c 'import json, sys
f = json.load(open(sys.argv[1]))
print("%.1f hours, %.1f\u00a0L" % (f["labour_hours"], f["litres"]["likely"]))' "$box/out")
grep -q ": 1 visit, $amounts of tern-oil" "$box/round" || { echo "FAILED: the round is not told $amounts"; cat "$box/round"; bad=1; }
grep -q "^after: $ref" "$box/jobs/$ref-2.yaml" || { echo 'FAILED: the new job does not name the old one'; bad=1; }
grep -q '^quoted: 2028-01-24' "$box/jobs/$ref-2.yaml" || { echo 'FAILED: the quote is not four weeks before the start'; bad=1; }
expect 'a job that was quoted again waits for an answer' 0 "$program" due "$box/jobs" --by 2028-12-31 --today 2028-02-02
says out '  2028-01-24  9     2028-02-20   2028-02-21  '
sed -i 's/^quoted: .*/&\naccepted: 2028-02-03/' "$box/jobs/$ref-2.yaml"
expect 'and is booked' 0 "$program" due "$box/jobs" --by 2028-12-31
says out '  2028-02-21  2028-02-03  '
sed -i 's/^accepted: /declined: /' "$box/jobs/$ref-2.yaml"
expect 'or lost' 0 "$program" due "$box/jobs" --by 2028-12-31
says out 'Declined, not to write to'
expect 'as JSON, by groups' 0 "$program" due "$box/jobs" --by 2028-12-31 --json
/usr/bin/python3 -c 'import json, sys; v, = json.load(open(sys.argv[1])); assert v["group"] == "lost" and v["declined"] == "2028-02-03", v' "$box/out" || bad=1
expect 'nothing to renew after a no' 1 "$program" again "$box/jobs/$ref-2.yaml" --start 2029-02-20 -o "$box/other/none.yaml"
says err 'was declined, so there is no coat to renew'
sed -i '/^declined: /d' "$box/jobs/$ref-2.yaml"
echo 'done: [{coat: 1, from: 2028-02-23 08:00, to: 11:00, used: 2 L}]' >> "$box/jobs/$ref-2.yaml"
expect 'and not once it was done' 0 "$program" due "$box/jobs" --by 2028-12-31 --from 2028-02-19
says out 'nobody falls due'
expect 'and the year after that, elsewhere' 0 "$program" again "$box/jobs/$ref-2.yaml" --start 2029-02-20 --quoted 2029-01-02 -o "$box/other/third.yaml"
expect 'which is in order too' 0 "$program" check "$box/other/third.yaml"
far=$(mktemp -d)
trap 'rm -rf "$box" "$far"' EXIT
expect 'and out of sight of the firm' 0 "$program" again "$box/jobs/$ref-2.yaml" --start 2029-02-20 -o "$far/third.yaml"
expect 'which it names there' 0 "$program" check "$far/third.yaml"
grep -q '^firm: ' "$box/other/third.yaml" && { echo 'FAILED: the nearest firm is named'; bad=1; }
grep -q "^ref: $ref-3" "$box/other/third.yaml" || { echo 'FAILED: the third year has the wrong number'; bad=1; }
grep -q '^    rates: .*as it was laid\|^    rates: .*last year' "$box/other/third.yaml" || { echo 'FAILED: the maintenance coat tells no rate'; bad=1; }
grep -q '^    rates:' "$box/jobs/$ref-2.yaml" && { echo 'FAILED: the second coat of a first job tells a rate'; bad=1; }
sed 's/^# included:/included:/; s/^  discount: 0 %/  discount: 5 %/; s/^  # access:/  access:/' "$box/recorded.yaml" > "$box/promised.yaml"
expect 'promises become comments and are listed' 0 "$program" again "$box/promised.yaml" --start 2027-02-20 -o "$box/other/promises.yaml" --quoted 2027-02-19
says err 'start: the crew does not work on 2027-02-20'
says err 'start: 2027-02-20 is only 2 days after the last coat'
says err '  site.access: Side gate, 0.9 m wide'
says err '  price.discount: 5 %'
says err '  included: [Moving the furniture back]'
expect 'a raise' 0 "$program" again "$box/recorded.yaml" --start 2028-02-21 --raise '4 %' -o "$box/other/raised.yaml"
grep -q "^  raise on the firm's rates  *0.*%  *4.*%$" "$box/out" || { echo 'FAILED: the raise is not told'; bad=1; }
grep -q '^  raise: 4 %   # on the firm' "$box/other/raised.yaml" || { echo 'FAILED: the raise is not in the new job'; bad=1; }
{ cat "$box/other/raised.yaml"; echo 'done: 2028-02-22'; } > "$box/other/twice.yaml"
expect 'and another, after a day without records' 0 "$program" again "$box/other/twice.yaml" --start 2029-02-20 --raise '4 %' -o "$box/other/thrice.yaml"
grep -q '^  raise: 8.16 %   # on the firm' "$box/other/thrice.yaml" || { echo 'FAILED: the raises are not multiplied'; bad=1; }
grep -q 'last coat on 2028-02-22' "$box/other/thrice.yaml" || { echo 'FAILED: the day without records is not told'; bad=1; }
expect 'a raise without its sign' 2 "$program" again "$box/recorded.yaml" --start 2028-02-21 --raise 4
says err "write it like '4 %'"
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
await "$box/watch.out" 'changed: office, quote ('
cp "$box/watched/$ref/job.ics" "$box/old.ics" || { echo 'FAILED: watch made no calendar'; bad=1; }
edit() { # words: edits the job, and waits until its pack is made
  packs=$(grep -c ' ms)$' "$box/watch.out")
  sed -i "$1" "$box/first.yaml"
  for _ in $(seq 100); do [ "$(grep -c ' ms)$' "$box/watch.out")" -gt "$packs" ] && return; sleep 0.1; done
  echo "FAILED: watch never packed after '$1'"; bad=1
}
edit 's/^start: .*/start: 2027-02-22/'
cmp -s "$box/watched/$ref/job.ics" "$box/old.ics" && { echo 'FAILED: watch left the calendar with old dates'; bad=1; }
[ -e "$box/watched/$ref/aftercare.pdf" ] || { echo 'FAILED: watch made no aftercare sheet'; bad=1; }
echo 'call first' > "$box/watched/$ref/notes.txt"
edit 's/^work: .*/work: [wash]/; s/^sanding: .*//'
[ ! -e "$box/watched/$ref/aftercare.pdf" ] || { echo 'FAILED: watch left an old aftercare sheet'; bad=1; }
[ -e "$box/watched/$ref/notes.txt" ] || { echo 'FAILED: watch lost what is not its own'; bad=1; }
kill "$watcher"
{ wait "$watcher"; } 2> /dev/null
[ $? = 143 ] || { echo 'FAILED: watch does not end by the signal'; bad=1; }

# Nobody who asks for data goes without in silence.
job=$box/recorded.yaml
for words in --help --version "figures $job" "figures --json $job" "figures --explain $job" "plan $job" "plan --json $job" \
  "facts $job" "check $job" "due $box/jobs --by 2028-12-31" "due $box/jobs --by 2028-12-31 --json" \
  "due $box/jobs --by 2028-12-31 --csv" "rates $box/jobs"; do
  # shellcheck disable=SC2016,SC2086
  expect "$words, on a full disk" 2 sh -c '"$@" > /dev/full' sh "$program" $words
  says err 'planksheaf: error: standard output cannot be written'
done
# shellcheck disable=SC2016
expect 'with standard output closed' 2 sh -c '"$@" >&-' sh "$program" pack "$job" -o "$box/closed"
says err 'planksheaf: error: standard output cannot be written'
cmp "$box/closed/$ref/aftercare.pdf" "$box/once/$ref/aftercare.pdf" || bad=1
# shellcheck disable=SC2016
sh -c '{ sleep 1; "$@"; echo $? > "$0"; } | :' "$box/status" "$program" facts "$job" 2> "$box/err"
[ "$(cat "$box/status")" = 2 ] || { echo 'FAILED: nobody reads, and nobody is told'; bad=1; }

touch "$box/file"
expect 'a folder that cannot be made' 2 "$program" pack "$box/first.yaml" -o "$box/file/x"
says err "first.yaml: error: $box/file/x: cannot be made: Not a directory"
left=$(find "$box" -name '.*planksheaf*')
[ -z "$left" ] || { echo "FAILED: left behind: $left"; bad=1; }
# Families of fonts that cannot be set are told, and nothing is set in their place.
mkdir -p "$box/fonts" "$box/odd/themes"
cp "$box/firm/firm.yaml" "$box/odd/"
/usr/bin/python3 "$source/tests/odd_fonts.py" /usr/share/fonts/truetype/crosextra/Carlito-Regular.ttf "$box/fonts"
cat > "$box/fonts.conf" <<EOF
<fontconfig><dir>$box/fonts</dir><dir>/usr/share/fonts</dir><cachedir>$box/cache</cachedir></fontconfig>
EOF
for odd in 'Varlito variable.ttf a variable font' 'Collito collection.ttc a font collection'; do
  set -- $odd
  printf 'name: odd\nextends: generous\nfaces: {text: {family: %s}}\n' "$1" > "$box/odd/themes/odd.yaml"
  expect "a family that is $3 $4 $5" 1 env FONTCONFIG_FILE="$box/fonts.conf" "$program" pack "$box/first.yaml" \
    --firm "$box/odd" --theme odd -o "$box/odd"
  says err "odd.yaml:3:24: error: faces.text.family: the font family '$1' cannot be set: '$box/fonts/$2' is $3 $4 $5"
done

exit $bad
