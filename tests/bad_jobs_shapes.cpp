// Jobs whose shapes or parts do not go together.
#include "input_fixture.h"

#include <catch2/catch.hpp>

using fixture::BadJob;

TEST_CASE("impossible shapes and combinations are refused with the whole message") {
  const BadJob jobs[] = {
      {"no shape",
       {{"shape: {rectangle: [12.4 m, 6.2 m]}\n    without: [{circle: 1.2 m, at: [6 m, 3 m], name: tree}]",
         "shape: {perimeter: 20 m}"}},
       "job.yaml:10:12: error: areas[1].shape: no shape is given\n"
       "  hint: known: rectangle, points, circle, ring, triangle, stairs, screen, length and girth, or area\n"
       "job.yaml:10:24: error: areas[1].shape.perimeter: a perimeter goes with a measured area\n"
       "  hint: add 'area', or leave it out\n"},
      {"two shapes",
       {{"shape: {rectangle: [12.4 m, 6.2 m]}\n    without: [{circle: 1.2 m, at: [6 m, 3 m], name: tree}]",
         "shape: {circle: 3 m, rectangle: [2 m, 3 m]}"}},
       "job.yaml:10:12: error: areas[1].shape: two shapes are given: 'rectangle' and 'circle'\n"
       "  hint: make two areas of them\n"},
      {"a rectangle with one side",
       {{"shape: {rectangle: [12.4 m, 6.2 m]}\n    without: [{circle: 1.2 m, at: [6 m, 3 m], name: tree}]",
         "shape: {rectangle: [2 m]}"}},
       "job.yaml:10:24: error: areas[1].shape.rectangle: 2 lengths are needed, not 1\n"
       "  hint: write it like [12.4 m, 6.2 m]\n"},
      {"an outline of two points",
       {{"shape: {rectangle: [12.4 m, 6.2 m]}\n    without: [{circle: 1.2 m, at: [6 m, 3 m], name: tree}]",
         "shape: {points: [[0 m, 0 m], [4 m, 0 m]]}"}},
       "job.yaml:10:21: error: areas[1].shape.points: an outline needs at least 3 different points\n"
       "  hint: list every corner, like [[0 m, 0 m], [6 m, 0 m], [6 m, 4 m]]\n"},
      {"an outline without area",
       {{"shape: {rectangle: [12.4 m, 6.2 m]}\n    without: [{circle: 1.2 m, at: [6 m, 3 m], name: tree}]",
         "shape: {points: [[0 m, 0 m], [4 m, 0 m], [8 m, 0 m]]}"}},
       "job.yaml:10:21: error: areas[1].shape.points: the points lie on one line\n"
       "  hint: list every corner, like [[0 m, 0 m], [6 m, 0 m], [6 m, 4 m]]\n"},
      {"an outline that crosses itself",
       {{"shape: {rectangle: [12.4 m, 6.2 m]}\n    without: [{circle: 1.2 m, at: [6 m, 3 m], name: tree}]",
         "shape: {points: [[0 m, 0 m], [4 m, 4 m], [4 m, 0 m], [0 m, 4 m]]}"}},
       "job.yaml:10:21: error: areas[1].shape.points: the outline crosses or touches itself\n"
       "  hint: list the corners in the order in which you walk around the deck\n"},
      {"a point with one length",
       {{"shape: {rectangle: [12.4 m, 6.2 m]}\n    without: [{circle: 1.2 m, at: [6 m, 3 m], name: tree}]",
         "shape: {points: [[0 m], [4 m, 4 m], [4 m, 0 m]]}"}},
       "job.yaml:10:22: error: areas[1].shape.points[1]: a place has 2 lengths, not 1\n"
       "  hint: write it like [6 m, 3 m]: to the right, down\n"},
      {"a ring inside out",
       {{"shape: {rectangle: [12.4 m, 6.2 m]}\n    without: [{circle: 1.2 m, at: [6 m, 3 m], name: tree}]",
         "shape: {ring: [2 m, 6 m]}"}},
       "job.yaml:10:19: error: areas[1].shape.ring: the inner diameter is not smaller than the outer one\n"
       "  hint: write the outer diameter first\n"},
      {"a triangle that does not close",
       {{"shape: {rectangle: [12.4 m, 6.2 m]}\n    without: [{circle: 1.2 m, at: [6 m, 3 m], name: tree}]",
         "shape: {triangle: [3 m, 4 m, 8 m]}"}},
       "job.yaml:10:23: error: areas[1].shape.triangle: the sides do not close\n"
       "  hint: each side of a triangle is shorter than the other two together\n"},
      {"stairs without steps",
       {{"shape: {rectangle: [12.4 m, 6.2 m]}\n    without: [{circle: 1.2 m, at: [6 m, 3 m], name: tree}]",
         "shape: {stairs: {steps: 0, width: 1.2 m, going: 280 mm, rise: 170 mm}}"}},
       "job.yaml:10:29: error: areas[1].shape.stairs.steps: '0' is out of range\n"
       "  hint: allowed: from 1 to 500\n"},
      {"a strip without girth",
       {{"shape: {rectangle: [12.4 m, 6.2 m]}\n    without: [{circle: 1.2 m, at: [6 m, 3 m], name: tree}]",
         "shape: {length: 18.6 m}"}},
       "job.yaml:10:12: error: areas[1].shape: 'girth' is missing\n"
       "  hint: a strip is written like {length: 18.6 m, girth: 300 mm}\n"},
      {"a screen with three sides",
       {{"shape: {rectangle: [12.4 m, 6.2 m]}\n    without: [{circle: 1.2 m, at: [6 m, 3 m], name: tree}]",
         "shape: {screen: {width: 2 m, height: 1.8 m, sides: 3, solid: 60 %}}"}},
       "job.yaml:10:56: error: areas[1].shape.screen.sides: '3' is out of range\n"
       "  hint: allowed: 1 or 2\n"},
      {"a cut-out outside the deck",
       {{"at: [6 m, 3 m]", "at: [12 m, 3 m]"}},
       "job.yaml:11:15: error: areas[1].without[1]: the cut-out does not lie on the deck\n"
       "  hint: 'at' is the centre of a circle and the upper left corner of other shapes, from the deck's "
       "upper left corner: to the right, down\n"},
      {"cut-outs that overlap",
       {{"without: [{circle: 1.2 m, at: [6 m, 3 m], name: tree}]",
         "without: [{circle: 1.2 m, at: [6 m, 3 m]}, {rectangle: [1 m, 1 m], at: [6 m, 3 m]}]"}},
       "job.yaml:11:48: error: areas[1].without[2]: the cut-out overlaps cut-out 1\n"
       "  hint: check 'at' of both, or make one shape of them\n"},
      {"a cut-out in the hole of a ring",
       {{"shape: {rectangle: [12.4 m, 6.2 m]}\n    without: [{circle: 1.2 m, at: [6 m, 3 m], name: tree}]",
         "shape: {ring: [6 m, 3 m]}\n    without: [{circle: 1 m, at: [3 m, 3 m]}]"}},
       "job.yaml:11:15: error: areas[1].without[1]: the cut-out does not lie on the deck\n"
       "  hint: 'at' is the centre of a circle and the upper left corner of other shapes, from the deck's "
       "upper left corner: to the right, down\n"},
      {"a cut-out without a place",
       {{", at: [6 m, 3 m]", ""}},
       "job.yaml:11:15: error: areas[1].without[1]: 'at' is missing\n"
       "  hint: write where it lies, like at: [6 m, 3 m]\n"},
      {"stairs cut out",
       {{"circle: 1.2 m", "stairs: {steps: 3, width: 1.2 m, going: 280 mm, rise: 170 mm}"}},
       "job.yaml:11:15: error: areas[1].without[1]: only flat shapes can be cut out\n"
       "  hint: known: rectangle, points, circle, ring, triangle, or area\n"},
      {"a cut-out of stairs",
       {{"shape: {rectangle: [12.4 m, 6.2 m]}\n    without: [{circle: 1.2 m, at: [6 m, 3 m], name: tree}]",
         "shape: {stairs: {steps: 3, width: 1.2 m, going: 280 mm, rise: 170 mm}}\n    without: [{circle: 1.2 "
         "m, at: [6 m, 3 m], name: tree}]"}},
       "job.yaml:11:14: error: areas[1].without: stairs, strips and screens have no cut-outs\n"
       "  hint: measure them without what is missing\n"},
      {"a circle cut out of a measured area",
       {{"shape: {rectangle: [12.4 m, 6.2 m]}\n    without: [{circle: 1.2 m, at: [6 m, 3 m], name: tree}]",
         "shape: {area: 24 m2}\n    without: [{circle: 1.2 m, at: [6 m, 3 m], name: tree}]"}},
       "job.yaml:11:15: error: areas[1].without[1]: a deck given by its area has no place for this shape\n"
       "  hint: give the cut-out by its area as well\n"},
      {"an area cut out of a drawn deck",
       {{"{circle: 1.2 m, at: [6 m, 3 m], name: tree}", "{area: 2 m2}"}},
       "job.yaml:11:15: error: areas[1].without[1]: a cut-out given by its area has no place on this deck\n"
       "  hint: give its shape and 'at'\n"},
      {"cut-outs that leave nothing",
       {{"shape: {rectangle: [12.4 m, 6.2 m]}\n    without: [{circle: 1.2 m, at: [6 m, 3 m], name: tree}]",
         "shape: {area: 24 m2}\n    without: [{area: 24 m2}]"}},
       "job.yaml:11:14: error: areas[1].without: the cut-outs leave nothing of the deck\n"
       "  hint: check their sizes\n"},
      {"a cut-out as large as the deck",
       {{"circle: 1.2 m, at: [6 m, 3 m]", "rectangle: [12.4 m, 6.2 m], at: [0 m, 0 m]"}},
       "job.yaml:11:15: error: areas[1].without[1]: the cut-outs leave nothing of the deck\n"
       "  hint: check their sizes\n"},
      {"a circle cut out of its like",
       {{"rectangle: [12.4 m, 6.2 m]", "circle: 2 m"}, {"1.2 m, at: [6 m, 3 m]", "2 m, at: [1 m, 1 m]"}},
       "job.yaml:11:15: error: areas[1].without[1]: the cut-outs leave nothing of the deck\n"
       "  hint: check their sizes\n"},
      {"fixing without boards",
       {{"    boards: {width: 138 mm, gap: 5 mm, thickness: 38 mm}\n    joists: 450 mm\n    fixings: {kind: "
         "nails}\n",
         ""}},
       "job.yaml:9:5: error: areas[1]: 'boards' is missing\n"
       "  hint: the fixings are counted from it; write it like boards: {width: 140 mm, gap: 5 mm, thickness: "
       "32 mm}\n"
       "job.yaml:9:5: error: areas[1]: 'joists' is missing\n"
       "  hint: the fixings are counted from it; write it like joists: 450 mm\n"
       "job.yaml:9:5: error: areas[1]: 'fixings' is missing\n"
       "  hint: the fixings are counted from it; write it like fixings: {kind: screws, per_crossing: 2}\n"},
      {"a way out in a cut-out",
       {{"state: sanded", "state: sanded\n    way_out: [6 m, 3 m]"}},
       "job.yaml:17:14: error: areas[1].way_out: the way out lies in a cut-out\n"
       "  hint: measure to the right and down from the deck's upper left corner; its lower right corner is "
       "[12.40 m, "
       "6.20 m]\n"},
      {"a way out far from the deck",
       {{"state: sanded", "state: sanded\n    way_out: [900 m, 3 m]"}},
       "job.yaml:17:14: error: areas[1].way_out: the way out does not lie on the deck\n"
       "  hint: measure to the right and down from the deck's upper left corner; its lower right corner is "
       "[12.40 m, "
       "6.20 m]\n"},
      {"two areas over one another",
       {{"    timber: kwila\n    state: sanded\n",
         "    at: [0 m, 0 m]\n    timber: kwila\n    state: sanded\n"},
        {"work: [wash, fix, sand",
         "  - {name: Bay, shape: {circle: 2 m}, at: [11.4 m, 2 m], timber: kwila, state: sanded}\n"
         "  - {name: Hot tub rim, shape: {circle: 1 m}, at: [5.5 m, 2.5 m], timber: kwila, state: sanded}\n"
         "  - {name: Steps, shape: {stairs: {steps: 3, width: 1.2 m, going: 280 mm, rise: 170 mm}}, at: [1 "
         "m, 1 m], "
         "timber: kwila, state: sanded}\nwork: [wash, sand"}},
       "job.yaml:18:5: warning: areas[2]: 'Bay' lies over 1.6 m2 of area 1, 'Landing'\n"
       "  hint: check 'at' of both; it is right where one is above the other\n"},
      {"areas that touch, one of them measured a hair too wide",
       {{"    timber: kwila\n    state: sanded\n",
         "    at: [0 m, 0 m]\n    timber: kwila\n    state: sanded\n"},
        {"work: [wash, fix, sand",
         "  - {name: Bay, shape: {rectangle: [4 m, 6.2 m]}, at: [12.39 m, 0 m], timber: kwila, state: "
         "sanded}\n"
         "work: [wash, sand"}},
       ""},
      {"a deck of a thousand metres",
       {{"rectangle: [12.4 m", "rectangle: [1240 m"}},
       "job.yaml:9:5: warning: areas[1]: 'Landing' covers 7687 m2\n"
       "  hint: usually from 0.2 m2 to 500 m2 (2 to 5400 ft2); check numbers and units\n"
       "job.yaml:10:25: warning: areas[1].shape.rectangle[1]: '1240 m' is unusual here\n"
       "  hint: usually from 0.3 m to 100 m (1 to 330 ft); check number and unit\n"},
      {"an outline in millimetres of what was measured in metres",
       {{"rectangle: [12.4 m, 6.2 m]}\n    without: [{circle: 1.2 m, at: [6 m, 3 m], name: tree}]",
         "points: [[0 mm, 0 mm], [12.4 mm, 0 mm], [12.4 mm, 6.2 mm]]}"}},
       "job.yaml:9:5: warning: areas[1]: the outline of 'Landing' is 0.01 m by 0.01 m\n"
       "  hint: usually from 0.3 m to 100 m; check numbers and units\n"},
      {"two decks of one name",
       {{"work: [",
         "  - name: Landing\n    shape: {length: 18.6 m, girth: 300 mm}\n    timber: kwila\n    state: "
         "sanded\nwork: ["}},
       "job.yaml:17:5: error: areas[2]: the name 'Landing' is taken by area 1\n"
       "  hint: names tell areas apart; capitals do not\n"},
      {"no areas",
       {{"areas:\n  - name: Landing\n    shape: {rectangle: [12.4 m, 6.2 m]}\n    without: [{circle: 1.2 m, "
         "at: [6 m, 3 m], name: tree}]\n    boards: {width: 138 mm, gap: 5 mm, thickness: 38 mm}\n    "
         "joists: 450 mm\n    fixings: {kind: nails}\n    timber: kwila\n    state: sanded\n",
         "areas: []\n"}},
       "job.yaml:8:8: error: areas: at least one area is needed\n"
       "  hint: write it like {name: Deck, shape: {rectangle: [6 m, 4 m]}, timber: kwila, state: "
       "weathered}\n"},
      {"grits that get coarser",
       {{"[40, 60, 80]", "[60, 40, 80]"}},
       "job.yaml:18:15: error: sanding[2]: grit 40 is not finer than 60\n"
       "  hint: list the grits from coarse to fine\n"},
      {"grits without sanding",
       {{"[wash, fix, sand, oil]", "[wash, fix, oil]"}},
       "job.yaml:18:10: error: sanding: grits are given but 'work' has no 'sand'\n"
       "  hint: add 'sand' to 'work' or leave 'sanding' out\n"},
      {"sanding without grits",
       {{"sanding: [40, 60, 80]\n", ""}},
       "job.yaml:17:7: error: work: 'sand' is asked for but no grits are given\n"
       "  hint: add a line like sanding: [40, 60, 80]\n"},
      {"a product not sold in the region",
       {{"region: nz", "region: us"}},
       "job.yaml:7:10: error: product: 'tern-oil' has no tins in region 'us'\n"
       "  hint: add them with their prices to the product's file, under tins: us\n"},
      {"a state where rules do not differ",
       {{"site: {region: nz,", "site: {region: nz, state: QLD,"}},
       "job.yaml:4:27: error: site.state: the rules of New Zealand do not differ by state\n"
       "  hint: leave 'state' out\n"},
      {"many mistakes at once",
       {{"quoted: 2027-03-02", "quoted: 2027-13-02"},
        {"[12.4 m", "[12.4"},
        {"gap: 5 mm", "gap: 5 L"},
        {"people: 2", "people: two"},
        {"price: 620.00", "price: 620 NZD"}},
       "job.yaml:2:9: error: quoted: '2027-13-02' is not a date that exists\n"
       "  hint: write year, month and day like 2027-03-16\n"
       "job.yaml:10:25: error: areas[1].shape.rectangle[1]: '12.4' needs a unit\n"
       "  hint: write '12.4 m'\n"
       "job.yaml:12:34: error: areas[1].boards.gap: '5 L' is not a length\n"
       "  hint: lengths are given in m, cm, mm, um, ft, in or yd, like '12.4 m' or '40 ft 6 in'\n"
       "job.yaml:19:16: error: crew.people: 'two' is not a whole number\n"
       "  hint: write digits only, like 12\n"
       "job.yaml:21:58: error: price.options[1].price: '620 NZD' is not an amount of money\n"
       "  hint: write the number alone, without a currency sign, like 118.00\n"},
  };
  fixture::checkAll(jobs);
}

TEST_CASE("a job with more areas than letters is refused") {
  std::string areas = "areas:\n";
  for (int i = 1; i <= 27; ++i)
    areas += "  - {name: D" + std::to_string(i) +
             ", shape: {length: 2 m, girth: 300 mm}, timber: kwila, state: sanded}\n";
  const std::size_t from = fixture::goodJob.find("areas:"), to = fixture::goodJob.find("work: [");
  std::string job = fixture::goodJob;
  job.replace(from, to - from, areas);
  CHECK(fixture::messagesOf(job) ==
        "job.yaml:9:3: error: areas: 27 areas are given, the most is 26\n"
        "  hint: make two jobs of it\n");
}
