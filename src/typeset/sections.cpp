// Title and sections: heads hang in the side column, reading stands in the text column.
#include "typeset/sections.h"

#include <algorithm>

namespace typeset {
namespace {

using markup::Block;
using markup::Blocks;
using markup::Heading;
using markup::Inline;

template <class T>
const T* as(const Block& block) {
  return std::get_if<T>(&block.node);
}

bool endsRun(const Block& block) { return as<Heading>(block) || as<markup::PageBreak>(block); }

class DocumentSetter {
 public:
  explicit DocumentSetter(Setter& setter) : setter_(setter), grid_(setter.grid) {}

  Stack run() {
    const Blocks& blocks = setter_.in.blocks.blocks;
    for (std::size_t i = 0; i < blocks.size();) {
      const Block& block = blocks[i];
      setter_.line = block.line;
      std::size_t end = i + 1;
      if (const auto* heading = as<Heading>(block)) {
        if (heading->level == 1) {
          const auto* lede = end < blocks.size() ? as<markup::Paragraph>(blocks[end]) : nullptr;
          if (lede && !isAll(lede->text, Inline::Style::Emphasis)) lede = nullptr;
          if (lede) ++end;
          closeFence();
          setTitle(*heading, lede);
        } else {
          while (end < blocks.size() && !endsRun(blocks[end])) ++end;
          setSection(*heading, Blocks(first(blocks, i + 1), first(blocks, end)));
        }
      } else if (as<markup::PageBreak>(block)) {
        closeFence();
        append(out_, setBlock(setter_, block, setter_.fullPlace(), 0));
      } else {
        while (end < blocks.size() && !endsRun(blocks[end])) ++end;
        out_.push_back(leadSpace(grid_, block));
        append(out_,
               setBlocks(setter_, Blocks(first(blocks, i), first(blocks, end)), setter_.fullPlace(), 0));
      }
      i = end;
    }
    closeFence();
    return std::move(out_);
  }

 private:
  static Blocks::const_iterator first(const Blocks& blocks, std::size_t i) {
    return blocks.begin() + static_cast<std::ptrdiff_t>(i);
  }

  Stack lines(const markup::Inlines& words, const std::string& style, Place place, int tag, bool isBalanced) {
    Text text(setter_, words, setter_.style(style));
    return stackOf(setter_, text.lines(place.width, tag, isBalanced), place);
  }

  void setTitle(const Heading& heading, const markup::Paragraph* lede) {
    const int tag = setter_.tag(Role::H1, 0);
    Slice drop;
    drop.height = grid_.unit;
    std::vector<Stack> columns = {{drop}, {drop}};
    append(columns[1], lines(heading.text, "title", setter_.textPlace(), tag, true));
    if (!setter_.in.furniture.kind.empty()) {
      markup::Inlines kind(1);
      kind[0].text = setter_.in.furniture.kind;
      // A word that would have to be broken is set smaller instead, on the same baseline.
      Style style = setter_.style("kind");
      if (const Style& small = setter_.style("total"); Text(setter_, kind, style).longest() > grid_.side)
        style.plain.size = small.plain.size;
      Text text(setter_, kind, style);
      append(columns[0],
             stackOf(setter_, text.lines(grid_.side, setter_.tag(Role::P, 0)), setter_.sidePlace()));
    }
    if (lede) {
      columns[1].push_back(drop);
      append(columns[1],
             lines(plain(lede->text), "lede", setter_.textPlace(), setter_.tag(Role::P, 0), true));
    }
    Stack title = parallel(std::move(columns), grid_.line, grid_.unit);
    keepTogether(title);
    title.front().bookmarks.push_back({plainWords(heading.text), 0, {}, 1});
    title.back().keepWithNext = !out_.empty();
    title.front().line = setter_.line;
    out_.push_back(space(grid_.line, true));
    append(out_, std::move(title));
  }

  void closeFence() {
    if (!isFenced_) return;
    isFenced_ = false;
    if (!out_.empty()) out_.back().keepWithNext = true;
    out_.push_back(space(grid_.half(), true));
    out_.push_back(fullRule(RuleKind::Close, Dim::pt(1), "ink"));
  }

  Slice fullRule(RuleKind kind, Dim weight, const std::string& colour) const {
    return ruleSlice(kind, grid_.left, grid_.full, weight, setter_.colour(colour));
  }

  void setSection(const Heading& heading, Blocks body) {
    const bool isTable = heading.isWide && !body.empty() && takesHeading(body.front());
    const bool isHeavy = heading.isFenced || isFenced_;
    isFenced_ = heading.isFenced;
    // A fenced section, such as the one to sign, does not go over to a page of its own: a short one before it
    // comes along.
    if (heading.isFenced && !out_.empty() && lastHeight_ * 6 < setter_.pageHeight())
      out_.back().keepWithNext = true;
    out_.push_back(space(grid_.unit * 3, true));
    Stack section;
    if (!isTable) {
      section.push_back(isHeavy ? fullRule(RuleKind::Open, Dim::pt(1), "ink")
                                : fullRule(RuleKind::Section, Dim::pt(1) / 2, "rule"));
      section.push_back(space(grid_.unit));
    }
    setter_.isSmall = heading.isSmall;
    append(section, isTable          ? setWideTable(heading, body)
                    : heading.isWide ? setWide(heading, body)
                                     : setHanging(heading, body));
    setter_.isSmall = false;
    const Dim height = setter_.height(section);
    if ((heading.isFenced || heading.isWhole) && height <= setter_.pageHeight()) keepTogether(section);
    else if (height * 4 < setter_.pageHeight()) keepParts(section);
    lastHeight_ = height;
    append(out_, std::move(section));
  }

  /// A short section stays whole, but for its panels: they say themselves what they are about.
  static void keepParts(Stack& section) {
    bool hasMatter = false;  // besides the head
    for (std::size_t i = 0; i + 1 < section.size(); ++i) {
      hasMatter |= section[i].kind == Slice::Kind::Matter && section[i].height > Dim{};
      std::size_t next = i + 1;
      while (next < section.size() && section[next].kind == Slice::Kind::Space) ++next;
      const bool isLast = next == section.size(),
                 isBeforePanel = hasMatter && !isLast && section[next].isPanel;
      section[i].keepWithNext = !isLast && !isBeforePanel;
    }
    section.back().keepWithNext = false;
  }

  /// The heading stands in the head of the table.
  Stack setWideTable(const Heading& heading, const Blocks& body) {
    setter_.line = body.front().line;
    Stack out = setTable(setter_, *as<markup::Table>(body.front()), setter_.fullPlace(), 0, &heading);
    const Blocks rest(body.begin() + 1, body.end());
    if (rest.empty()) return out;
    const auto* box = as<markup::Box>(rest.front());
    const bool isTotals = box && box->kind == markup::Callout::Totals;
    if (isTotals && !out.empty()) out.back().keepWithNext = true;
    out.push_back(isTotals ? space(grid_.unit) : space(grid_.half()));
    append(out, setBlocks(setter_, rest, setter_.fullPlace(), 0));
    return out;
  }

  Slice headSlice(const Heading& heading, Place place) {
    const int tag = setter_.tag(Role::H2, 0);
    Text text(setter_, heading.text, setter_.style("head"));
    // A long word may stick out into the gutter before it is broken.
    const Dim most = place.isFull ? place.width : place.width + grid_.gutter - Dim::mm(2);
    const Dim width = std::clamp(text.longest(), place.width, most);
    Slice head = collapse(stackOf(setter_, text.lines(width, tag), place), grid_.line, grid_.unit);
    head.bookmarks.push_back({plainWords(heading.text), 0, {}, 2});
    head.keepWithNext = true;
    head.line = setter_.line;
    return head;
  }

  Stack setWide(const Heading& heading, const Blocks& body) {
    Stack out = {headSlice(heading, setter_.fullPlace())};
    Stack matter = setBlocks(setter_, body, setter_.fullPlace(), 0);
    out.push_back(space(grid_.half()));
    keepFirstLines(matter);
    append(out, std::move(matter));
    return out;
  }

  Stack setHanging(const Heading& heading, Blocks& body) {
    Slice head = headSlice(heading, setter_.sidePlace());
    if (const auto* note = body.empty() ? nullptr : as<markup::Box>(body.front());
        note && note->kind == markup::Callout::Side) {
      const Place place = {grid_.left, grid_.side - Dim::mm(2), false};
      Stack stack = {std::move(head)};
      stack.push_back(space(grid_.unit));
      append(stack, setBlocks(setter_, {body.front()}, place, 0));
      head = collapse(std::move(stack), grid_.line, grid_.unit);
      head.keepWithNext = true;
      body.erase(body.begin());
    }
    Stack matter;
    const auto* stop = heading.isFenced && !body.empty() ? as<markup::Paragraph>(body.front()) : nullptr;
    if (stop && isAll(stop->text, Inline::Style::Strong)) {
      setter_.line = body.front().line;
      matter = setParagraph(setter_, plain(stop->text), "total", setter_.textPlace(), 0);
      body.erase(body.begin());
      if (!matter.empty() && !body.empty()) {
        matter.back().keepWithNext = true;
        matter.push_back(space(grid_.half()));
      }
    }
    append(matter, setBlocks(setter_, body, setter_.textPlace(), 0));
    // The head stands on the first line of the matter, however large that is.
    const Dim drop = std::max(Dim{}, firstBaseline(matter) - setter_.style("head").rise);
    for (Item& item : head.items) move(item, {}, drop);
    head.side = head.height + drop;
    head.height = {};
    head.baseline = {-1};
    Stack out = {std::move(head)};
    if (matter.empty()) {
      matter.emplace_back();
      matter.back().height = grid_.line;
    }
    keepFirstLines(matter);
    append(out, std::move(matter));
    return out;
  }

  /// A head keeps at least two lines with it.
  void keepFirstLines(Stack& matter) const {
    Dim height;
    for (Slice& slice : matter) {
      if (slice.kind == Slice::Kind::Matter) height += slice.height;
      if (height >= grid_.line * 2) break;
      slice.keepWithNext = true;
    }
  }

  Setter& setter_;
  const Grid& grid_;
  Stack out_;
  Dim lastHeight_ = setter_.pageHeight();  // of the section before
  bool isFenced_ = false;                  // the section before is fenced and its lower rule still open
};

}  // namespace

Stack setDocument(Setter& setter) { return DocumentSetter(setter).run(); }

}  // namespace typeset
