// Slices, and walking down a page over them.
#include "typeset/stack.h"

#include <algorithm>

namespace typeset {

Slice space(Dim height, bool snaps) {
  Slice s;
  s.kind = Slice::Kind::Space;
  s.height = height;
  s.snaps = snaps;
  return s;
}

Slice ruleSlice(RuleKind kind, Dim x, Dim width, Dim weight, Colour colour) {
  Slice s;
  s.kind = Slice::Kind::Rule;
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

bool passRule(Cursor& c, const Slice& slice, Dim& where) {
  where = c.y;
  const bool isAfterRule = c.hasRule && c.ruleWidth >= slice.width;
  switch (slice.rule) {
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
      if (c.ruleWeight >= slice.weight) {
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
  c.ruleWidth = slice.width;
  c.ruleWeight = slice.weight;
  c.rule = slice.rule;
  return true;
}

}  // namespace

bool Cursor::pass(const Slice& slice, Dim& where) {
  where = y;
  switch (slice.kind) {
    case Slice::Kind::Space:
      if (slice.snaps) {
        y = top + roundUp(bottom() - top, line);
        floor = {};
      }
      if (!isTop) y += slice.height;
      return false;
    case Slice::Kind::Rule:
      return passRule(*this, slice, where);
    case Slice::Kind::PageBreak:
      return false;
    case Slice::Kind::Matter:
      if (slice.side > Dim{}) floor = y + slice.side;
      y += slice.height;
      if (slice.height > Dim{}) isTop = hasRule = false;
      return true;
  }
  return false;
}

Dim heightOf(const Stack& stack, Dim line, Dim unit) {
  Cursor c = Cursor::at({}, line, unit);
  Dim where;
  for (const Slice& s : stack) c.pass(s, where);
  return c.bottom();
}

Dim firstBaseline(const Stack& stack) {
  Dim y;
  for (const Slice& s : stack) {
    if (s.kind == Slice::Kind::Rule) return {-1};  // a table's head stands on the line of its own
    if (s.baseline >= Dim{}) return y + s.baseline;
    y += s.height;
  }
  return {-1};
}

void append(Stack& to, Stack&& more) {
  to.insert(to.end(), std::make_move_iterator(more.begin()), std::make_move_iterator(more.end()));
}

void keepTogether(Stack& stack) {
  if (stack.empty()) return;
  for (Slice& s : stack) s.keepWithNext = true;
  stack.back().keepWithNext = false;
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

Slice collapse(Stack&& stack, Dim line, Dim unit) {
  Slice whole;
  whole.baseline = firstBaseline(stack);
  Cursor c = Cursor::at({}, line, unit);
  Dim where;
  for (Slice& s : stack) {
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

Stack parallel(std::vector<Stack>&& stacks, Dim line, Dim unit) {
  struct Part {
    Dim from, to;
    Slice* slice;
  };
  std::vector<Part> parts;
  Dim end;
  for (Stack& stack : stacks) {
    Cursor c = Cursor::at({}, line, unit);
    Dim where;
    for (Slice& s : stack)
      if (c.pass(s, where)) parts.push_back({where, where + s.height, &s});
    end = std::max(end, c.bottom());
  }
  // What is on the left comes first in reading order, so equal heights keep their order.
  std::stable_sort(parts.begin(), parts.end(), [](const Part& a, const Part& b) { return a.from < b.from; });
  Stack out;
  Dim from, to;
  for (Part& part : parts) {
    if (out.empty() || part.from >= to) {
      if (!out.empty()) out.back().height = part.from - from;
      out.emplace_back();
      from = out.size() == 1 ? Dim{} : part.from;
    }
    to = std::max(to, part.to);
    Slice& slice = out.back();
    if (slice.baseline < Dim{} && part.slice->baseline >= Dim{})
      slice.baseline = part.from - from + part.slice->baseline;
    if (slice.line == 0) slice.line = part.slice->line;
    for (Item& item : part.slice->items) {
      move(item, {}, part.from - from);
      slice.items.push_back(std::move(item));
    }
  }
  if (out.empty()) out.emplace_back();
  out.back().height = end - from;
  return out;
}

}  // namespace typeset
