// What people write by habit, and values beside the usual: each gets a hint that can be typed as it stands.
#include "input/yaml/quantity.h"
#include "input_fixture.h"

#include <catch2/catch.hpp>
#include <sstream>

using fixture::BadJob;

namespace {

const std::string inJob = "job.yaml:10:24: error: areas[1].shape.rectangle";
const std::string fullShape =
    "shape: {rectangle: [12.4 m, 6.2 m]}\n    without: [{circle: 1.2 m, at: [6 m, 3 m], name: tree}]";

std::string messagesWith(const std::string& from, const std::string& to) {
  return fixture::messagesOf(fixture::edited(fixture::goodJob, from, to));
}

/// What is said of another value of a key that stands alone in its line, 'state' standing before it.
std::string saidOf(const std::string& line) {
  return messagesWith("state: sanded", "state: sanded\n    " + line);
}

}  // namespace

TEST_CASE("habits of writing get a hint that can be typed as it stands") {
  const BadJob jobs[] = {
      {"a decimal comma in a list",
       {{"[12.4 m, 6.2 m]", "[12,4 m, 6,2 m]"}},
       inJob + ": 2 lengths are needed, not 4\n  hint: write [12.4 m, 6.2 m]\n"},
      {"a decimal comma in one of two",
       {{"[12.4 m, 6.2 m]", "[12,4 m, 6 m]"}},
       inJob + ": 2 lengths are needed, not 3\n  hint: write [12.4 m, 6 m]\n"},
      {"length by width",
       {{"[12.4 m, 6.2 m]", "6 m x 4 m"}},
       inJob + ": 2 lengths in a list are needed, not a single value\n  hint: write [6 m, 4 m]\n"},
      {"length by width with one unit",
       {{"[12.4 m, 6.2 m]", "[40 x 20 ft]"}},
       inJob + ": 2 lengths are needed, not 1\n  hint: write [40 ft, 20 ft]\n"},
      {"length times width",
       {{"[12.4 m, 6.2 m]", "6 \u00D7 4.5 m"}},
       inJob + ": 2 lengths in a list are needed, not a single value\n  hint: write [6 m, 4.5 m]\n"},
      {"length by width where one is nothing",
       {{"[12.4 m, 6.2 m]", "6 m x 0 m"}},
       inJob +
           ": 2 lengths in a list are needed, not a single value\n  hint: write it like [12.4 m, 6.2 m]\n"},
      {"a comma for a point",
       {{"joists: 450 mm", "joists: 0,45 m"}},
       "job.yaml:13:13: error: areas[1].joists: '0,45' has a comma in its number\n  hint: write '0.45 m'\n"},
      {"a deck under paint, in capitals",
       {{"state: sanded", "state: Paint"}},
       "job.yaml:16:12: error: areas[1].state: 'Paint' is not a known state of the boards; did you mean "
       "'film'?\n"
       "  hint: new, weathered (grey, no finish left), sanded, oiled, or film (paint, varnish or stain on "
       "the "
       "surface)\n"},
      {"a painted deck",
       {{"state: sanded", "state: painted"}},
       "job.yaml:16:12: error: areas[1].state: 'painted' is not a known state of the boards; did you mean "
       "'film'?\n"
       "  hint: new, weathered (grey, no finish left), sanded, oiled, or film (paint, varnish or stain on "
       "the "
       "surface)\n"},
      {"a timber by its short name",
       {{"timber: kwila", "timber: radiata"}},
       "job.yaml:15:13: error: areas[1].timber: 'radiata' is not a known timber; did you mean "
       "'radiata-treated'?\n"
       "  hint: known: kwila, larch or radiata-treated; add others to content/timbers.yaml\n"},
      {"a timber in capitals",
       {{"timber: kwila", "timber: Radiata Treated"}},
       "job.yaml:15:13: error: areas[1].timber: 'Radiata Treated' is not a known timber; did you mean "
       "'radiata-treated'?\n"
       "  hint: known: kwila, larch or radiata-treated; add others to content/timbers.yaml\n"},
      {"a region in capitals",
       {{"region: nz", "region: NZ"}},
       "job.yaml:4:16: error: site.region: 'NZ' is not a known region; did you mean 'nz'?\n"
       "  hint: known: nz (New Zealand), us (United States); each is a file in content/regions\n"},
      {"a region by its name",
       {{"region: nz", "region: New Zealand"}},
       "job.yaml:4:16: error: site.region: 'New Zealand' is not a known region; did you mean 'nz'?\n"
       "  hint: known: nz (New Zealand), us (United States); each is a file in content/regions\n"},
      {"a region one letter away from another",
       {{"region: nz", "region: uk"}},
       "job.yaml:4:16: error: site.region: 'uk' is not a known region\n"
       "  hint: known: nz (New Zealand), us (United States); each is a file in content/regions\n"},
      {"a latitude with its side",
       {{"latitude: -44.70", "latitude: 44.7 S"}},
       "job.yaml:4:30: error: site.latitude: '44.7 S' is not a plain number\n  hint: write -44.7\n"},
      {"a longitude with its side and degrees",
       {{"longitude: 169.13", "longitude: E 169.13\u00B0"}},
       "job.yaml:4:49: error: site.longitude: 'E' is not a plain number\n  hint: write 169.13\n"},
      {"a latitude no place has",
       {{"latitude: -44.70", "latitude: 144.7 S"}},
       "job.yaml:4:30: error: site.latitude: '144.7 S' is not a plain number\n"
       "  hint: write degrees with a point, like 41.1; south and west are negative\n"},
      {"a latitude with a comma",
       {{"site: {region: nz, latitude: -44.70, longitude: 169.13, timezone: Pacific/Auckland}",
         "site:\n  region: nz\n  latitude: -44,70\n  longitude: 169.13\n  timezone: Pacific/Auckland"}},
       "job.yaml:6:13: error: site.latitude: '-44,70' has a comma in its number\n  hint: write '-44.70'\n"},
      {"one kind of work outside a list",
       {{"[wash, fix, sand, oil]", "wash, fix, sand, oil"}},
       "job.yaml:17:7: error: work: a list is needed here, not a single value\n"
       "  hint: put [ ] around it: [wash, fix, sand, oil]\n"},
      {"a house of the future",
       {{"region: nz", "region: nz, year_built: 2150"}},
       "job.yaml:4:32: error: site.year_built: '2150' is after 2027, when the work starts\n"
       "  hint: check the year, or leave it out\n"},
      {"two areas whose names differ by capitals",
       {{"work: [",
         "  - {name: landing, shape: {length: 18.6 m, girth: 300 mm}, timber: kwila, state: sanded}\nwork: "
         "["}},
       "job.yaml:17:5: error: areas[2]: the name 'landing' is taken by area 1, 'Landing'\n"
       "  hint: names tell areas apart; capitals do not\n"},
      {"two areas whose names differ by a capital beyond ASCII",
       {{"name: Landing", "name: \u00C4ste"},
        {"work: [",
         "  - {name: \u00E4ste, shape: {length: 18.6 m, girth: 300 mm}, timber: kwila, state: sanded}\nwork: "
         "["}},
       "job.yaml:17:5: error: areas[2]: the name '\u00E4ste' is taken by area 1, '\u00C4ste'\n"
       "  hint: names tell areas apart; capitals do not\n"},
      {"a tin in the shed of a size nobody sells",
       {{"size: 2.5 L", "size: 25 L"}},
       "job.yaml:20:38: warning: in_stock[1].size: 'tern-oil' is not sold in tins of '25 L'\n"
       "  hint: check number and unit; its tins stand in the product's file, under tins: nz\n"},
      {"a tax far from the region's",
       {{"deposit: 10 %", "tax: 1.5 %"}},
       "job.yaml:21:14: warning: price.tax: '1.5 %' is far from the region's own rate\n"
       "  hint: leave 'tax' out for that rate, or check the number\n"},
      {"a way out in the middle of the deck",
       {{"state: sanded", "state: sanded\n    way_out: [9 m, 3 m]"}},
       "job.yaml:17:14: warning: areas[1].way_out: the way out lies in the middle of 'Landing', more than "
       "0.3 m "
       "from every edge\n"
       "  hint: name the place at the edge where the crew steps off\n"},
      {"a way out a board's width from the edge",
       {{"state: sanded", "state: sanded\n    way_out: [12.2 m, 3 m]"}},
       ""},
      {"a way out beside a cut-out: a hatch or a stair",
       {{"state: sanded", "state: sanded\n    way_out: [6.8 m, 3 m]"}},
       ""},
      {"a perimeter that does not reach around",
       {{fullShape, "shape: {area: 76.9 m2, perimeter: 3.7 m}"}},
       "job.yaml:10:39: error: areas[1].shape.perimeter: '3.7 m' does not reach around that area\n"
       "  hint: it is the whole outer edge; check numbers and units\n"},
      {"a perimeter ten times too long",
       {{fullShape, "shape: {area: 76.9 m2, perimeter: 372 m}"}},
       "job.yaml:10:39: warning: areas[1].shape.perimeter: '372 m' makes the area narrower than 0.5 m\n"
       "  hint: check numbers and units\n"},
      {"a start ten years after the quote",
       {{"start: 2027-03-16", "start: 2037-03-16"}},
       "job.yaml:5:8: warning: start: the work starts more than a year after 2027-03-02, the date of the "
       "quote\n"
       "  hint: check both dates\n"},
      {"a rate for an hour that is one for a day",
       {{"price: {", "task_rates: {wash: 240 m2/h}\nprice: {"}},
       "job.yaml:21:20: warning: task_rates.wash: '240 m2/h' is far from the usual rate of 'wash'\n"
       "  hint: one person's hour is meant; check number and unit\n"},
      {"a patch that drank ten times as much",
       {{"state: sanded", "state: sanded\n    test_patch: {area: 1 m2, used: 1.2 L}"}},
       "job.yaml:17:17: warning: areas[1].test_patch: what the patch drank is unusual here\n"
       "  hint: usually from 2 m2/L to 30 m2/L (80 to 1200 ft2/gal); check number and unit\n"},
  };
  fixture::checkAll(jobs);
}

TEST_CASE("lengths as plans and rules print them are read") {
  for (const char* length :
       {"12'-6\"", "12' - 6\"", "12\u00BD ft", "12 \u00BD ft", "12 feet 6 inches", "12.5 Feet", "12'-6\u2033",
        "150 in", "150\" o.c.", "150 in on center", "3810 MM", "3.81 metres", "3.81 m crs"}) {
    INFO(length);
    const auto p = input::parseLength(length);
    CHECK_FALSE(p.problem);
    CHECK(p.value == base::Length{3'810'000'000});  // 150 x 25.4 mm
  }
  CHECK(input::parseLength("3 m - 20 cm").problem);  // a difference, or a slip
  CHECK(input::parseArea("24 sq m").value == base::squareMetres(24));
  CHECK(input::parseArea("100 square feet").value == input::parseArea("100 ft2").value);
  CHECK(input::parseVolume("2.5 litres").value == base::millilitres(2500));
  CHECK(input::parseTime("1 hour 30 minutes").value.millionths == 1'500'000);
}

TEST_CASE("a number without a unit is shown with the unit that makes sense there") {
  const auto width = [](const std::string& to) { return messagesWith("width: 138 mm", "width: " + to); };
  const std::string at = "job.yaml:12:21: error: areas[1].boards.width: ";
  CHECK(width("140") == at + "'140' needs a unit\n  hint: write '140 mm'\n");
  CHECK(width("14") == at + "'14' needs a unit\n  hint: write '14 cm'\n");
  CHECK(width("5.5") == at + "'5.5' needs a unit\n  hint: write '5.5 cm' or '5.5 in'\n");
  CHECK(width("400") == at + "'400' needs a unit\n  hint: write '400 mm'\n");
  CHECK(width("5000") == at + "'5000' needs a unit\n  hint: allowed: from 10 mm to 1 m\n");
  CHECK(width("0.14") == at + "'0.14' needs a unit\n  hint: write '0.14 m'\n");
  const auto side = [](const std::string& to) { return messagesWith("[12.4 m", "[" + to); };
  const std::string first = "job.yaml:10:25: error: areas[1].shape.rectangle[1]: ";
  CHECK(side("30") == first + "'30' needs a unit\n  hint: write '30 m' or '30 cm'\n");
  CHECK(side("300") == first + "'300' needs a unit\n  hint: write '300 mm' or '300 cm'\n");
  CHECK(side("12400") == first + "'12400' needs a unit\n  hint: write '12400 mm'\n");
  const auto loss = [](const std::string& to) {
    return messagesWith("work: [wash", "loss: " + to + "\nwork: [wash");
  };
  const std::string share = "job.yaml:17:7: error: loss: ";
  CHECK(loss("0.05") == share + "'0.05' needs a unit\n  hint: write '5 %'\n");
  CHECK(loss("0.075") == share + "'0.075' needs a unit\n  hint: write '7.5 %'\n");
  CHECK(loss("5") == share + "'5' needs a unit\n  hint: write '5 %'\n");
  CHECK(loss("30") == share + "'30' needs a unit\n  hint: write '30 %'\n");
  CHECK(loss("300") == share + "'300' needs a unit\n  hint: allowed: from 0 % to 50 %\n");
  CHECK(messagesWith("breaks: 45 min", "breaks: 45") ==
        "job.yaml:19:47: error: crew.breaks: '45' needs a unit\n  hint: write '45 min'\n");
  CHECK(messagesWith("breaks: 45 min", "breaks: 0.75") ==
        "job.yaml:19:47: error: crew.breaks: '0.75' needs a unit\n  hint: write '0.75 h'\n");
  CHECK(saidOf("rates: [350]") ==
        "job.yaml:17:13: error: areas[1].rates[1]: '350' needs a unit\n  hint: write '350 ft2/gal'\n");
  CHECK(saidOf("rates: [8]") ==
        "job.yaml:17:13: error: areas[1].rates[1]: '8' needs a unit\n  hint: write '8 m2/L'\n");
  CHECK(saidOf("rates: [0.05]") ==
        "job.yaml:17:13: error: areas[1].rates[1]: '0.05' needs a unit\n  hint: write '0.05 L/m2'\n");
  CHECK(saidOf("rates: [0.001]") ==
        "job.yaml:17:13: error: areas[1].rates[1]: '0.001' needs a unit\n"
        "  hint: allowed: from 0.5 m2/L to 100 m2/L\n");
}

TEST_CASE("a comma in a number is a point, parts the thousands, or may be either") {
  const auto price = [](const std::string& to) {
    return messagesWith("options: [{text: Handrail, price: 620.00}]",
                        "options: [{text: Handrail, price: '" + to + "'}]");
  };
  const std::string at = "job.yaml:21:58: error: price.options[1].price: '";
  const std::string comma = " has a comma in its number\n  hint: write ";
  CHECK(price("620,00") == at + "620,00'" + comma + "'620.00'\n");
  CHECK(price("1,500") == at + "1,500'" + comma + "'1500'\n");  // half a cent is no price
  CHECK(price("5.000,00") == at + "5.000,00'" + comma + "'5000.00'\n");
  CHECK(price("5,000.00") == at + "5,000.00'" + comma + "'5000.00'\n");
  CHECK(price("1,234,567") == at + "1,234,567'" + comma + "'1234567'\n");
  CHECK(price("6,") == at + "6,' has a comma in its number\n  hint: write digits with a point, like 12.5\n");
  const auto joists = [](const std::string& to) { return messagesWith("joists: 450 mm", "joists: " + to); };
  const std::string below = "job.yaml:13:13: error: areas[1].joists: ";
  CHECK(joists("1,200 mm") == below + "'1,200'" + comma + "'1200 mm'\n");  // 1.2 mm is out of range
  CHECK(joists("1,200 m") == below + "'1,200'" + comma + "'1.200 m'\n");
  CHECK(joists("1 ft 5,5 in") == below + "'5,5'" + comma + "'1 ft 5.5 in'\n");
  CHECK(messagesWith("people: 2", "people: '1,000'") ==
        "job.yaml:19:16: error: crew.people: '1,000' has a comma in its number\n"
        "  hint: write digits with a point, like 12.5\n");
}

TEST_CASE("a number without a unit is feet and inches where people measure so") {
  std::string us = fixture::edited(fixture::goodJob, "region: nz", "region: us");
  const auto said = [&](const std::string& from, const std::string& to) {
    const std::string all = fixture::messagesOf(fixture::edited(us, from, to));
    return all.substr(all.find("error: areas"));
  };
  CHECK(said("width: 138 mm", "width: 5.5") ==
        "error: areas[1].boards.width: '5.5' needs a unit\n  hint: write '5.5 in'\n");
  CHECK(said("width: 138 mm", "width: 140") ==
        "error: areas[1].boards.width: '140' needs a unit\n  hint: write '140 mm'\n");
  CHECK(said("joists: 450 mm", "joists: 16") ==
        "error: areas[1].joists: '16' needs a unit\n  hint: write '16 in'\n");
  CHECK(said("[12.4 m", "[16") ==
        "error: areas[1].shape.rectangle[1]: '16' needs a unit\n  hint: write '16 ft' or '16 in'\n");
}

namespace {

/// A key with its usual value in the job below, and the factors from which on a slip is told. A tenth of a
/// side, a strip or an area is a small one, ten times a count of tins a large stock: these pass.
struct Key {
  const char* path;
  const char* text;
  double value;
  const char* unit;
  int up = 100, down = 100;
};

const std::string fullJob = R"(ref: A
quoted: 2027-03-02
valid_days: 30
customer: {name: A. Customer}
site: {region: nz, latitude: -44.70, longitude: 169.13, timezone: Pacific/Auckland, year_built: 1985}
start: 2027-03-16
firm: ../firm
product: tern-oil
loss: 5 %
allowance: 6 %
areas:
  - name: Landing
    shape: {rectangle: [12.4 m, 6.2 m]}
    boards: {width: 138 mm, gap: 4 mm, thickness: 38 mm, face: reeded, reeded_factor: 125 %}
    joists: 450 mm
    fixings: {kind: nails, per_crossing: 2}
    timber: kwila
    state: sanded
    coats: 2
    rates: [8 m2/L]
    edge_height: 0.6 m
  - {name: Pond side, shape: {circle: 3 m}, timber: kwila, state: sanded, test_patch: {area: 1 m2, used: 120 mL}}
  - {name: Corner, shape: {triangle: [3.1 m, 4.1 m, 5.1 m]}, timber: kwila, state: sanded}
  - {name: Steps, shape: {stairs: {steps: 7, width: 1.3 m, going: 280 mm, rise: 175 mm}}, timber: kwila, state: sanded}
  - {name: Rail, shape: {length: 18.6 m, girth: 300 mm}, timber: kwila, state: sanded}
  - {name: Screen, shape: {screen: {width: 3.3 m, height: 1.8 m, sides: 2, solid: 60 %}}, timber: kwila, state: sanded}
  - {name: Wharf, shape: {area: 24 m2, perimeter: 20 m}, timber: kwila, state: sanded}
work: [wash, sand, oil]
sanding: [40, 80]
crew: {people: 3, hours: 07:30-16:00, breaks: 45 min}
in_stock: [{product: tern-oil, size: 2.5 L, count: 1}]
task_rates: {wash: 21 m2/h}
price: {margin: 26 %, raise: 4 %, discount: 7 %, deposit: 9 %, tax: 15 %}
done: [{coat: 1, from: 2027-03-18 08:10, to: 11:30, air: 16 C, surface: 19 C, humidity: 71 %, moisture: 14 %}]
)";

constexpr Key keys[] = {{"valid_days", "valid_days: 30", 30, "", 10, 10},
                        {"site.year_built", "year_built: 1985", 1985, "", 10, 10},
                        {"loss", "loss: 5 %", 5, " %", 10, 10},
                        {"allowance", "allowance: 6 %", 6, " %", 10, 10},
                        {"areas[1]", "[12.4 m", 12.4, " m", 10, 100},
                        {"areas[1]", ", 6.2 m]", 6.2, " m", 10, 100},
                        {"areas[1].boards.width", "width: 138 mm", 138, " mm", 10, 10},
                        {"areas[1].boards.gap", "gap: 4 mm", 4, " mm", 10, 10},
                        {"areas[1].boards.thickness", "thickness: 38 mm", 38, " mm", 10, 10},
                        {"areas[1].boards.reeded_factor", "reeded_factor: 125 %", 125, " %", 10, 10},
                        {"areas[1].joists", "joists: 450 mm", 450, " mm", 10, 10},
                        {"areas[1].fixings.per_crossing", "per_crossing: 2", 2, "", 10, 10},
                        {"areas[1].coats", "coats: 2", 2, "", 10, 10},
                        {"areas[1].rates[1]", "rates: [8 m2/L", 8, " m2/L", 10, 10},
                        {"areas[1].edge_height", "edge_height: 0.6 m", 0.6, " m", 10, 100},
                        {"areas[2]", "circle: 3 m", 3, " m", 10, 10},
                        {"areas[2].test_patch", "{area: 1 m2, u", 1, " m2", 10, 10},
                        {"areas[2].test_patch", "used: 120 mL", 120, " mL", 10, 10},
                        {"areas[3].shape.triangle", "[3.1 m", 3.1, " m", 10, 10},
                        {"areas[4].shape.stairs.steps", "steps: 7", 7, "", 10, 10},
                        {"areas[4].shape.stairs.width", "width: 1.3 m", 1.3, " m", 10, 10},
                        {"areas[4].shape.stairs.going", "going: 280 mm", 280, " mm", 10, 10},
                        {"areas[4].shape.stairs.rise", "rise: 175 mm", 175, " mm", 10, 10},
                        {"areas[5].shape.length", "length: 18.6 m", 18.6, " m", 10, 100},
                        {"areas[5].shape.girth", "girth: 300 mm", 300, " mm", 10, 10},
                        {"areas[6].shape.screen.width", "width: 3.3 m", 3.3, " m", 10, 10},
                        {"areas[6].shape.screen.height", "height: 1.8 m", 1.8, " m", 10, 10},
                        {"areas[6].shape.screen.sides", "sides: 2", 2, "", 10, 10},
                        {"areas[6].shape.screen.solid", "solid: 60 %", 60, " %", 10, 10},
                        {"areas[7].shape", "area: 24 m2, p", 24, " m2", 10, 100},
                        {"areas[7].shape.perimeter", "perimeter: 20 m", 20, " m", 10, 10},
                        {"crew.people", "people: 3", 3, "", 10, 10},
                        {"crew.breaks", "breaks: 45 min", 45, " min", 10, 10},
                        {"in_stock[1].size", "size: 2.5 L", 2.5, " L", 10, 10},
                        {"in_stock[1].count", "count: 1", 1, "", 100, 10},
                        {"task_rates.wash", "wash: 21 m2/h", 21, " m2/h", 10, 10},
                        {"price.margin", "margin: 26 %", 26, " %", 10, 10},
                        {"price.raise", "raise: 4 %", 4, " %", 10, 10},
                        {"price.discount", "discount: 7 %", 7, " %", 10, 10},
                        {"price.deposit", "deposit: 9 %", 9, " %", 10, 10},
                        {"price.tax", "tax: 15 %", 15, " %", 10, 10},
                        {"done[1].air", "air: 16 C", 16, " C", 10, 10},
                        {"done[1].surface", "surface: 19 C", 19, " C", 10, 10},
                        {"done[1].humidity", "humidity: 71 %", 71, " %", 10, 10},
                        {"done[1].moisture", "moisture: 14 %", 14, " %", 10, 10}};

}  // namespace

TEST_CASE("a value that is off by its decimal point is refused or gets a warning, in every key") {
  REQUIRE(fixture::messagesOf(fullJob) == "");
  for (const Key& key : keys) {
    std::ostringstream usual;
    usual << key.value << key.unit;
    const std::string text = key.text;
    REQUIRE(text.find(usual.str()) != std::string::npos);
    for (const double factor : {0.001, 0.01, 0.1, 10.0, 100.0, 1000.0}) {
      if (factor < 1 ? factor * key.down > 1.0001 : factor < key.up) continue;
      std::ostringstream slip;
      slip.precision(12);
      slip << key.value * factor << key.unit;
      const std::string line = fixture::edited(text, usual.str(), slip.str());
      INFO(line);
      CHECK_THAT(fixture::messagesOf(fixture::edited(fullJob, text, line)),
                 Catch::Contains(": " + std::string(key.path)));
    }
  }
}

TEST_CASE("a missing key shows a line that mends it") {
  for (const char* key : {"ref", "quoted", "customer", "start", "product", "work"}) {
    const std::size_t from = fixture::goodJob.find(std::string(key) + ":");
    std::string job = fixture::goodJob;
    job.erase(from, job.find('\n', from) + 1 - from);
    const std::string said = fixture::messagesOf(job);
    const std::string start = "hint: write it like ";
    const std::size_t hint = said.find(start);
    INFO(said);
    REQUIRE(hint != std::string::npos);
    job = said.substr(hint + start.size(), said.find('\n', hint) - hint - start.size()) + "\n" + job;
    CHECK(fixture::messagesOf(job) == "");
  }
}
