// Fragments, and walking down a page over them.
#include "typeset/vertical_list.h"

#include <algorithm>
#include <utility>

namespace typeset {

Fragment space(Dim height, bool snaps) {
  Fragment s;
  s.kind = Fragment::Kind::Space;
  s.height = height;
  s.snaps = snaps;
  return s;
}

Fragment ruleFragment(RuleKind kind, Dim x, Dim width, Dim weight, Colour colour) {
  Fragment s;
  s.kind = Fragment::Kind::Rule;
  s.rule = kind;
  s.width = width;
  s.weight = weight;
  Path path;
  path.steps = {{Step::Kind::Move, {}, {}, {x, {}}}, {Step::Kind::Line, {}, {}, {x + width, {}}}};
  path.stroke = Stroke{colour, weight, {}, false};
  s.items.push_back({std::move(path), artifact});
  return s;
}

namespace {

bool passRule(Cursor& c, const Fragment& fragment, Dim& where) {
  where = c.y;
  const bool isAfterRule = c.hasRule && c.ruleWidth >= fragment.width;
  switch (fragment.rule) {
    case RuleKind::Section:
      if (c.isTop || isAfterRule) return false;
      break;
    case RuleKind::Between:
      if (c.isTop) return false;
      if (!isAfterRule) break;
      c.y = c.ruleY;
      return false;
    case RuleKind::Open:
      if (c.isTop) {
        where = c.y - c.unit;
        return true;
      }
      if (!isAfterRule) break;
      if (c.rule == RuleKind::Strip) return false;
      where = c.y = c.ruleY;
      if (c.ruleWeight >= fragment.weight) {
        if (c.rule == RuleKind::Close) c.y += c.unit * 2;  // a new table, not one more row
        return false;
      }
      break;
    case RuleKind::Close:
    case RuleKind::Strip:
      break;
  }
  c.hasRule = true;
  c.ruleY = c.y;
  c.ruleWidth = fragment.width;
  c.ruleWeight = fragment.weight;
  c.rule = fragment.rule;
  return true;
}

}  // namespace

bool Cursor::pass(const Fragment& fragment, Dim& where) {
  where = y;
  switch (fragment.kind) {
    case Fragment::Kind::Space:
      if (fragment.snaps) {
        y = top + roundUp(bottom() - top, line);
        floor = {};
      }
      if (!isTop) y += fragment.height;
      return false;
    case Fragment::Kind::Rule:
      return passRule(*this, fragment, where);
    case Fragment::Kind::PageBreak:
      return false;
    case Fragment::Kind::Matter:
      if (fragment.side > Dim{}) floor = y + fragment.side;
      y += fragment.height;
      if (fragment.height > Dim{}) isTop = hasRule = false;
      return true;
  }
  return false;
}

Dim heightOf(std::span<const Fragment> list, Dim line, Dim unit) {
  Cursor c = Cursor::at({}, line, unit);
  Dim where;
  for (const Fragment& s : list) c.pass(s, where);
  return c.bottom();
}

Dim leastHeightOf(std::span<const Fragment> list, Dim line, Dim unit) {
  Cursor c = Cursor::at({}, line, unit);
  Dim where;
  for (const Fragment& f : list) {
    Fragment lowest;
    if (f.flexible) lowest.height = f.flexible->least;
    c.pass(f.flexible ? lowest : f, where);
  }
  return c.bottom();
}

void settle(Fragment& fragment, Dim height) {
  if (const auto flexible = std::exchange(fragment.flexible, nullptr)) flexible->settle(fragment, height);
}

Dim firstBaseline(const VerticalList& list) {
  Dim y;
  for (const Fragment& s : list) {
    if (s.kind == Fragment::Kind::Rule) return {-1};  // a table's head stands on the line of its own
    if (s.baseline >= Dim{}) return y + s.baseline;
    y += s.height;
  }
  return {-1};
}

void append(VerticalList& to, VerticalList&& more) {
  to.insert(to.end(), std::make_move_iterator(more.begin()), std::make_move_iterator(more.end()));
}

void keepTogether(std::span<Fragment> list) {
  if (list.empty()) return;
  for (Fragment& s : list) s.keepWithNext = true;
  list.back().keepWithNext = false;
}

namespace {

void move(Point& p, Dim dx, Dim dy) {
  p.x += dx;
  p.y += dy;
}

}  // namespace

void move(Item& item, Dim dx, Dim dy) {
  if (auto* run = std::get_if<TextRun>(&item.what)) move(run->baseline, dx, dy);
  if (auto* image = std::get_if<PlacedImage>(&item.what)) move(image->box.at, dx, dy);
  if (auto* link = std::get_if<Link>(&item.what)) move(link->box.at, dx, dy);
  if (auto* path = std::get_if<Path>(&item.what))
    for (Step& step : path->steps) {
      move(step.a, dx, dy);
      move(step.b, dx, dy);
      move(step.to, dx, dy);
    }
}

Fragment collapse(VerticalList&& list, Dim line, Dim unit) {
  Fragment whole;
  whole.baseline = firstBaseline(list);
  Cursor c = Cursor::at({}, line, unit);
  Dim where;
  for (Fragment& s : list) {
    settle(s, s.height);
    if (whole.line == 0) whole.line = s.line;
    if (!c.pass(s, where)) continue;
    for (Item& item : s.items) {
      move(item, {}, where);
      whole.items.push_back(std::move(item));
    }
    for (Bookmark b : s.bookmarks) {
      b.y += where;
      whole.bookmarks.push_back(std::move(b));
    }
  }
  whole.height = c.bottom();
  return whole;
}

VerticalList parallel(std::vector<VerticalList>&& lists, Dim line, Dim unit) {
  struct Part {
    Dim from, to;
    Fragment* fragment;
  };
  std::vector<Part> parts;
  Dim end;
  for (VerticalList& list : lists) {
    Cursor c = Cursor::at({}, line, unit);
    Dim where;
    for (Fragment& s : list) {
      settle(s, s.height);
      if (c.pass(s, where)) parts.push_back({where, where + s.height, &s});
    }
    end = std::max(end, c.bottom());
  }
  // What is on the left comes first in reading order, so equal heights keep their order.
  std::stable_sort(parts.begin(), parts.end(), [](const Part& a, const Part& b) { return a.from < b.from; });
  VerticalList out;
  Dim from, to;
  for (Part& part : parts) {
    if (out.empty() || part.from >= to) {
      if (!out.empty()) out.back().height = part.from - from;
      out.emplace_back();
      from = out.size() == 1 ? Dim{} : part.from;
    }
    to = std::max(to, part.to);
    Fragment& fragment = out.back();
    if (fragment.baseline < Dim{} && part.fragment->baseline >= Dim{})
      fragment.baseline = part.from - from + part.fragment->baseline;
    if (fragment.line == 0) fragment.line = part.fragment->line;
    for (Item& item : part.fragment->items) {
      move(item, {}, part.from - from);
      fragment.items.push_back(std::move(item));
    }
  }
  if (out.empty()) out.emplace_back();
  out.back().height = end - from;
  return out;
}

}  // namespace typeset
