#include "drawings/charts/surface_curve.h"

#include <algorithm>
#include <cmath>

namespace drawings {

namespace {

/// Tenths of a degree: places on paper are exact.
using Celsius10 = std::int64_t;
Celsius10 tenthsOf(double celsius) { return std::llround(celsius * 10); }

/// Decks whose boards are equally warm all day.
struct Course {
  std::string letters;                    // 'A' 'B, C'
  const std::vector<model::Hour>* hours;  // of the first of them
  const std::string* warmest;             // '47 °C'
  Celsius10 most = 0;
};

bool isKnown(const model::Hour& hour) { return hour.source != model::WeatherSource::None; }

bool isSame(const std::vector<model::Hour>& a, const std::vector<model::Hour>& b) {
  return std::equal(a.begin(), a.end(), b.begin(), b.end(),
                    [](const auto& x, const auto& y) { return x.surface == y.surface; });
}

/// The hottest first.
std::vector<Course> coursesOf(const HoursDay& day) {
  std::vector<Course> courses;
  for (const auto& row : day.rows) {
    const bool isTold = std::any_of(row.hours.begin(), row.hours.end(), isKnown);
    if (!isTold || row.warmest.empty()) continue;
    const auto same = std::find_if(courses.begin(), courses.end(),
                                   [&](const auto& c) { return isSame(*c.hours, row.hours); });
    const std::string letter = row.name.substr(0, row.name.find("\u00A0"));
    if (same != courses.end()) {
      same->letters += ", " + letter;
      continue;
    }
    Celsius10 most = tenthsOf(row.hours.front().surface);
    for (const auto& hour : row.hours) most = std::max(most, tenthsOf(hour.surface));
    courses.push_back({letter, &row.hours, &row.warmest, most});
  }
  std::stable_sort(courses.begin(), courses.end(),
                   [](const auto& a, const auto& b) { return a.most > b.most; });
  return courses;
}

/// A smooth line through points, each tangent along its neighbours (Catmull and Rom 1974).
Path smooth(const std::vector<Point>& points) {
  Path path;
  moveTo(path, points.front());
  for (std::size_t i = 1; i < points.size(); ++i) {
    const Point a = points[i > 1 ? i - 2 : 0], b = points[i - 1], c = points[i],
                d = points[std::min(i + 1, points.size() - 1)];
    path.steps.push_back({typeset::Step::Kind::Curve,
                          {b.x + (c.x - a.x) / 6, b.y + (c.y - a.y) / 6},
                          {c.x - (d.x - b.x) / 6, c.y - (d.y - b.y) / 6},
                          c});
  }
  return path;
}

/// Does a course run through a box? Between two hours it is taken as straight.
bool crosses(const std::vector<Point>& line, const Rect& r) {
  for (std::size_t i = 1; i < line.size(); ++i) {
    const Point a = line[i - 1], b = line[i];
    const Dim from = std::max(a.x, r.at.x), to = std::min(b.x, right(r));
    if (from >= to) continue;
    const auto at = [&](Dim x) {
      return a.y + Dim{base::mulDiv((b.y - a.y).raw, (x - a.x).raw, (b.x - a.x).raw, base::Round::HalfUp)};
    };
    const Dim first = at(from), last = at(to);  // minmax returns references
    const auto [least, most] = std::minmax(first, last);
    if (least < bottom(r) && most > r.at.y) return true;
  }
  return false;
}

}  // namespace

Dim putSurface(Items& items, const HoursDay& day, const Pen& pen, const std::function<Dim(int)>& on, Dim left,
               Dim width, Dim top) {
  const auto courses = coursesOf(day);
  if (courses.empty()) return {};
  const Celsius10 limitAt = tenthsOf(day.surfaceMax);
  Celsius10 least = limitAt, most = limitAt;
  for (const auto& course : courses) {
    for (const auto& hour : *course.hours) {
      least = std::min({least, tenthsOf(hour.dewPoint), tenthsOf(hour.surface)});
      most = std::max(most, tenthsOf(hour.surface));
    }
  }
  // It gives way to the rows of many decks below it.
  const Dim high = Dim::mm(day.rows.size() > 3 ? 20 : 34),
            air = tenths(45);  // words stand above the highest point
  const auto at = [&](Celsius10 t) {
    return top + air + (high - air) * (most - t) / std::max<Celsius10>(1, most - least);
  };
  const auto points = [&](const std::vector<model::Hour>& hours, double model::Hour::*value) {
    std::vector<Point> line;
    for (const auto& hour : hours) {
      if (!isKnown(hour) || hour.at.minutes < day.from * 60 || hour.at.minutes > day.until * 60) continue;
      line.push_back({on(hour.at.minutes), at(tenthsOf(hour.*value))});
    }
    return line;
  };
  const auto ink = colour(pen, "ink"), accent = colour(pen, "accent");
  const Dim rim = tenths(6);
  const auto patchOf = [&](const ShapedText& w, Point baseline) {
    return Rect{{baseline.x - rim, baseline.y - w.height - rim}, {w.width + rim * 2, w.height + rim * 2}};
  };
  std::vector<Rect> taken;  // what words must not cover
  const auto onWhite = [&](const ShapedText& w, Point baseline) {
    taken.push_back(patchOf(w, baseline));
    put(items, box(taken.back(), colour(pen, "white"), std::nullopt));
    put(items, w, baseline);
  };

  const Dim limit = at(limitAt);
  put(items, line({left, limit}, {width, limit},
                  {ink, hundredthsPt(60), {hundredthsPt(300), hundredthsPt(200)}, false}));
  taken.push_back({{left, limit}, {width - left, Dim{}}});
  const auto dew = points(*courses.front().hours, &model::Hour::dewPoint);
  if (dew.size() > 1) {
    Path path = smooth(dew);
    path.stroke = Stroke{ink, hundredthsPt(60), {hundredthsPt(60), hundredthsPt(180)}, true};
    put(items, std::move(path));
  }
  for (std::size_t i = courses.size(); i-- > 0;) {
    const auto line = points(*courses[i].hours, &model::Hour::surface);
    if (line.size() < 2) continue;
    Path path = smooth(line);
    path.stroke = Stroke{accent, hundredthsPt(i == 0 ? 160 : 90), {}, true};
    put(items, std::move(path));
  }
  onWhite(words(pen, "drawing", day.limitWords), {left + tenths(12), limit - tenths(10)});
  if (!dew.empty()) {
    const ShapedText w = words(pen, "drawing", day.dewWords);
    onWhite(w, {width - w.width - tenths(12), dew.back().y - tenths(10)});
  }
  const auto isFree = [&](const Rect& patch) {
    const bool isUntaken =
        std::none_of(taken.begin(), taken.end(), [&](const Rect& r) { return overlap(r, patch); });
    return isUntaken && std::none_of(courses.begin(), courses.end(), [&](const Course& c) {
             return crosses(points(*c.hours, &model::Hour::surface), patch);
           });
  };
  for (std::size_t i = 0; i < courses.size(); ++i) {
    const auto line = points(*courses[i].hours, &model::Hour::surface);
    if (line.empty()) continue;
    const auto peak = std::min_element(line.begin(), line.end(), [](Point a, Point b) { return a.y < b.y; });
    const std::string text =
        (day.rows.size() > 1 ? courses[i].letters + "\u00A0\u00A0" : "") + *courses[i].warmest;
    const ShapedText w = boldWords(pen, "drawing", text);
    const Dim x = std::clamp(peak->x - w.width / 2, left, width - w.width);
    // The hottest above its curve, the others below theirs, where that is free.
    std::vector<Point> places = {{x, peak->y - tenths(14)}};
    for (const std::int64_t below : {14, 30, 50}) places.push_back({x, peak->y + tenths(below) + w.height});
    if (i > 0) std::swap(places[0], places[1]);
    const auto free =
        std::find_if(places.begin(), places.end(), [&](Point p) { return isFree(patchOf(w, p)); });
    onWhite(w, free == places.end() ? places.front() : *free);
  }
  return high;
}

}  // namespace drawings
