// Jobs with values that cannot be: unknown words, numbers, dates, places.
#include "input_fixture.h"

#include <catch2/catch.hpp>

using fixture::BadJob;

TEST_CASE("impossible values are refused with the whole message") {
  const BadJob jobs[] = {
      {"an unknown product",
       {{"product: tern-oil\nareas", "product: turn-oil\nareas"}},
       "job.yaml:7:10: error: product: 'turn-oil' is not a known product; did you mean 'tern-oil'?\n"
       "  hint: known: plover-wb or tern-oil; each is a file in content/products, or in 'products' of the "
       "firm's folder\n"},
      {"an unknown timber",
       {{"kwila", "kwilla"}},
       "job.yaml:15:13: error: areas[1].timber: 'kwilla' is not a known timber; did you mean 'kwila'?\n"
       "  hint: known: kwila, larch or radiata-treated; add others to content/timbers.yaml\n"},
      {"an unknown timber near none",
       {{"kwila", "plastic"}},
       "job.yaml:15:13: error: areas[1].timber: 'plastic' is not a known timber\n"
       "  hint: known: kwila, larch or radiata-treated; add others to content/timbers.yaml\n"},
      {"an unknown region",
       {{"region: nz", "region: xy"}},
       "job.yaml:4:16: error: site.region: 'xy' is not a known region\n"
       "  hint: known: nz (New Zealand), us (United States); each is a file in content/regions\n"},
      {"an unknown state",
       {{"state: sanded", "state: sandad"}},
       "job.yaml:16:12: error: areas[1].state: 'sandad' is not a known state of the boards; did you mean "
       "'sanded'?\n"
       "  hint: known: new, weathered, sanded, oiled or film\n"},
      {"an unknown exposure",
       {{"timezone:", "exposure: opn, timezone:"}},
       "job.yaml:4:67: error: site.exposure: 'opn' is not a known exposure; did you mean 'open'?\n"
       "  hint: known: sheltered, open or coastal\n"},
      {"an unknown kind of work",
       {{"[wash, fix, sand, oil]", "[wash, fix, sand, paint]"}},
       "job.yaml:17:25: error: work[4]: 'paint' is not a known kind of work\n"
       "  hint: known: wash, fix, sand or oil\n"},
      {"work given twice",
       {{"[wash, fix, sand, oil]", "[wash, fix, sand, oil, oil]"}},
       "job.yaml:17:30: error: work[5]: 'oil' is given twice\n"
       "  hint: leave one out\n"},
      {"no work",
       {{"[wash, fix, sand, oil]\nsanding: [40, 60, 80]", "[]"}},
       "job.yaml:17:7: error: work: at least one kind of work is needed\n"
       "  hint: known: wash, fix, sand or oil\n"},
      {"an unknown task",
       {{"price: {", "task_rates: {wsh: 40 m2/h}\nprice: {"}},
       "job.yaml:21:14: error: task_rates.wsh: 'wsh' is not a known task; did you mean 'wash'?\n"
       "  hint: known: set-up, wash, fix, sand, cut-in or coat\n"},
      {"a rate of the wrong kind",
       {{"price: {", "task_rates: {wash: 40 m/h}\nprice: {"}},
       "job.yaml:21:20: error: task_rates.wash: '40 m/h' is not a rate in m2/h\n"
       "  hint: this rate is given like '40 m2/h'\n"},
      {"a rate for a task of fixed time",
       {{"price: {", "task_rates: {set-up: 40 m2/h}\nprice: {"}},
       "job.yaml:21:22: error: task_rates.set-up: this task has no rate, it takes a fixed time\n"
       "  hint: leave it out; its time stands in content/tasks.yaml\n"},
      {"an unknown product in stock",
       {{"{product: tern-oil, size", "{product: tern-oli, size"}},
       "job.yaml:20:22: error: in_stock[1].product: 'tern-oli' is not a known product; did you mean "
       "'tern-oil'?\n"
       "  hint: known: plover-wb or tern-oil; each is a file in content/products, or in 'products' of the "
       "firm's folder\n"},
      {"an answer that is neither yes nor no",
       {{"joists:", "covered: maybe\n    joists:"}},
       "job.yaml:13:14: error: areas[1].covered: 'maybe' is not a known answer\n"
       "  hint: known: true, false, yes or no\n"},
      {"a length without unit",
       {{"rectangle: [12.4 m", "rectangle: [12.4"}},
       "job.yaml:10:25: error: areas[1].shape.rectangle[1]: '12.4' needs a unit\n"
       "  hint: write '12.4 m'\n"},
      {"a volume as a length",
       {{"rectangle: [12.4 m", "rectangle: [5 L"}},
       "job.yaml:10:25: error: areas[1].shape.rectangle[1]: '5 L' is not a length\n"
       "  hint: lengths are given in m, cm, mm, um, ft, in or yd, like '12.4 m' or '40 ft 6 in'\n"},
      {"an unknown unit",
       {{"joists: 450 mm", "joists: 450 millis"}},
       "job.yaml:13:13: error: areas[1].joists: 'millis' is not a known unit\n"
       "  hint: lengths are given in m, cm, mm, um, ft, in or yd, like '12.4 m' or '40 ft 6 in'\n"},
      {"a decimal comma",
       {{"[12.4 m", "['12,4 m'"}},
       "job.yaml:10:25: error: areas[1].shape.rectangle[1]: '12,4' has a comma in its number\n"
       "  hint: write '12.4 m'\n"},
      {"an underscore in a number",
       {{"joists: 450 mm", "joists: 1_000 mm"}},
       "job.yaml:13:13: error: areas[1].joists: '1_000' is not a plain number\n"
       "  hint: write digits with a point, like 12.5\n"},
      {"a number of programmers",
       {{"people: 2", "people: 0x10"}},
       "job.yaml:19:16: error: crew.people: '0x10' is not a plain number\n"
       "  hint: write digits with a point, like 12.5\n"},
      {"a number with an exponent",
       {{"[12.4 m", "[1e400 m"}},
       "job.yaml:10:25: error: areas[1].shape.rectangle[1]: '1e400' is not a plain number\n"
       "  hint: write digits with a point, like 12.5\n"},
      {"infinity as a number",
       {{"latitude: -44.70", "latitude: .inf"}},
       "job.yaml:4:30: error: site.latitude: '.inf' is not a plain number\n"
       "  hint: write degrees with a point, like 41.1; south and west are negative\n"},
      {"not a number",
       {{"price: 620.00", "price: .nan"}},
       "job.yaml:21:58: error: price.options[1].price: '.nan' is not an amount of money\n"
       "  hint: write the number alone, without a currency sign, like 118.00\n"},
      {"half a person",
       {{"people: 2", "people: 2.5"}},
       "job.yaml:19:16: error: crew.people: '2.5' is not a whole number\n"
       "  hint: write digits only, like 12\n"},
      {"too many people",
       {{"people: 2", "people: 51"}},
       "job.yaml:19:16: error: crew.people: '51' is out of range\n"
       "  hint: allowed: from 1 to 50\n"},
      {"a size of zero",
       {{"joists: 450 mm", "joists: 0 mm"}},
       "job.yaml:13:13: error: areas[1].joists: '0 mm' is out of range\n"
       "  hint: allowed: from 100 mm to 3 m\n"},
      {"a negative size",
       {{"[12.4 m", "[-12.4 m"}},
       "job.yaml:10:25: error: areas[1].shape.rectangle[1]: '-12.4 m' is out of range\n"
       "  hint: allowed: from 1 um to 10 km\n"},
      {"a deck longer than sense",
       {{"[12.4 m", "[12.4 km"}},
       "job.yaml:10:25: error: areas[1].shape.rectangle[1]: 'km' is not a known unit\n"
       "  hint: lengths are given in m, cm, mm, um, ft, in or yd, like '12.4 m' or '40 ft 6 in'\n"},
      {"an area larger than sense",
       {{"[12.4 m, 6.2 m]", "[5000 m, 5000 m]"}},
       "job.yaml:10:24: error: areas[1].shape.rectangle: the area is larger than 100000 m2\n"
       "  hint: check numbers and units\n"
       "job.yaml:10:25: warning: areas[1].shape.rectangle[1]: '5000 m' is unusual here\n"
       "  hint: usually from 0.3 m to 100 m (1 to 330 ft); check number and unit\n"
       "job.yaml:10:33: warning: areas[1].shape.rectangle[2]: '5000 m' is unusual here\n"
       "  hint: usually from 0.3 m to 100 m (1 to 330 ft); check number and unit\n"},
      {"no coats",
       {{"state: sanded", "state: sanded\n    coats: 0"}},
       "job.yaml:17:12: error: areas[1].coats: '0' is out of range\n"
       "  hint: allowed: from 1 to 4\n"},
      {"an amount with a currency sign",
       {{"price: 620.00", "price: $620"}},
       "job.yaml:21:58: error: price.options[1].price: '$620' is not an amount of money\n"
       "  hint: write the number alone, without a currency sign, like 118.00\n"},
      {"an amount with too many decimals",
       {{"price: 620.00", "price: 620.005"}},
       "job.yaml:21:58: error: price.options[1].price: '620.005' has more than 2 decimals\n"
       "  hint: round it to the cent\n"},
      {"a negative amount",
       {{"price: 620.00", "price: -620.00"}},
       "job.yaml:21:58: error: price.options[1].price: '-620.00' is out of range\n"
       "  hint: amounts are not below zero\n"},
      {"a margin that leaves nothing for the cost",
       {{"price: {", "price: {margin: 95 %, "}},
       "job.yaml:21:17: error: price.margin: '95 %' is out of range\n"
       "  hint: allowed: from 0 % to below 95 %\n"},
      {"a discount above the price",
       {{"price: {", "price: {discount: 101 %, "}},
       "job.yaml:21:19: error: price.discount: '101 %' is out of range\n"
       "  hint: allowed: from 0 % to 100 %\n"},
      {"stages above the whole",
       {{"price: {",
         "price: {stages: [{share: 60 %, when: half is done}, {share: 40 %, when: the rest is done}], "}},
       "job.yaml:21:17: error: price.stages: deposit and stages are more than 100 % together\n"
       "  hint: what is left of 100 % is due on completion\n"},
      {"a spreading rate without unit",
       {{"state: sanded", "state: sanded\n    rates: [8]"}},
       "job.yaml:17:13: error: areas[1].rates[1]: '8' needs a unit\n"
       "  hint: write '8 m2/L'\n"},
      {"a spreading rate out of range",
       {{"state: sanded", "state: sanded\n    rates: [800 m2/L]"}},
       "job.yaml:17:13: error: areas[1].rates[1]: '800 m2/L' is out of range\n"
       "  hint: allowed: from 0.5 m2/L to 100 m2/L\n"},
      {"more rates than coats",
       {{"state: sanded", "state: sanded\n    rates: [8 m2/L, 12 m2/L, 12 m2/L]"}},
       "job.yaml:17:12: error: areas[1].rates: 3 rates are given for 2 coats\n"
       "  hint: give one for each coat, or set 'coats'\n"},
      {"rates and a test patch",
       {{"state: sanded", "state: sanded\n    rates: [8 m2/L]\n    test_patch: {area: 1 m2, used: 125 mL}"}},
       "job.yaml:18:17: error: areas[1].test_patch: rates and a test patch are both given\n"
       "  hint: keep the one that is to count\n"},
      {"a factor for smooth boards",
       {{"thickness: 38 mm", "thickness: 38 mm, reeded_factor: 125 %"}},
       "job.yaml:12:73: error: areas[1].boards.reeded_factor: the boards are smooth\n"
       "  hint: write 'face: reeded' or leave the factor out\n"},
      {"a date that does not exist",
       {{"quoted: 2027-03-02", "quoted: 2027-02-30"}},
       "job.yaml:2:9: error: quoted: '2027-02-30' is not a date that exists\n"
       "  hint: write year, month and day like 2027-03-16\n"},
      {"a date in another form",
       {{"start: 2027-03-16", "start: 16/3/2027"}},
       "job.yaml:5:8: error: start: '16/3/2027' is not a date\n"
       "  hint: write year, month and day like 2027-03-16\n"},
      {"a start before the quote",
       {{"start: 2027-03-16", "start: 2027-03-01"}},
       "job.yaml:5:8: error: start: the work starts before 2027-03-02, the date of the quote\n"
       "  hint: check both dates\n"},
      {"hours that end before they begin",
       {{"07:30-16:00", "16:00-07:30"}},
       "job.yaml:19:26: error: crew.hours: '16:00-07:30' ends before it begins\n"
       "  hint: the earlier time comes first, like 07:30-16:00\n"},
      {"hours in another form",
       {{"07:30-16:00", "7.30 to 16"}},
       "job.yaml:19:26: error: crew.hours: '7.30 to 16' is not a span of hours\n"
       "  hint: write it like 07:30-16:00\n"},
      {"breaks as long as the day",
       {{"breaks: 45 min", "breaks: 9 h"}},
       "job.yaml:19:47: warning: crew.breaks: '9 h' is unusual here\n"
       "  hint: usually from 10 min to 3 h; check number and unit\n"
       "job.yaml:19:47: error: crew.breaks: the breaks are as long as the working day\n"
       "  hint: write them like 45 min\n"},
      {"a coating window that closes before it opens",
       {{"price: {", "coating: 13:00-08:00\nprice: {"}},
       "job.yaml:21:10: error: coating: '13:00-08:00' ends before it begins\n"
       "  hint: the earlier time comes first, like 07:30-16:00\n"},
      {"a day that is none",
       {{"people: 2", "people: 2, days: [mon, funday]"}},
       "job.yaml:19:31: error: crew.days[2]: 'funday' is not a known day\n"
       "  hint: known: mon, tue, wed, thu, fri, sat or sun\n"},
      {"a day off that does not exist",
       {{"people: 2", "people: 2, off: [2027-04-31]"}},
       "job.yaml:19:25: error: crew.off[1]: '2027-04-31' is not a date that exists\n"
       "  hint: write year, month and day like 2027-03-16\n"},
      {"a latitude beyond the pole",
       {{"-44.70", "-94.70"}},
       "job.yaml:4:30: error: site.latitude: '-94.70' is out of range\n"
       "  hint: allowed: from -90 to 90; latitude is north, longitude east\n"},
      {"a latitude without a longitude",
       {{" longitude: 169.13,", ""}},
       "job.yaml:4:7: error: site: 'longitude' is missing\n"
       "  hint: latitude and longitude go together, like latitude: -45.00, longitude: 169.00\n"},
      {"days off that end before they begin",
       {{"people: 2", "people: 2, off: [2027-04-30, 2027-04-12 to 2027-04-09]"}},
       "job.yaml:19:37: error: crew.off[2]: '2027-04-12 to 2027-04-09' is no span of days\n"
       "  hint: write it like 2027-12-24 to 2028-01-07, at most a year\n"},
      {"more names than people",
       {{"crew: {people: 2,", "crew: {people: 2, names: [Ada, Ben, Cyd],"}},
       "job.yaml:19:26: error: crew.names: 3 names for a crew of 2\n"
       "  hint: write 'people: 3', or name only those on this job\n"},
      {"cloud for no forecast",
       {{"firm: ", "weather: {cloud: 60 %}\nfirm: "}},
       "job.yaml:6:10: error: weather: neither 'forecast' nor 'normals' is given\n"
       "  hint: weather: forecast.csv names a file beside the job\n"
       "job.yaml:6:18: error: weather.cloud: there is no 'forecast' that it could be of\n"
       "  hint: name its file, or leave it out\n"},
      {"weather that says nothing",
       {{"firm: ", "weather: {source: a guess}\nfirm: "}},
       "job.yaml:6:10: error: weather: neither 'forecast' nor 'normals' is given\n"
       "  hint: weather: forecast.csv names a file beside the job\n"
       "job.yaml:6:19: error: weather.source: there are no 'normals' that it could be of\n"
       "  hint: add 'normals', or leave it out\n"},
      {"weather at a place nobody knows",
       {{" latitude: -44.70, longitude: 169.13,", ""}, {"firm: ", "weather: none.csv\nfirm: "}},
       "job.yaml:6:10: error: weather: where the site lies is not known, and so neither sun nor night\n"
       "  hint: give 'latitude' and 'longitude' in 'site'\n"},
      {"sun at no hours",
       {{"state: sanded", "state: sanded\n    sun: noon"}},
       "job.yaml:17:10: error: areas[1].sun: 'noon' is not a span of hours\n"
       "  hint: write it like 07:30-16:00\n"},
      {"sun through a roof",
       {{"state: sanded", "state: sanded\n    covered: yes\n    sun: 09:00-15:00"}},
       "job.yaml:18:10: error: areas[1].sun: no sun reaches a deck under a roof\n"
       "  hint: leave out 'sun' or 'covered'\n"},
      {"answers that are neither yes nor no",
       {{"region: nz", "region: nz, near_water: perhaps"},
        {"state: sanded", "state: sanded\n    enclosed: half\n    treated: probably"}},
       "job.yaml:4:32: error: site.near_water: 'perhaps' is not a known answer\n"
       "  hint: known: true, false, yes or no\n"
       "job.yaml:17:15: error: areas[1].enclosed: 'half' is not a known answer\n"
       "  hint: known: true, false, yes or no\n"
       "job.yaml:18:14: error: areas[1].treated: 'probably' is not a known answer\n"
       "  hint: known: true, false, yes or no\n"},
      {"a way out of an area without a plan",
       {{"{rectangle: [12.4 m, 6.2 m]}", "{area: 76 m2, perimeter: 37 m}"},
        {"    without: [{circle: 1.2 m, at: [6 m, 3 m], name: tree}]\n", ""},
        {"state: sanded", "state: sanded\n    way_out: [0 m, 3 m]"}},
       "job.yaml:16:14: error: areas[1].way_out: there is no plan of this area to show it on\n"
       "  hint: leave it out\n"},
      {"an e-mail address without a place",
       {{"inga@coldwater.example", "inga at coldwater"}},
       "job.yaml:3:39: error: customer.email: 'inga at coldwater' is not an e-mail address\n"
       "  hint: write it like name@place.example\n"},
      {"a reference that is no folder name",
       {{"ref: LA-2027-031", "ref: ../LA 31"}},
       "job.yaml:1:6: error: ref: '../LA 31' cannot name a folder\n"
       "  hint: use letters, digits, . _ and -, at most 64, not . first or last\n"},
      {"a customer without a name",
       {{"name: Inga Thorley, ", ""}},
       "job.yaml:3:11: error: customer: 'name' is missing\n"
       "  hint: write it like name: A. Customer\n"},
      {"an empty text",
       {{"name: Landing", "name: \"\""}},
       "job.yaml:9:11: error: areas[1].name: the text is empty\n"
       "  hint: give one or leave the key out\n"},
  };
  fixture::checkAll(jobs);
}

TEST_CASE("languages are known, named once, and of documents there are") {
  const auto with = [](const std::string& languages) {
    return fixture::messagesOf(fixture::goodJob + "languages: " + languages + "\n");
  };
  CHECK(with("{safety: [en, es], quote: [es]}") == "");
  CHECK(with("{safety: [en, sp], qoute: [en], orders: [en, en], office: []}") ==
        "job.yaml:22:26: error: languages.safety[2]: 'sp' is not a known language\n"
        "  hint: known: en or es\n"
        "job.yaml:22:31: error: languages: 'qoute' is not a known key here; did you mean 'quote'?\n"
        "  hint: known: quote, aftercare, safety, dayplan, orders or office\n"
        "job.yaml:22:57: error: languages.orders[2]: 'en' is given twice\n"
        "  hint: leave one out\n"
        "job.yaml:22:70: error: languages.office: the list is empty\n"
        "  hint: name a language or leave the key out\n");
}
