// The areas of a job: decks, stairs, strips and screens with their boards.
#include "base/letters.h"
#include "input/job/job_parts.h"
#include "input/job/same_name.h"
#include "input/job/shape.h"
#include "input/yaml/scanner.h"
#include "input/yaml/words.h"
#include "model/lookup.h"

#include <algorithm>

namespace input {
namespace {

using base::Length;
using base::Share;

constexpr std::size_t mostDecks = 26;  // named A to Z on the plan

/// A floor: it has boards, joists and cut-outs.
bool isFloor(const model::Shape& s) {
  return std::holds_alternative<model::Rectangle>(s) || std::holds_alternative<model::Polygon>(s) ||
         std::holds_alternative<model::Circle>(s) || std::holds_alternative<model::Ring>(s) ||
         std::holds_alternative<model::Triangle>(s) || std::holds_alternative<model::Measured>(s);
}

bool isMeasured(const model::Shape& s) { return std::holds_alternative<model::Measured>(s); }

/// Its own coordinates place an outline; other shapes need an 'at'.
bool needsPlace(const model::Shape& s) {
  return !std::holds_alternative<model::Polygon>(s) && !isMeasured(s);
}

void readCutOuts(const Field& f, model::Deck& deck, const std::optional<model::Shape>& shape) {
  const std::vector<Field> items = f.items();
  std::vector<Field> fields;
  for (const Field& item : items) {
    Record r(item);
    model::CutOut cut;
    const std::optional<model::Shape> cutShape = readShape(r, cutOutSides);
    const Field at = r.may("at"), name = r.may("name");
    const std::optional<model::Place> place = at.isGiven() ? readPlace(at) : model::Place{};
    if (place) cut.at = *place;
    if (name.isGiven()) cut.name = text(name);
    r.finish();
    if (!cutShape || !place) continue;
    if (!isFloor(*cutShape)) {
      item.error("only flat shapes can be cut out",
                 "known: rectangle, points, circle, ring, triangle, or area");
      continue;
    }
    if (shape && isMeasured(*cutShape) != isMeasured(*shape)) {
      item.error(isMeasured(*shape) ? "a deck given by its area has no place for this shape"
                                    : "a cut-out given by its area has no place on this deck",
                 isMeasured(*shape) ? "give the cut-out by its area as well" : "give its shape and 'at'");
      continue;
    }
    if (shape && needsPlace(*cutShape) && !at.isGiven()) {
      item.error("'at' is missing", "write where it lies, like at: [6 m, 3 m]");
      continue;
    }
    cut.shape = *cutShape;
    deck.without.push_back(cut);
    fields.push_back(item);
  }
  if (!shape) return;
  if (!isFloor(*shape)) {
    if (f.isGiven())
      f.error("stairs, strips and screens have no cut-outs", "measure them without what is missing");
    deck.without.clear();
    return;
  }
  checkCutOuts(*shape, deck.without, fields);
  if (const auto* whole = std::get_if<model::Measured>(&*shape)) {
    base::Area cutAway;
    for (const model::CutOut& c : deck.without) cutAway += std::get<model::Measured>(c.shape).area;
    if (cutAway >= whole->area) f.error("the cut-outs leave nothing of the deck", "check their sizes");
  }
}

bool isWithin(const base::Spread& rate, int twiceLeast, int most) {
  // Square metres per litre are the same number as square micrometres per nanolitre over a thousand.
  const base::Wide area = rate.area.millionths, volume = rate.volume.millionths;
  return area * 2 >= volume * 1000 * twiceLeast && area <= volume * 1000 * most;
}

// From 0.5 and 2 m2/L.
bool isPossible(const base::Spread& rate) { return isWithin(rate, 1, 100); }
bool isUsual(const base::Spread& rate) { return isWithin(rate, 4, 30); }

constexpr const char* possibleRates = "allowed: from 0.5 m2/L to 100 m2/L";

/// Refuses what no timber drinks, warns of what few do.
bool checkRate(const Field& f, const std::string& what, const base::Spread& rate) {
  if (!isPossible(rate)) {
    f.error(what + " is out of range", possibleRates);
    return false;
  }
  if (!isUsual(rate))
    f.warn(what + " is unusual here",
           "usually from 2 m2/L to 30 m2/L (80 to 1200 ft2/gal); check number and unit");
  return true;
}

std::string rateHint(const Problem& problem, const std::string& text, bool isUs) {
  const auto isAccepted = [](bool (*suits)(const base::Spread&)) {
    return [suits](const std::string& meant) {
      const auto rate = parseSpread(meant);
      return !rate.problem && suits(rate.value);
    };
  };
  if (!problem.isBare) return commaHint(problem, text, isAccepted(isPossible));
  const Guesses guesses = withUnits(text, base::Spread{}, isUs);
  std::string hint = writeHint(guesses, isAccepted(isUsual));
  if (hint.empty()) hint = writeHint(guesses, isAccepted(isPossible));
  return hint.empty() ? possibleRates : hint;
}

model::Boards readBoards(const Field& f) {
  constexpr Limits<Length> widths = {base::millimetres(10),  base::metres(1),
                                     "from 10 mm to 1 m",    base::millimetres(40),
                                     base::millimetres(300), "from 40 mm to 300 mm (1 1/2 to 12 in)"};
  constexpr Limits<Length> gaps = {Length{0},
                                   base::millimetres(100),
                                   "from 0 mm to 100 mm",
                                   base::millimetres(1),
                                   base::millimetres(20),
                                   "from 1 mm to 20 mm (1/16 to 3/4 in)"};
  constexpr Limits<Length> thicknesses = {base::millimetres(5),   base::millimetres(300),
                                          "from 5 mm to 300 mm",  base::millimetres(15),
                                          base::millimetres(100), "from 15 mm to 100 mm (5/8 to 4 in)"};
  constexpr Limits<Share> factors = {Share::whole(100), Share::whole(300), "from 100 % to 300 %",
                                     Share::whole(100), Share::whole(160), "from 100 % to 160 %"};
  Record r(f);
  model::Boards b;
  b.width = quantity(r.must("width", "140 mm"), parseLength, widths);
  b.gap = quantity(r.must("gap", "5 mm"), parseLength, gaps);
  b.thickness = quantity(r.must("thickness", "32 mm"), parseLength, thicknesses);
  b.run = choice(r.may("run"), runWords, "run of boards", b.run);
  b.face = choice(r.may("face"), boardFaceWords, "face of boards", b.face);
  b.wetted = choice(r.may("wetted"), wettedWords, "choice of wetted faces", b.wetted);
  const Field factor = r.may("reeded_factor");
  b.reededFactor = quantity(factor, parseShare, factors, b.reededFactor);
  if (factor.isGiven() && b.face == model::BoardFace::Smooth)
    factor.error("the boards are smooth", "write 'face: reeded' or leave the factor out");
  r.finish();
  return b;
}

model::Fixings readFixings(const Field& f) {
  Record r(f);
  model::Fixings x;
  x.kind = text(r.must("kind", "screws"));
  x.perCrossing = whole(r.may("per_crossing"), {1, 10, "from 1 to 10", 1, 4, "from 1 to 4"}, x.perCrossing);
  if (const Field raised = r.may("raised"); raised.isGiven())
    x.raised = quantity(raised, parseShare, {base::Share{}, base::Share::whole(100), "from 0 % to 100 %"});
  r.finish();
  return x;
}

model::TestPatch readTestPatch(const Field& f) {
  constexpr Limits<base::Area> areas = {base::Area{10'000'000'000}, base::squareMetres(100),
                                        "from 0.01 m2 to 100 m2",   base::Area{50'000'000'000},
                                        base::squareMetres(20),     "from 0.05 m2 to 20 m2 (1/2 to 200 ft2)"};
  constexpr Limits<base::Volume> uses = {base::millilitres(1), base::litres(100), "from 1 mL to 100 L"};
  Record r(f);
  model::TestPatch t;
  const Field area = r.must("area", "1 m2"), used = r.must("used", "120 mL");
  t.area = quantity(area, parseArea, areas);
  t.used = quantity(used, parseVolume, uses);
  r.finish();
  if (!t.area.isZero() && !t.used.isZero()) checkRate(f, "what the patch drank", {t.area, t.used});
  return t;
}

void checkBoards(const Record& r, const model::Deck& deck, const std::vector<model::Work>& work) {
  if (!asksFor(work, model::Work::Fix) || !isFloor(deck.shape)) return;
  const auto need = [&](const char* key, const char* example) {
    if (!r.has(key))
      r.field().error(std::string("'") + key + "' is missing",
                      std::string("the fixings are counted from it; write it like ") + key + ": " + example);
  };
  need("boards", "{width: 140 mm, gap: 5 mm, thickness: 32 mm}");
  need("joists", "450 mm");
  need("fixings", "{kind: screws, per_crossing: 2}");
}

/// '09:00-15:00', or 'never'.
model::ClockSpan readSun(const Field& f) {
  if (f.word() == "never") return {};
  const auto span = clockSpan(f);
  return span ? model::ClockSpan{span->from, span->until} : model::ClockSpan{};
}

constexpr Word<model::Compass> compassWords[] = {{"north", model::Compass::North},
                                                 {"east", model::Compass::East},
                                                 {"south", model::Compass::South},
                                                 {"west", model::Compass::West}};
constexpr Word<model::EdgeKind> edgeWords[] = {{"open", model::EdgeKind::Open},
                                               {"drop", model::EdgeKind::Drop},
                                               {"water", model::EdgeKind::Water},
                                               {"wall", model::EdgeKind::Wall}};

std::vector<model::DeckEdge> readEdges(const Field& f) {
  std::vector<model::DeckEdge> edges;
  for (const Field& item : f.items()) {
    Record r(item);
    model::DeckEdge edge;
    const Field side = r.must("side", "north");
    edge.side = choice(side, compassWords, "side", edge.side);
    edge.kind = choice(r.must("is", "water"), edgeWords, "kind of edge", edge.kind);
    r.finish();
    for (const auto& other : edges) {
      if (other.side == edge.side) side.error("this side is told twice", "give each side once");
    }
    edges.push_back(edge);
  }
  return edges;
}

/// What lies around a deck.
void readSurroundings(Record& r, model::Deck& d) {
  d.isCovered = yesNo(r.may("covered"), false);
  d.isEnclosed = yesNo(r.may("enclosed"), false);
  d.isTreated = yesNo(r.may("treated"), false);
  if (const Field sun = r.may("sun"); sun.isGiven()) {
    d.sun = readSun(sun);
    if (d.isCovered && d.sun->until > 0)
      sun.error("no sun reaches a deck under a roof", "leave out 'sun' or 'covered'");
  }
  if (const Field edges = r.may("edges"); edges.isGiven()) d.edges = readEdges(edges);
  if (const Field way = r.may("way_out"); way.isGiven()) {
    d.wayOut = readPlace(way);
    if (!isFloor(d.shape) || isMeasured(d.shape))
      way.error("there is no plan of this area to show it on", "leave it out");
    else checkWayOut(d, way);
  }
}

constexpr Limits<Length> joistSpacings = {base::millimetres(100),   base::metres(3),
                                          "from 100 mm to 3 m",     base::millimetres(200),
                                          base::millimetres(1'200), "from 200 mm to 1.2 m (8 to 48 in)"};

constexpr Limits<Length> edgeHeights = {Length{0},           base::metres(500),
                                        "from 0 m to 500 m", base::millimetres(50),
                                        base::metres(5),     "from 50 mm to 5 m (2 in to 16 ft)"};

/// What people call a state that is one of the known.
constexpr Word<const char*> otherStates[] = {{"painted", "'film'"},
                                             {"paint", "'film'"},
                                             {"varnish", "'film'"},
                                             {"varnished", "'film'"},
                                             {"lacquered", "'film'"},
                                             {"stained", "'oiled' or 'film'"},
                                             {"sealed", "'oiled' or 'film'"},
                                             {"coated", "'oiled' or 'film'"},
                                             {"grey", "'weathered'"},
                                             {"gray", "'weathered'"},
                                             {"old", "'weathered'"},
                                             {"raw", "'new' or 'sanded'"},
                                             {"bare", "'new', 'weathered' or 'sanded'"}};

model::State readState(const Field& f) {
  const std::string word = f.is(Node::Kind::Word) ? base::lowered(f.node()->word) : "";
  for (const auto& [name, known] : otherStates) {
    if (word != name) continue;
    f.error(inQuotes(f.node()->word) + " is not a known state of the boards; did you mean " + known + "?",
            "new, weathered (grey, no finish left), sanded, oiled, or film (paint, varnish or stain on the "
            "surface)");
    return model::State::Weathered;
  }
  return choice(f, stateWords, "state of the boards", model::State::Weathered);
}

model::Deck readDeck(const Field& f, const model::Content& content, const std::vector<model::Work>& work) {
  Record r(f);
  model::Deck d;
  d.pos = f.pos();
  d.name = text(r.must("name", "Deck"));
  std::optional<model::Shape> shape;
  if (const Field s = r.must("shape", "{rectangle: [6 m, 4 m]}"); s.isGiven()) {
    Record keys(s);
    shape = readShape(keys, deckSides);
    keys.finish();
    if (shape) d.shape = *shape;
  }
  if (const Field at = r.may("at"); at.isGiven()) d.at = readPlace(at);
  readCutOuts(r.may("without"), d, shape);
  if (const Field b = r.may("boards"); b.isGiven()) d.boards = readBoards(b);
  if (const Field j = r.may("joists"); j.isGiven())
    d.joists = quantity(j, parseLength, joistSpacings, base::millimetres(450));
  if (const Field x = r.may("fixings"); x.isGiven()) d.fixings = readFixings(x);
  d.timber =
      knownId(r.must("timber", "kwila"), content.timbers, "timber", "add others to content/timbers.yaml");
  d.state = readState(r.must("state", "weathered"));
  d.coats = whole(r.may("coats"), {1, 4, "from 1 to 4"}, d.coats);
  const Field rates = r.may("rates"), patch = r.may("test_patch");
  for (const Field& rate : rates.items()) d.rates.push_back(spread(rate));
  if (d.rates.size() > static_cast<std::size_t>(d.coats))
    rates.error(std::to_string(d.rates.size()) + " rates are given for " + std::to_string(d.coats) +
                    (d.coats == 1 ? " coat" : " coats"),
                "give one for each coat, or set 'coats'");
  if (patch.isGiven()) d.testPatch = readTestPatch(patch);
  if (patch.isGiven() && rates.isGiven())
    patch.error("rates and a test patch are both given", "keep the one that is to count");
  if (const Field note = r.may("note"); note.isGiven()) d.note = text(note);
  if (const Field note = r.may("office_note"); note.isGiven()) d.officeNote = text(note);
  if (const Field note = r.may("crew_note"); note.isGiven()) d.crewNote = text(note);
  readSurroundings(r, d);
  if (const Field edge = r.may("edge_height"); edge.isGiven())
    d.edgeHeight = quantity(edge, parseLength, edgeHeights);
  d.hasRail = yesNo(r.may("rail"), false);
  if (shape) checkBoards(r, d, work);
  r.finish();
  return d;
}

}  // namespace

base::Spread spread(const Field& f) {
  const base::Spread one = {base::squareMetres(10), base::litres(1)};
  const std::optional<std::string> s = f.word();
  if (!s) return one;
  const Parsed<base::Spread> p = parseSpread(*s);
  if (p.problem) {
    f.error(p.problem->message, rateHint(*p.problem, plain(*s), f.source().isUs));
    return one;
  }
  return checkRate(f, inQuotes(*s), p.value) ? p.value : one;
}

std::vector<model::Deck> readDecks(const Field& f, const model::Content& content,
                                   const std::vector<model::Work>& work) {
  const std::vector<Field> items = f.items();
  std::vector<model::Deck> decks;
  if (f.isEmptyList())
    f.error("at least one area is needed",
            "write it like {name: Deck, shape: {rectangle: [6 m, 4 m]}, timber: kwila, state: weathered}");
  if (items.size() > mostDecks) {
    f.error(std::to_string(items.size()) + " areas are given, the most is 26", "make two jobs of it");
    return decks;
  }
  for (const Field& item : items) {
    model::Deck d = readDeck(item, content, work);
    for (std::size_t i = 0; i < decks.size(); ++i) {
      if (d.name.empty() || !isSameButForCapitals(d.name, decks[i].name)) continue;
      item.error("the name '" + d.name + "' is taken by area " + std::to_string(i + 1) +
                     (d.name == decks[i].name ? "" : ", '" + decks[i].name + "'"),
                 "names tell areas apart; capitals do not");
      break;
    }
    decks.push_back(std::move(d));
  }
  checkPlan(decks, items);
  return decks;
}

}  // namespace input
