#include "app/report/plan_site_json.h"

#include <algorithm>
#include <cmath>
#include <map>

namespace app {
namespace {

using nlohmann::ordered_json;

double millimetres(double metres) { return std::round(metres * 1000) / 1000; }

ordered_json point(schedule::Point p) { return {millimetres(p.x), millimetres(p.y)}; }

ordered_json points(const std::vector<schedule::Point>& all) {
  auto list = ordered_json::array();
  for (const auto p : all) list.push_back(point(p));
  return list;
}

/// Places one can step over, a metre apart.
std::vector<schedule::Point> alongWay(const schedule::Segment& over) {
  const double length = std::hypot(over.to.x - over.from.x, over.to.y - over.from.y);
  const int steps = std::max(1, static_cast<int>(std::ceil(length)));
  std::vector<schedule::Point> places;
  for (int i = 0; i < steps; ++i) {
    const double share = (i + 0.5) / steps;
    places.push_back(
        {over.from.x + (over.to.x - over.from.x) * share, over.from.y + (over.to.y - over.from.y) * share});
  }
  return places;
}

const char* kindOf(const model::Deck& deck) {
  if (std::holds_alternative<model::Stairs>(deck.shape)) return "stairs";
  if (std::holds_alternative<model::Strip>(deck.shape)) return "rail";
  if (std::holds_alternative<model::Screen>(deck.shape)) return "screen";
  if (std::holds_alternative<model::Measured>(deck.shape)) return "measured";
  return "deck";
}

}  // namespace

SiteJson::SiteJson(const model::Job& job) : job_(job), rows_(job.areas.size()) {
  for (const auto& placed : schedule::placedAsGiven(job.areas))
    rows_[placed.index] = schedule::rowOf(placed, job.areas[placed.index]);
}

ordered_json SiteJson::areas(const schedule::AccessGraph& graph) const {
  auto list = ordered_json::array();
  for (std::size_t i = 0; i < job_.areas.size(); ++i) {
    const auto& area = graph.areas()[i];
    const auto& order = graph.order();
    ordered_json j{{"name", job_.areas[i].name},     {"outline", points(area.outline)},
                   {"holes", ordered_json::array()}, {"height_m", area.height},
                   {"ways", ordered_json::array()},  {"wiped_from", ordered_json::array()}};
    for (const auto& hole : area.holes) j["holes"].push_back(points(hole));
    for (const auto& way : area.ways) {
      if (area.outline.empty()) continue;
      for (const auto& at : alongWay(way.over))
        j["ways"].push_back({{"to", way.to ? job_.areas[*way.to].name : "ground"}, {"at", point(at)}});
    }
    for (const auto& stand : area.stands) {
      if (!stand.on)
        j["wiped_from"].push_back({{"from", point(stand.edge.from)}, {"to", point(stand.edge.to)}});
    }
    j["order"] = std::find(order.begin(), order.end(), i) - order.begin() + 1;
    j["kind"] = kindOf(job_.areas[i]);
    const auto& row = rows_[i];
    j["boards"] = nullptr;
    if (row)
      j["boards"] = {{"count", row->sizes.size()},
                     {"pitch_m", static_cast<double>(row->pitch.millionths) / 1e9},
                     {"along_x", row->alongX}};
    list.push_back(j);
  }
  return list;
}

ordered_json SiteJson::outlineOf(const model::BoardStrip& strip) const {
  const auto& row = rows_[strip.deck];
  if (!row || strip.boards == 0) return ordered_json::array();
  // Along the one ends of its boards, and back along the others.
  std::vector<schedule::Point> ends, back;
  const auto across = [&](schedule::Point p) { return row->alongX ? p.y : p.x; };
  const auto along = [&](schedule::Point p) { return row->alongX ? p.x : p.y; };
  std::map<double, std::vector<schedule::Point>> lines;  // by their place across the boards
  for (int board = strip.fromBoard; board < strip.fromBoard + strip.boards; ++board) {
    for (const auto& p : schedule::placesOf(*row, board, 1)) lines[across(p)].push_back(p);
  }
  for (const auto& [line, places] : lines) {
    const auto [first, last] = std::minmax_element(places.begin(), places.end(),
                                                   [&](auto a, auto b) { return along(a) < along(b); });
    ends.push_back(*first);
    back.push_back(*last);
  }
  ends.insert(ends.end(), back.rbegin(), back.rend());
  return points(ends);
}

}  // namespace app
