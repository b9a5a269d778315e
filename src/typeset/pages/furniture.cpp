// Letterhead, running head, ruler and foot.
#include "typeset/pages/furniture.h"

#include "base/fixed.h"
#include "typeset/lines/text.h"
#include "typeset/shapes.h"

#include <algorithm>
#include <map>

namespace typeset {
namespace {

// Baselines and rulers from the top of the paper.
const Dim runningBaseline = Dim::pt(42), runningRuler = Dim::pt(49);
const Dim letterBaseline = Dim::pt(66), letterRuler = Dim::pt(77);
// So many lines stand above that baseline and clear of the edge of the paper.
constexpr std::size_t mostNameLines = 3, mostContactLines = 5;

class FurnitureLayout {
 public:
  explicit FurnitureLayout(LayoutContext& context)
      : context_(context), grid_(context.grid), furniture_(context.in.furniture) {
    context_.line = 0;
  }

  void run() {
    std::vector<Page>& pages = context_.out.pages;
    for (std::size_t i = 0; i < pages.size(); ++i) {
      page_ = &pages[i];
      if (i == 0 && furniture_.hasLetterhead) {
        addLetterhead();
        addRuler(letterRuler);
      } else {
        addRunningHead(i > 0 || furniture_.hasLetterhead);
        addRuler(runningRuler);
      }
      addFoot(i + 1, pages.size());
    }
  }

 private:
  Dim words(const Style& style, const std::string& text, Point at) {
    PlacedWords set = placeWords(context_, style, text, at);
    for (Item& item : set.items) page_->items.push_back(std::move(item));
    return set.width;
  }

  /// Words that are a link as a whole, if they lead somewhere. A reader of tags meets each address once:
  /// where it stands again its words are decoration, and the place to press belongs to the first link.
  Dim linkedWords(const Style& style, const std::string& text, Point at) {
    const auto found = furniture_.links.find(text);
    if (found == furniture_.links.end()) return words(style, text, at);
    const auto [known, isNew] = linkTags_.emplace(found->second, artifact);
    if (isNew) known->second = context_.tag(Role::Link, context_.tag(Role::P, 0));
    PlacedWords set = placeWords(context_, style, text, at, isNew ? known->second : artifact);
    for (Item& item : set.items) page_->items.push_back(std::move(item));
    const Rect box = {{at.x, at.y - style.baseline}, {set.width, style.leading}};
    page_->items.push_back({Link{box, found->second, text}, known->second});
    return set.width;
  }

  Dim widthOf(const Style& style, const std::string& text) const {
    StyledText span = style.plain;
    span.text = text;
    return width(context_.in.fonts, span);
  }

  void wordsRight(const Style& style, const std::string& text, Dim baseline) {
    words(style, text, {grid_.right - widthOf(style, text), baseline});
  }

  /// The logo, no wider than the side column; its width.
  Dim addLogo(Point at, Dim height) {
    if (!furniture_.logo || furniture_.logo->width <= 0 || furniture_.logo->height <= 0) return {};
    const Image& logo = *furniture_.logo;
    Size size = {{base::mulDiv(height.raw, logo.width, logo.height, base::Round::HalfUp)}, height};
    if (size.w > grid_.side)
      size = {grid_.side, {base::mulDiv(grid_.side.raw, logo.height, logo.width, base::Round::HalfUp)}};
    at.y += height - size.h;
    page_->items.push_back({PlacedImage{{at, size}, furniture_.logo}, artifact});
    return size.w;
  }

  void addLetterhead() {
    addLogo({grid_.left, letterBaseline - logoHeight}, logoHeight);
    // The firm's lines get half of the column, and what the name leaves of the other half.
    const Dim half = (grid_.text - grid_.gutter) / 2;
    Dim name;
    for (const TextLine& line :
         linesOf(furniture_.firm, context_.style(nameStyle(half)), half, mostNameLines, true))
      name = std::max(name, line.width);
    const Dim contact = addContact(grid_.text - grid_.gutter - name);
    const Dim room = grid_.text - (contact > Dim{} ? contact + grid_.gutter : Dim{});
    const Style& style = context_.style(nameStyle(room));
    std::vector<TextLine> lines = linesOf(furniture_.firm, style, room, mostNameLines, true);
    placeUpwards(std::move(lines), style, {grid_.textX, room, false}, markup::Align::Left);
  }

  /// The largest style that keeps a long name to two lines without breaking a word.
  const char* nameStyle(Dim room) {
    markup::Inlines name(1);
    name[0].text = furniture_.firm;
    if (Text(context_, name, context_.style("firm")).natural() <= room) return "firm";
    Text text(context_, name, context_.style("total"));
    return text.longest() <= room && text.lines(room, artifact).size() <= 2 ? "total" : "head";
  }

  /// Address and numbers, the last line on the letterhead's baseline; how wide they are.
  Dim addContact(Dim room) {
    const Style& note = context_.style("note");
    const std::vector<std::string>& parts = furniture_.firmLines;
    // One line each; the last ones, numbers that matter more than an address, run on first.
    std::size_t spare = mostContactLines > parts.size() ? mostContactLines - parts.size() : 0;
    std::vector<TextLine> all;
    std::vector<int> tags;  // in reading order, while the lines are set from below
    for (std::size_t i = 0; i < parts.size(); ++i) tags.push_back(context_.tag(Role::P, 0));
    for (std::size_t i = parts.size(); i-- > 0;) {
      std::vector<TextLine> lines = linesOf(parts[i], note, room, 1 + spare, false, tags[i]);
      if (!lines.empty()) spare -= lines.size() - 1;
      all.insert(all.begin(), std::make_move_iterator(lines.begin()), std::make_move_iterator(lines.end()));
    }
    Dim widest;
    for (const TextLine& line : all) {
      widest = std::max(widest, line.width);
      for (const Item& item : line.items)
        if (const auto* link = std::get_if<Link>(&item.what)) linkTags_.emplace(link->uri, item.tag);
    }
    placeUpwards(std::move(all), note, {grid_.right - room, room, false}, markup::Align::Right);
    return widest;
  }

  /// The words with those that lead somewhere as links.
  markup::Inlines linked(const std::string& words) const {
    markup::Inlines parts;
    for (std::size_t at = 0; at < words.size();) {
      std::size_t begin = words.size(), end = words.size();
      std::string address;
      for (const auto& [link, uri] : furniture_.links)
        if (const std::size_t found = link.empty() ? begin : words.find(link, at); found < begin) {
          begin = found;
          end = found + link.size();
          address = uri;
        }
      if (begin > at) parts.push_back({{}, words.substr(at, begin - at), {}, {}});
      if (end > begin) parts.push_back({{}, words.substr(begin, end - begin), address, {}});
      at = end;
    }
    return parts;
  }

  /// The text in lines, cut with an ellipsis where it needs more than so many.
  std::vector<TextLine> linesOf(const std::string& words, const Style& style, Dim room, std::size_t most,
                                bool isBalanced, int tag = artifact) {
    const auto set = [&](const std::string& s, bool balances, int own) {
      return Text(context_, own == artifact ? markup::Inlines{{{}, s, {}, {}}} : linked(s), style)
          .lines(room, own, balances);
    };
    return set(shortened(words, [&](const std::string& s) { return set(s, false, artifact).size() <= most; }),
               isBalanced, tag);
  }

  /// Lines above each other, the last on the letterhead's baseline.
  void placeUpwards(std::vector<TextLine>&& lines, const Style& style, Column place, markup::Align align) {
    Dim y = letterBaseline - style.baseline - style.leading * (static_cast<std::int64_t>(lines.size()) - 1);
    for (Fragment& line : listOf(context_, std::move(lines), place, align)) {
      for (Item& item : line.items) {
        move(item, {}, y);
        page_->items.push_back(std::move(item));
      }
      y += style.leading;
    }
  }

  void addRunningHead(bool hasKind) {
    const Style &firm = context_.style("runFirm"), &plain = context_.style("table");
    Style soft = plain, bold = plain;
    soft.plain.colour = context_.colour("soft");
    bold.plain.face = plain.strong;
    const Dim y = runningBaseline, gap = Dim::mm(3);
    Dim x = grid_.left;
    const Dim logo = addLogo({x, y - Dim::pt(11)}, Dim::pt(11));
    if (logo > Dim{}) x += logo + Dim::pt(4);
    // Each has its share, so that whatever the lengths nothing meets.
    const std::string label = shortened(context_, soft, furniture_.jobLabel, grid_.full / 4);
    const Dim end = grid_.right - widthOf(soft, label) - gap;
    wordsRight(soft, label, y);
    x += words(firm, shortened(context_, firm, furniture_.firm, grid_.left + grid_.full / 2 - x), {x, y});
    x = std::max(grid_.textX, x + gap);
    if (hasKind && !furniture_.kind.empty())
      x += words(bold, shortened(context_, bold, furniture_.kind, end - x), {x, y}) + gap;
    words(soft, shortened(context_, soft, whereWithin(soft, end - x), end - x), {x, y});
  }

  /// The place, without the last of its parts as long as it is too wide.
  std::string whereWithin(const Style& style, Dim room) const {
    std::string where = furniture_.where;
    for (std::size_t comma; widthOf(style, where) > room && (comma = where.rfind(", ")) != std::string::npos;)
      where.resize(comma);
    return where;
  }

  /// The head line is a ruler: ticks 10 mm apart, long ones every 50 mm, so that a wrong print scale shows.
  void addRuler(Dim y) {
    const Colour accent = context_.colour("accent");
    page_->items.push_back(lineItem({grid_.left, y}, {grid_.right, y}, Dim::pt(1), accent));
    Path ticks;
    for (std::int64_t i = 0; Dim::mm(10) * i <= grid_.full; ++i) {
      const Dim x = grid_.left + Dim::mm(10) * i;
      const Dim length = i % 5 == 0 ? Dim::mm(26) / 10 : Dim::mm(15) / 10;
      ticks.steps.push_back({Step::Kind::Move, {}, {}, {x, y}});
      ticks.steps.push_back({Step::Kind::Line, {}, {}, {x, y + length}});
    }
    ticks.stroke = Stroke{accent, Dim::milli(600), {}, false};
    page_->items.push_back({std::move(ticks), artifact});
  }

  void addFoot(std::size_t number, std::size_t count) {
    const Style& note = context_.style("note");
    Style bold = note;
    bold.plain.face = note.strong;
    bold.plain.colour = context_.colour("ink");
    const Dim y = grid_.bottom + grid_.line + grid_.half(), gap = Dim::mm(3);  // clear of a full page
    std::string text = furniture_.pageOf;
    const auto fill = [&](const std::string& mark, std::size_t value) {
      if (const std::size_t at = text.find(mark); at != std::string::npos)
        text.replace(at, mark.size(), std::to_string(value));
    };
    fill("{n}", number);
    fill("{m}", count);
    wordsRight(note, text, y);
    const Dim end = grid_.right - widthOf(note, text) - gap;
    const std::string left = shortened(context_, bold, furniture_.footLeft, grid_.full / 2);
    Dim x = grid_.left + linkedWords(bold, left, {grid_.left, y});
    x = std::max(grid_.textX, x + gap);
    words(note, shortened(context_, note, furniture_.footMiddle, end - x), {x, y});
  }

  LayoutContext& context_;
  const Grid& grid_;
  const Furniture& furniture_;
  Page* page_ = nullptr;
  std::map<std::string, int> linkTags_;  // by address
};

}  // namespace

void addFurniture(LayoutContext& context) { FurnitureLayout(context).run(); }

}  // namespace typeset
