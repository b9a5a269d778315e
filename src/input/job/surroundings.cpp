// What the customer knows of the place: what lies around the decks, for the plan, and photographs.
#include "input/content/content_parts.h"
#include "input/job/job_parts.h"
#include "input/job/shape.h"
#include "input/yaml/words.h"

namespace input {
namespace {

using base::Length;

constexpr Word<model::Surrounding> surroundingWords[] = {{"house", model::Surrounding::House},
                                                         {"wall", model::Surrounding::Wall},
                                                         {"water", model::Surrounding::Water},
                                                         {"tree", model::Surrounding::Tree},
                                                         {"path", model::Surrounding::Path}};

constexpr Limits<Length> sides = {base::millimetres(20), base::metres(500), "from 20 mm to 500 m"};
constexpr std::size_t mostPhotos = 2;

/// Its own coordinates place an outline; a rectangle and a circle need an 'at'.
bool isOutline(const model::Shape& s) { return std::holds_alternative<model::Polygon>(s); }

bool isPlain(const model::Shape& s) {
  return isOutline(s) || std::holds_alternative<model::Rectangle>(s) ||
         std::holds_alternative<model::Circle>(s);
}

}  // namespace

std::vector<model::Around> readAround(const Field& f) {
  std::vector<model::Around> all;
  for (const Field& item : f.items()) {
    Record r(item);
    model::Around one;
    one.kind = choice(r.must("is", "house"), surroundingWords, "thing beside a deck", one.kind);
    const auto shape = readShape(r, sides);
    const Field at = r.may("at"), name = r.may("name");
    const auto place = at.isGiven() ? readPlace(at) : model::Place{};
    if (name.isGiven()) one.name = text(name);
    r.finish();
    if (!shape || !place) continue;
    if (!isPlain(*shape)) {
      item.error("this shape cannot lie beside a deck", "known: rectangle, points, circle");
      continue;
    }
    if (!isOutline(*shape) && !at.isGiven()) {
      item.error("'at' is missing", "write where it lies on the plan, as 'at' of an area: at: [0 m, -3 m]");
      continue;
    }
    one.shape = *shape;
    one.at = *place;
    all.push_back(std::move(one));
  }
  return all;
}

std::vector<model::Photo> readPhotos(const Field& f, const std::string& file) {
  std::vector<model::Photo> all;
  const auto items = f.items();
  if (items.size() > mostPhotos)
    f.error("at most two photographs stand on the quote, not " + std::to_string(items.size()),
            "keep the two that say most");
  for (const Field& item : items) {
    Record r(item);
    const Field picture = r.must("file", "deck.jpg"), shows = r.must("shows", "The deck from the garden");
    model::Photo photo{pathBeside(picture, file), shows.isGiven() ? text(shows) : std::string{},
                       picture.pos()};
    r.finish();
    all.push_back(std::move(photo));
  }
  return all;
}

}  // namespace input
