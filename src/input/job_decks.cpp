// The areas of a job: decks, stairs, strips and screens with their boards.
#include "input/job_parts.h"
#include "input/shape.h"
#include "input/words.h"
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
    const std::optional<model::Shape> cutShape = readShape(r);
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
    if (cutAway >= whole->area) f.error("the cut-outs leave nothing of the deck");
  }
}

model::Boards readBoards(const Field& f) {
  Record r(f);
  model::Boards b;
  b.width =
      quantity(r.must("width"), parseLength, {base::millimetres(10), base::metres(1), "from 10 mm to 1 m"});
  b.gap = quantity(r.must("gap"), parseLength, {Length{0}, base::millimetres(100), "from 0 mm to 100 mm"});
  b.thickness = quantity(r.must("thickness"), parseLength,
                         {base::millimetres(5), base::millimetres(300), "from 5 mm to 300 mm"});
  b.run = choice(r.may("run"), runWords, "run of boards", b.run);
  b.face = choice(r.may("face"), boardFaceWords, "face of boards", b.face);
  b.wetted = choice(r.may("wetted"), wettedWords, "choice of wetted faces", b.wetted);
  const Field factor = r.may("reeded_factor");
  b.reededFactor = quantity(factor, parseShare, {Share::whole(100), Share::whole(300), "from 100 % to 300 %"},
                            b.reededFactor);
  if (factor.isGiven() && b.face == model::BoardFace::Smooth)
    factor.error("the boards are smooth", "write 'face: reeded' or leave the factor out");
  r.finish();
  return b;
}

model::Fixings readFixings(const Field& f) {
  Record r(f);
  model::Fixings x;
  x.kind = text(r.must("kind"));
  x.perCrossing = whole(r.may("per_crossing"), {1, 10, "from 1 to 10"}, x.perCrossing);
  r.finish();
  return x;
}

model::TestPatch readTestPatch(const Field& f) {
  Record r(f);
  model::TestPatch t;
  t.area = quantity(r.must("area"), parseArea,
                    {base::Area{10'000'000'000}, base::squareMetres(100), "from 0.01 m2 to 100 m2"});
  t.used =
      quantity(r.must("used"), parseVolume, {base::millilitres(1), base::litres(100), "from 1 mL to 100 L"});
  r.finish();
  return t;
}

void checkBoards(const Record& r, const model::Deck& deck, const std::vector<model::Work>& work) {
  if (!asksFor(work, model::Work::Fix) || !isFloor(deck.shape)) return;
  const auto need = [&](const char* key) {
    if (!r.has(key))
      r.field().error(std::string("'") + key + "' is missing",
                      "the fixings are counted from boards and joists");
  };
  need("boards");
  need("joists");
  need("fixings");
}

/// '09:00-15:00', or 'never'.
model::ClockSpan readSun(const Field& f) {
  if (f.word() == "never") return {};
  const auto span = clockSpan(f);
  return span ? model::ClockSpan{span->from, span->until} : model::ClockSpan{};
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
  if (const Field way = r.may("way_out"); way.isGiven()) {
    d.wayOut = readPlace(way);
    if (!isFloor(d.shape) || isMeasured(d.shape))
      way.error("there is no plan of this area to show it on", "leave it out");
  }
}

model::Deck readDeck(const Field& f, const model::Content& content, const std::vector<model::Work>& work) {
  Record r(f);
  model::Deck d;
  d.pos = f.pos();
  d.name = text(r.must("name"));
  std::optional<model::Shape> shape;
  if (const Field s = r.must("shape"); s.isGiven()) {
    Record keys(s);
    shape = readShape(keys);
    keys.finish();
    if (shape) d.shape = *shape;
  }
  if (const Field at = r.may("at"); at.isGiven()) d.at = readPlace(at);
  readCutOuts(r.may("without"), d, shape);
  if (const Field b = r.may("boards"); b.isGiven()) d.boards = readBoards(b);
  if (const Field j = r.may("joists"); j.isGiven())
    d.joists = quantity(j, parseLength, {base::millimetres(100), base::metres(3), "from 100 mm to 3 m"},
                        base::millimetres(450));
  if (const Field x = r.may("fixings"); x.isGiven()) d.fixings = readFixings(x);
  d.timber = knownId(r.must("timber"), content.timbers, "timber");
  d.state = choice(r.must("state"), stateWords, "state of the boards", d.state);
  d.coats = whole(r.may("coats"), {1, 4, "from 1 to 4"}, d.coats);
  const Field rates = r.may("rates"), patch = r.may("test_patch");
  for (const Field& rate : rates.items()) d.rates.push_back(spread(rate));
  if (d.rates.size() > static_cast<std::size_t>(d.coats))
    rates.error(std::to_string(d.rates.size()) + " rates are given for " + std::to_string(d.coats) +
                (d.coats == 1 ? " coat" : " coats"));
  if (patch.isGiven()) d.testPatch = readTestPatch(patch);
  if (patch.isGiven() && rates.isGiven())
    patch.error("rates and a test patch are both given", "keep the one that is to count");
  if (const Field note = r.may("note"); note.isGiven()) d.note = text(note);
  if (const Field note = r.may("office_note"); note.isGiven()) d.officeNote = text(note);
  readSurroundings(r, d);
  if (const Field edge = r.may("edge_height"); edge.isGiven())
    d.edgeHeight = quantity(edge, parseLength, {Length{0}, base::metres(500), "from 0 m to 500 m"});
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
    f.error(p.problem->message, p.problem->hint);
    return one;
  }
  // Square metres per litre are the same number as square micrometres per nanolitre over a thousand.
  const base::Wide area = p.value.area.millionths, volume = p.value.volume.millionths;
  if (area * 2 < volume * 1000 || area > volume * 100'000) {
    f.error(inQuotes(*s) + " is out of range", "allowed: from 0.5 m2/L to 100 m2/L");
    return one;
  }
  return p.value;
}

std::vector<model::Deck> readDecks(const Field& f, const model::Content& content,
                                   const std::vector<model::Work>& work) {
  const std::vector<Field> items = f.items();
  std::vector<model::Deck> decks;
  if (f.isEmptyList()) f.error("at least one area is needed");
  if (items.size() > mostDecks) {
    f.error(std::to_string(items.size()) + " areas are given, the most is 26", "make two jobs of it");
    return decks;
  }
  for (const Field& item : items) {
    model::Deck d = readDeck(item, content, work);
    for (std::size_t i = 0; i < decks.size(); ++i) {
      if (!d.name.empty() && d.name == decks[i].name) {
        item.error("the name '" + d.name + "' is taken by area " + std::to_string(i + 1),
                   "names tell areas apart");
        break;
      }
    }
    decks.push_back(std::move(d));
  }
  return decks;
}

}  // namespace input
