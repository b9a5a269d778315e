// Title and sections: heads hang in the side column, reading stands in the text column.
#include "typeset/blocks/sections.h"

#include "typeset/blocks/headed.h"

#include <algorithm>
#include <utility>

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

class DocumentLayout {
 public:
  explicit DocumentLayout(LayoutContext& context) : context_(context), grid_(context.grid) {}

  VerticalList run() {
    const Blocks& blocks = context_.in.blocks.blocks;
    for (std::size_t i = 0; i < blocks.size();) {
      const Block& block = blocks[i];
      context_.line = block.line;
      std::size_t end = i + 1;
      if (const auto* heading = as<Heading>(block)) {
        if (heading->level == 1) {
          const auto* lede = end < blocks.size() ? as<markup::Paragraph>(blocks[end]) : nullptr;
          if (lede && !isAll(lede->text, Inline::Style::Emphasis)) lede = nullptr;
          if (lede) ++end;
          endTitle();
          if (heading->isWhole) wholeFrom_ = out_.size();
          layOutTitle(*heading, lede);
        } else {
          while (end < blocks.size() && !endsRun(blocks[end])) ++end;
          layOutSection(*heading, Blocks(first(blocks, i + 1), first(blocks, end)));
        }
      } else if (as<markup::PageBreak>(block)) {
        endTitle();
        append(out_, layOutBlock(context_, block, context_.fullColumn(), 0));
      } else {
        while (end < blocks.size() && !endsRun(blocks[end])) ++end;
        out_.push_back(leadSpace(grid_, block));
        append(out_, layOutBlocks(context_, Blocks(first(blocks, i), first(blocks, end)),
                                  context_.fullColumn(), 0));
        // What is left over for the back of a leaf is not a section alone, but the drawing above it, too.
        const auto* next = end < blocks.size() ? as<Heading>(blocks[end]) : nullptr;
        if (context_.in.fit.bestPagesEach > 0 && next && next->isWhole && as<markup::Figure>(blocks[end - 1]))
          out_.back().keepWithNext = true;
      }
      i = end;
    }
    endTitle();
    return std::move(out_);
  }

 private:
  static Blocks::const_iterator first(const Blocks& blocks, std::size_t i) {
    return blocks.begin() + static_cast<std::ptrdiff_t>(i);
  }

  VerticalList lines(const markup::Inlines& words, const std::string& style, Column place, int tag,
                     bool isBalanced) {
    Text text(context_, words, context_.style(style));
    return listOf(context_, text.lines(place.width, tag, isBalanced), place);
  }

  void layOutTitle(const Heading& heading, const markup::Paragraph* lede) {
    const int tag = context_.tag(Role::H1, 0);
    Fragment drop;
    drop.height = grid_.unit;
    std::vector<VerticalList> columns = {{drop}, {drop}};
    append(columns[1], lines(heading.text, "title", context_.textColumn(), tag, true));
    if (!context_.in.furniture.kind.empty()) {
      markup::Inlines kind(1);
      kind[0].text = context_.in.furniture.kind;
      // A word that would have to be broken is set smaller instead, on the same baseline.
      Style style = context_.style("kind");
      if (const Style& small = context_.style("total"); Text(context_, kind, style).longest() > grid_.side)
        style.plain.size = small.plain.size;
      Text text(context_, kind, style);
      append(columns[0],
             listOf(context_, text.lines(grid_.side, context_.tag(Role::P, 0)), context_.sideColumn()));
    }
    if (lede) {
      columns[1].push_back(drop);
      append(columns[1],
             lines(plain(lede->text), "lede", context_.textColumn(), context_.tag(Role::P, 0), true));
    }
    VerticalList title = parallel(std::move(columns), grid_.line, grid_.unit);
    keepTogether(title);
    title.front().bookmarks.push_back({plainWords(heading.text), 0, {}, 1});
    title.back().keepWithNext = !out_.empty();
    title.front().line = context_.line;
    out_.push_back(space(grid_.line, true));
    append(out_, std::move(title));
  }

  /// What stands under a whole title goes to one page.
  void endTitle() {
    closeFence();
    const std::size_t from = std::exchange(wholeFrom_, SIZE_MAX);
    const auto part = std::span(out_).subspan(std::min(from, out_.size()));
    if (!part.empty() && context_.leastHeight(part) <= context_.pageHeight()) keepTogether(part);
  }

  void closeFence() {
    if (!isFenced_) return;
    isFenced_ = false;
    if (!out_.empty()) out_.back().keepWithNext = true;
    out_.push_back(space(grid_.half(), true));
    out_.push_back(fullRule(RuleKind::Close, Dim::pt(1), "ink"));
  }

  Fragment fullRule(RuleKind kind, Dim weight, const std::string& colour) const {
    return ruleFragment(kind, grid_.left, grid_.full, weight, context_.colour(colour));
  }

  void layOutSection(const Heading& heading, Blocks body) {
    const bool isTable = heading.isWide && !body.empty() && takesHeading(body.front());
    const bool isHeavy = heading.isFenced || isFenced_;
    isFenced_ = heading.isFenced;
    // A fenced section, such as the one to sign, does not go over to a page of its own: a short one before it
    // comes along.
    if (heading.isFenced && !out_.empty() && lastHeight_ * 6 < context_.pageHeight())
      out_.back().keepWithNext = true;
    out_.push_back(space(grid_.unit * 3, true));
    VerticalList section;
    if (!isTable) {
      section.push_back(isHeavy ? fullRule(RuleKind::Open, Dim::pt(1), "ink")
                                : fullRule(RuleKind::Section, Dim::pt(1) / 2, "rule"));
      section.push_back(space(grid_.unit));
    }
    context_.isSmall = heading.isSmall;
    append(section, isTable          ? layOutWideTable(heading, body)
                    : heading.isWide ? layOutWide(heading, body)
                                     : layOutHanging(heading, body));
    context_.isSmall = false;
    const Dim height = context_.height(section);
    if ((heading.isFenced || heading.isWhole) && context_.leastHeight(section) <= context_.pageHeight())
      keepTogether(section);
    else if (height * 4 < context_.pageHeight()) keepParts(section);
    lastHeight_ = height;
    append(out_, std::move(section));
  }

  /// A short section stays whole, but for its panels: they say themselves what they are about.
  static void keepParts(VerticalList& section) {
    bool hasMatter = false;  // besides the head
    for (std::size_t i = 0; i + 1 < section.size(); ++i) {
      hasMatter |= section[i].kind == Fragment::Kind::Matter && section[i].height > Dim{};
      std::size_t next = i + 1;
      while (next < section.size() && section[next].kind == Fragment::Kind::Space) ++next;
      const bool isLast = next == section.size(),
                 isBeforePanel = hasMatter && !isLast && section[next].isPanel;
      section[i].keepWithNext = !isLast && !isBeforePanel;
    }
    section.back().keepWithNext = false;
  }

  /// The heading stands in the head of the table.
  VerticalList layOutWideTable(const Heading& heading, const Blocks& body) {
    context_.line = body.front().line;
    VerticalList out = layOutHeaded(context_, body.front(), context_.fullColumn(), 0, &heading);
    const Blocks rest(body.begin() + 1, body.end());
    if (rest.empty()) return out;
    const auto* box = as<markup::Box>(rest.front());
    const bool isTotals = box && box->kind == markup::Callout::Totals;
    if (isTotals && !out.empty()) out.back().keepWithNext = true;
    out.push_back(isTotals ? space(grid_.unit) : space(grid_.half()));
    append(out, layOutBlocks(context_, rest, context_.fullColumn(), 0));
    return out;
  }

  Fragment headFragment(const Heading& heading, Column place) {
    const int tag = context_.tag(Role::H2, 0);
    Text text(context_, heading.text, context_.style("head"));
    // A long word may stick out into the gutter before it is broken.
    const Dim most = place.isFull ? place.width : place.width + grid_.gutter - Dim::mm(2);
    const Dim width = std::clamp(text.longest(), place.width, most);
    Fragment head = collapse(listOf(context_, text.lines(width, tag), place), grid_.line, grid_.unit);
    head.bookmarks.push_back({plainWords(heading.text), 0, {}, 2});
    head.keepWithNext = true;
    head.line = context_.line;
    return head;
  }

  VerticalList layOutWide(const Heading& heading, const Blocks& body) {
    VerticalList out = {headFragment(heading, context_.fullColumn())};
    VerticalList matter = layOutBlocks(context_, body, context_.fullColumn(), 0);
    out.push_back(space(grid_.half()));
    keepFirstLines(matter);
    append(out, std::move(matter));
    return out;
  }

  VerticalList layOutHanging(const Heading& heading, Blocks& body) {
    Fragment head = headFragment(heading, context_.sideColumn());
    if (const auto* note = body.empty() ? nullptr : as<markup::Box>(body.front());
        note && note->kind == markup::Callout::Side) {
      const Column place = {grid_.left, grid_.side - Dim::mm(2), false};
      VerticalList list = {std::move(head)};
      list.push_back(space(grid_.unit));
      append(list, layOutBlocks(context_, {body.front()}, place, 0));
      head = collapse(std::move(list), grid_.line, grid_.unit);
      head.keepWithNext = true;
      body.erase(body.begin());
    }
    VerticalList matter;
    const auto* stop = heading.isFenced && !body.empty() ? as<markup::Paragraph>(body.front()) : nullptr;
    if (stop && isAll(stop->text, Inline::Style::Strong)) {
      context_.line = body.front().line;
      matter = layOutParagraph(context_, plain(stop->text), "total", context_.textColumn(), 0);
      body.erase(body.begin());
      if (!matter.empty() && !body.empty()) {
        matter.back().keepWithNext = true;
        matter.push_back(space(grid_.half()));
      }
    }
    append(matter, layOutBlocks(context_, body, context_.textColumn(), 0));
    // The head stands on the first line of the matter, however large that is.
    const Dim drop = std::max(Dim{}, firstBaseline(matter) - context_.style("head").baseline);
    for (Item& item : head.items) move(item, {}, drop);
    head.side = head.height + drop;
    head.height = {};
    head.baseline = {-1};
    VerticalList out = {std::move(head)};
    if (matter.empty()) {
      matter.emplace_back();
      matter.back().height = grid_.line;
    }
    keepFirstLines(matter);
    append(out, std::move(matter));
    return out;
  }

  /// A head keeps at least two lines with it.
  void keepFirstLines(VerticalList& matter) const {
    Dim height;
    for (Fragment& fragment : matter) {
      if (fragment.kind == Fragment::Kind::Matter) height += fragment.height;
      if (height >= grid_.line * 2) break;
      fragment.keepWithNext = true;
    }
  }

  LayoutContext& context_;
  const Grid& grid_;
  VerticalList out_;
  Dim lastHeight_ = context_.pageHeight();  // of the section before
  std::size_t wholeFrom_ = SIZE_MAX;        // where matter begins that stands under a whole title
  bool isFenced_ = false;                   // the section before is fenced and its lower rule still open
};

}  // namespace

VerticalList layOutDocument(LayoutContext& context) { return DocumentLayout(context).run(); }

}  // namespace typeset
